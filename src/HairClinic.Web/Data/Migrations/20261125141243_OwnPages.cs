using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class OwnPages : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "email",
                table: "sign_in_links",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<bool>(
                name: "offered_to_clients",
                table: "service_kinds",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "client_move_hours",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "calendar_feeds",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    secret_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_calendar_feeds", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_calendar_feeds_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "client_preferences",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    letters = table.Column<bool>(type: "boolean", nullable: false),
                    language = table.Column<string>(type: "text", nullable: true),
                    units = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_client_preferences", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_client_preferences_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "client_sign_ins",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    email = table.Column<string>(type: "text", nullable: false),
                    opened_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_client_sign_ins", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_client_sign_ins_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "guardians",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    email = table.Column<string>(type: "text", nullable: false),
                    ends_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_guardians", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_guardians_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "link_asks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    address_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    address = table.Column<string>(type: "text", nullable: true),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_link_asks", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "own_texts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    topic = table.Column<string>(type: "text", nullable: false),
                    language = table.Column<string>(type: "text", nullable: false),
                    text = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_own_texts", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_practice_id_client_id",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_practice_id_secret_hash",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "secret_hash" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_client_preferences_practice_id_client_id",
                table: "client_preferences",
                columns: new[] { "practice_id", "client_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_client_sign_ins_practice_id_client_id",
                table: "client_sign_ins",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_sign_ins_practice_id_email",
                table: "client_sign_ins",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_guardians_practice_id_client_id",
                table: "guardians",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_guardians_practice_id_email",
                table: "guardians",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_link_asks_address_hash_at",
                table: "link_asks",
                columns: new[] { "address_hash", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_link_asks_at",
                table: "link_asks",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_own_texts_practice_id_topic_language",
                table: "own_texts",
                columns: new[] { "practice_id", "topic", "language" },
                unique: true);

            OwnPagesSql.Apply(migrationBuilder);
        }
    }
}
