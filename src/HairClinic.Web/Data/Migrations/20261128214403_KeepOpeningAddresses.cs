using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class KeepOpeningAddresses : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "email",
                table: "calendar_feeds",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "opening_addresses",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    guardian_id = table.Column<Guid>(type: "uuid", nullable: true),
                    email = table.Column<string>(type: "text", nullable: false),
                    entered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: true),
                    entered_role = table.Column<string>(type: "text", nullable: true),
                    confirmed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    confirmed_how = table.Column<string>(type: "text", nullable: true),
                    confirmed_by = table.Column<Guid>(type: "uuid", nullable: true),
                    denied_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_by = table.Column<Guid>(type: "uuid", nullable: true),
                    ended_role = table.Column<string>(type: "text", nullable: true),
                    told_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    end_told_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    link_hash = table.Column<byte[]>(type: "bytea", nullable: true),
                    link_expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_opening_addresses", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_opening_addresses_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_practice_id_email",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_opening_addresses_practice_id_client_id",
                table: "opening_addresses",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ux_opening_addresses_own",
                table: "opening_addresses",
                columns: new[] { "practice_id", "client_id" },
                unique: true,
                filter: "guardian_id is null and ended_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_opening_addresses_practice_id_email",
                table: "opening_addresses",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_opening_addresses_practice_id_link_hash",
                table: "opening_addresses",
                columns: new[] { "practice_id", "link_hash" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_opening_addresses_untold",
                table: "opening_addresses",
                column: "practice_id",
                filter: "told_at is null or ended_at is not null and end_told_at is null");

            migrationBuilder.CreateIndex(
                name: "ux_opening_addresses_guardian",
                table: "opening_addresses",
                columns: new[] { "practice_id", "guardian_id" },
                unique: true,
                filter: "ended_at is null");

            Fence.Around(migrationBuilder, "opening_addresses");
            PrivacySql.Guard(migrationBuilder, "opening_addresses", "insert or update");
            AddressesOfToday.Fill(migrationBuilder);
        }
    }
}
