using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class WatchStreamsCheckDatesReadGrades : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<double>(
                name: "grade_evidence",
                table: "stored_fits",
                type: "double precision",
                nullable: false,
                defaultValue: 0.0);

            migrationBuilder.AddColumn<double[]>(
                name: "grade_link_parameters",
                table: "stored_fits",
                type: "double precision[]",
                nullable: false,
                defaultValue: new double[0]);

            migrationBuilder.AddColumn<int>(
                name: "graded_ended",
                table: "stored_fits",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<LocalDate>(
                name: "grades_learnt_on",
                table: "stored_fits",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "left_out",
                table: "stored_fits",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "forgotten_since",
                table: "reorder_plans",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "weaker_since",
                table: "reorder_plans",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "wears_fast",
                table: "reorder_plans",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "date_checks",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: true),
                    bond_id = table.Column<Guid>(type: "uuid", nullable: true),
                    workshop_id = table.Column<Guid>(type: "uuid", nullable: true),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    days = table.Column<int>(type: "integer", nullable: false),
                    usual_from = table.Column<int>(type: "integer", nullable: false),
                    usual_to = table.Column<int>(type: "integer", nullable: false),
                    years = table.Column<int>(type: "integer", nullable: true),
                    asked_on = table.Column<LocalDate>(type: "date", nullable: false),
                    answer = table.Column<string>(type: "text", nullable: true),
                    answered_by = table.Column<Guid>(type: "uuid", nullable: true),
                    answered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    answered_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_date_checks", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_date_checks_bonds_practice_id_bond_id",
                        columns: x => new { x.practice_id, x.bond_id },
                        principalTable: "bonds",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_date_checks_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_date_checks_workshops_practice_id_workshop_id",
                        columns: x => new { x.practice_id, x.workshop_id },
                        principalTable: "workshops",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "stored_preparations",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    data_cut = table.Column<LocalDate>(type: "date", nullable: false),
                    taken = table.Column<double[]>(type: "double precision[]", nullable: false),
                    waited = table.Column<double[]>(type: "double precision[]", nullable: false),
                    learnt = table.Column<double[]>(type: "double precision[]", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_preparations", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "stored_watches",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    stream_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data_cut = table.Column<LocalDate>(type: "date", nullable: false),
                    deliveries = table.Column<LocalDate[]>(type: "date[]", nullable: false),
                    profile = table.Column<double[]>(type: "double precision[]", nullable: false),
                    limit = table.Column<double>(type: "double precision", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_watches", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "watch_alarms",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    stream_id = table.Column<Guid>(type: "uuid", nullable: false),
                    cohort_from = table.Column<LocalDate>(type: "date", nullable: false),
                    cohort_through = table.Column<LocalDate>(type: "date", nullable: true),
                    units = table.Column<int>(type: "integer", nullable: false),
                    raised_on = table.Column<LocalDate>(type: "date", nullable: false),
                    statistic = table.Column<double>(type: "double precision", nullable: false),
                    limit = table.Column<double>(type: "double precision", nullable: false),
                    closed_on = table.Column<LocalDate>(type: "date", nullable: true),
                    closed_by = table.Column<Guid>(type: "uuid", nullable: true),
                    end = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_watch_alarms", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_watch_alarms_people_practice_id_closed_by",
                        columns: x => new { x.practice_id, x.closed_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_date_checks_open",
                table: "date_checks",
                columns: new[] { "practice_id", "kind" },
                filter: "answer is null");

            migrationBuilder.CreateIndex(
                name: "ix_date_checks_practice_id_bond_id",
                table: "date_checks",
                columns: new[] { "practice_id", "bond_id" });

            migrationBuilder.CreateIndex(
                name: "ix_date_checks_practice_id_hair_system_id",
                table: "date_checks",
                columns: new[] { "practice_id", "hair_system_id" });

            migrationBuilder.CreateIndex(
                name: "ix_date_checks_practice_id_workshop_id",
                table: "date_checks",
                columns: new[] { "practice_id", "workshop_id" });

            migrationBuilder.CreateIndex(
                name: "ix_stored_preparations_practice_id",
                table: "stored_preparations",
                column: "practice_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_stored_watches_practice_id_kind_stream_id",
                table: "stored_watches",
                columns: new[] { "practice_id", "kind", "stream_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_watch_alarms_practice_id_closed_by",
                table: "watch_alarms",
                columns: new[] { "practice_id", "closed_by" });

            migrationBuilder.CreateIndex(
                name: "ux_watch_alarms_one_open",
                table: "watch_alarms",
                columns: new[] { "practice_id", "kind", "stream_id" },
                unique: true,
                filter: "\"end\" is null");
        }
    }
}
