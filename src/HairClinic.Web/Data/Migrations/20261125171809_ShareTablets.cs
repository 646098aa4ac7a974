using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class ShareTablets : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "full_id",
                table: "sign_in_sessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Duration>(
                name: "idle_after",
                table: "sign_in_sessions",
                type: "interval",
                nullable: false,
                defaultValue: NodaTime.Duration.FromHours(1));

            migrationBuilder.AddColumn<Guid>(
                name: "tablet_id",
                table: "sign_in_sessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "tablets",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    lock_after_minutes = table.Column<int>(type: "integer", nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    last_used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tablets", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "tablet_pins",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    tablet_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    master_key_id = table.Column<string>(type: "text", nullable: false),
                    stamp = table.Column<string>(type: "text", nullable: false),
                    wrong_tries = table.Column<int>(type: "integer", nullable: false),
                    set_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tablet_pins", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_tablet_pins_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_tablet_pins_tablets_practice_id_tablet_id",
                        columns: x => new { x.practice_id, x.tablet_id },
                        principalTable: "tablets",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_sessions_full_id",
                table: "sign_in_sessions",
                column: "full_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_sessions_tablet_id",
                table: "sign_in_sessions",
                column: "tablet_id");

            migrationBuilder.CreateIndex(
                name: "ix_tablet_pins_practice_id_person_id",
                table: "tablet_pins",
                columns: new[] { "practice_id", "person_id" });

            migrationBuilder.CreateIndex(
                name: "ix_tablet_pins_practice_id_tablet_id_person_id",
                table: "tablet_pins",
                columns: new[] { "practice_id", "tablet_id", "person_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_tablets_practice_id_token_hash",
                table: "tablets",
                columns: new[] { "practice_id", "token_hash" },
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_sign_in_sessions_sign_in_sessions_full_id",
                table: "sign_in_sessions",
                column: "full_id",
                principalTable: "sign_in_sessions",
                principalColumn: "id",
                onDelete: ReferentialAction.Cascade);

            Fence.Around(migrationBuilder, "tablets", "tablet_pins");
        }
    }
}
