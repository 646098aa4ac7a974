using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class GrantClients : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "actor_id",
                table: "write_keys",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "actor_id",
                table: "work_items",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "grant_days_after_visit",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 90);

            migrationBuilder.CreateTable(
                name: "client_grants",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    starts_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    given_by = table.Column<Guid>(type: "uuid", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_client_grants", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_client_grants_ends_after_start", "ends_at is null or ends_at >= starts_at");
                    table.CheckConstraint("ck_client_grants_one_reader", "(salon_id is null) <> (person_id is null)");
                    table.ForeignKey(
                        name: "fk_client_grants_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_client_grants_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_client_grants_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_client_grants_practice_id_client_id",
                table: "client_grants",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_grants_practice_id_person_id",
                table: "client_grants",
                columns: new[] { "practice_id", "person_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_grants_practice_id_salon_id",
                table: "client_grants",
                columns: new[] { "practice_id", "salon_id" });

            Fence.Around(migrationBuilder, "client_grants");
            GrantsOfToday.Fill(migrationBuilder);
        }
    }
}
