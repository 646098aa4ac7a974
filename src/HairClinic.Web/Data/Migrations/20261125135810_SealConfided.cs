using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class SealConfided : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "access_heads",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<long>(type: "bigint", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_access_heads", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "access_notes",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    actor_kind = table.Column<string>(type: "text", nullable: false),
                    actor_id = table.Column<Guid>(type: "uuid", nullable: true),
                    role = table.Column<string>(type: "text", nullable: false),
                    deed = table.Column<string>(type: "text", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: true),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: true),
                    key_id = table.Column<string>(type: "text", nullable: false),
                    previous_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_access_notes", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "clearances",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    health_answer_id = table.Column<Guid>(type: "uuid", nullable: false),
                    product_id = table.Column<Guid>(type: "uuid", nullable: true),
                    purpose = table.Column<string>(type: "text", nullable: true),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    kind = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_clearances", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_clearances_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_clearances_products_practice_id_product_id",
                        columns: x => new { x.practice_id, x.product_id },
                        principalTable: "products",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "client_keys",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    wrapped = table.Column<byte[]>(type: "bytea", nullable: false),
                    master_key_id = table.Column<string>(type: "text", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    destroyed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_client_keys", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_client_keys_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "health_answers",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    answered_on = table.Column<LocalDate>(type: "date", nullable: false),
                    answered_by = table.Column<Guid>(type: "uuid", nullable: true),
                    saved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    closed = table.Column<byte[]>(type: "bytea", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_health_answers", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_health_answers_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_health_answers_people_practice_id_answered_by",
                        columns: x => new { x.practice_id, x.answered_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "master_key_marks",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    mark = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_master_key_marks", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    taken_on = table.Column<LocalDate>(type: "date", nullable: false),
                    consent_on = table.Column<LocalDate>(type: "date", nullable: false),
                    shared = table.Column<bool>(type: "boolean", nullable: false),
                    width = table.Column<int>(type: "integer", nullable: false),
                    height = table.Column<int>(type: "integer", nullable: false),
                    bytes = table.Column<int>(type: "integer", nullable: false),
                    file_id = table.Column<Guid>(type: "uuid", nullable: false),
                    added_by = table.Column<Guid>(type: "uuid", nullable: true),
                    added_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    removed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photos", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_photos_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_photos_people_practice_id_added_by",
                        columns: x => new { x.practice_id, x.added_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "sealed_drafts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    form = table.Column<string>(type: "text", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    closed = table.Column<byte[]>(type: "bytea", nullable: false),
                    saved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sealed_drafts", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_sealed_drafts_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_sealed_drafts_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_access_heads_practice_id",
                table: "access_heads",
                column: "practice_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_access_notes_practice_id_client_id_number",
                table: "access_notes",
                columns: new[] { "practice_id", "client_id", "number" });

            migrationBuilder.CreateIndex(
                name: "ix_access_notes_practice_id_number",
                table: "access_notes",
                columns: new[] { "practice_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_clearances_practice_id_client_id",
                table: "clearances",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_clearances_practice_id_product_id",
                table: "clearances",
                columns: new[] { "practice_id", "product_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_keys_practice_id_client_id",
                table: "client_keys",
                columns: new[] { "practice_id", "client_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_client_keys_practice_id_master_key_id",
                table: "client_keys",
                columns: new[] { "practice_id", "master_key_id" });

            migrationBuilder.CreateIndex(
                name: "ix_health_answers_practice_id_answered_by",
                table: "health_answers",
                columns: new[] { "practice_id", "answered_by" });

            migrationBuilder.CreateIndex(
                name: "ix_health_answers_practice_id_client_id_saved_at",
                table: "health_answers",
                columns: new[] { "practice_id", "client_id", "saved_at" });

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_added_by",
                table: "photos",
                columns: new[] { "practice_id", "added_by" });

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_client_id_added_at",
                table: "photos",
                columns: new[] { "practice_id", "client_id", "added_at" });

            migrationBuilder.CreateIndex(
                name: "ix_sealed_drafts_practice_id_client_id",
                table: "sealed_drafts",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ux_sealed_drafts_one_each",
                table: "sealed_drafts",
                columns: new[] { "practice_id", "person_id", "form", "client_id" },
                unique: true);

            Fence.Around(migrationBuilder, "access_heads", "access_notes", "clearances", "client_keys", "health_answers", "photos", "sealed_drafts");
            AccessLogSql.OnlyAdd(migrationBuilder);
        }
    }
}
