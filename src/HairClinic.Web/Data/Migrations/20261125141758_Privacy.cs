using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class Privacy : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Instant>(
                name: "erased_at",
                table: "clients",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "consent_texts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject = table.Column<string>(type: "text", nullable: false),
                    language = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    words = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_consent_texts", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_consent_texts_people_practice_id_by",
                        columns: x => new { x.practice_id, x.by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "erasures",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    rule_version = table.Column<string>(type: "text", nullable: false),
                    counts = table.Column<string>(type: "jsonb", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_erasures", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_erasures_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "retention_rules",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject = table.Column<string>(type: "text", nullable: false),
                    keep_days = table.Column<int>(type: "integer", nullable: false),
                    by_itself = table.Column<bool>(type: "boolean", nullable: false),
                    last_applied_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_retention_rules", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "consents",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject = table.Column<string>(type: "text", nullable: false),
                    given = table.Column<bool>(type: "boolean", nullable: false),
                    text_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    taken_by = table.Column<Guid>(type: "uuid", nullable: true),
                    way = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_consents", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_consents_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_consents_consent_texts_practice_id_text_id",
                        columns: x => new { x.practice_id, x.text_id },
                        principalTable: "consent_texts",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_consents_people_practice_id_taken_by",
                        columns: x => new { x.practice_id, x.taken_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_consent_texts_practice_id_by",
                table: "consent_texts",
                columns: new[] { "practice_id", "by" });

            migrationBuilder.CreateIndex(
                name: "ux_consent_texts_number",
                table: "consent_texts",
                columns: new[] { "practice_id", "subject", "language", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_consents_practice_id_client_id_at",
                table: "consents",
                columns: new[] { "practice_id", "client_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_consents_practice_id_taken_by",
                table: "consents",
                columns: new[] { "practice_id", "taken_by" });

            migrationBuilder.CreateIndex(
                name: "ix_consents_practice_id_text_id",
                table: "consents",
                columns: new[] { "practice_id", "text_id" });

            migrationBuilder.CreateIndex(
                name: "ux_erasures_client",
                table: "erasures",
                columns: new[] { "practice_id", "client_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_retention_rules_practice_id_subject",
                table: "retention_rules",
                columns: new[] { "practice_id", "subject" },
                unique: true);

            Fence.Around(migrationBuilder, "consent_texts", "consents", "erasures", "retention_rules");
            PrivacySql.OnlyAdd(migrationBuilder);
            PrivacySql.KeepErased(migrationBuilder);
        }
    }
}
