using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class LearnFromWear : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "inspection_days",
                table: "workshops",
                type: "integer",
                nullable: false,
                defaultValue: 7);

            migrationBuilder.AddColumn<int>(
                name: "remade_of_twenty",
                table: "workshops",
                type: "integer",
                nullable: false,
                defaultValue: 1);

            migrationBuilder.AddColumn<int>(
                name: "lead_half_days",
                table: "unit_kinds",
                type: "integer",
                nullable: false,
                defaultValue: 56);

            migrationBuilder.AddColumn<int>(
                name: "lead_nine_in_ten_days",
                table: "unit_kinds",
                type: "integer",
                nullable: false,
                defaultValue: 77);

            migrationBuilder.AddColumn<int>(
                name: "gap_chance_percent",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 5);

            migrationBuilder.AddColumn<int>(
                name: "preparation_days",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 14);

            migrationBuilder.AddColumn<string>(
                name: "order_note",
                table: "hair_systems",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "remade_times",
                table: "hair_systems",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "repeats_id",
                table: "hair_systems",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "load_forecasts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    clients = table.Column<int>(type: "integer", nullable: false),
                    scenarios = table.Column<string>(type: "jsonb", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_load_forecasts", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_load_forecasts_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "order_forecasts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    workshop_id = table.Column<Guid>(type: "uuid", nullable: true),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    scenarios = table.Column<string>(type: "jsonb", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_order_forecasts", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_order_forecasts_workshops_practice_id_workshop_id",
                        columns: x => new { x.practice_id, x.workshop_id },
                        principalTable: "workshops",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "reckonings",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    asked_by = table.Column<Guid>(type: "uuid", nullable: true),
                    asked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    state = table.Column<string>(type: "text", nullable: false),
                    stage = table.Column<string>(type: "text", nullable: false),
                    done = table.Column<int>(type: "integer", nullable: false),
                    total = table.Column<int>(type: "integer", nullable: false),
                    stop_asked = table.Column<bool>(type: "boolean", nullable: false),
                    fault = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_reckonings", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_reckonings_people_practice_id_asked_by",
                        columns: x => new { x.practice_id, x.asked_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "reorder_plans",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    planned_for = table.Column<LocalDate>(type: "date", nullable: false),
                    unit_kind_id = table.Column<Guid>(type: "uuid", nullable: false),
                    in_hand = table.Column<int>(type: "integer", nullable: false),
                    in_flight = table.Column<int>(type: "integer", nullable: false),
                    order_by = table.Column<LocalDate>(type: "date", nullable: true),
                    gap_if_ordered_today = table.Column<double>(type: "double precision", nullable: false),
                    gap_before_arrival = table.Column<double>(type: "double precision", nullable: false),
                    expected_days_without_hair = table.Column<double>(type: "double precision", nullable: false),
                    hair_ends_early = table.Column<LocalDate>(type: "date", nullable: true),
                    hair_ends_half = table.Column<LocalDate>(type: "date", nullable: true),
                    hair_ends_late = table.Column<LocalDate>(type: "date", nullable: true),
                    quantity = table.Column<int>(type: "integer", nullable: true),
                    at_risk = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_reorder_plans", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_reorder_plans_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_reorder_plans_unit_kinds_practice_id_unit_kind_id",
                        columns: x => new { x.practice_id, x.unit_kind_id },
                        principalTable: "unit_kinds",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "stored_fits",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity = table.Column<string>(type: "text", nullable: false),
                    model_version = table.Column<int>(type: "integer", nullable: false),
                    data_cut = table.Column<LocalDate>(type: "date", nullable: false),
                    fitted_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    distribution = table.Column<string>(type: "text", nullable: false),
                    columns = table.Column<string[]>(type: "text[]", nullable: false),
                    coefficients = table.Column<double[]>(type: "double precision[]", nullable: false),
                    covariance = table.Column<double[]>(type: "double precision[]", nullable: false),
                    log_scale = table.Column<double>(type: "double precision", nullable: true),
                    client_spread = table.Column<double>(type: "double precision", nullable: true),
                    log_likelihood = table.Column<double>(type: "double precision", nullable: true),
                    log_posterior = table.Column<double>(type: "double precision", nullable: true),
                    iterations = table.Column<int>(type: "integer", nullable: false),
                    converged = table.Column<bool>(type: "boolean", nullable: false),
                    spells = table.Column<int>(type: "integer", nullable: false),
                    ended = table.Column<int>(type: "integer", nullable: false),
                    clients = table.Column<int>(type: "integer", nullable: false),
                    notes = table.Column<string>(type: "jsonb", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_fits", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "stored_leads",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    unit_kind_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data_cut = table.Column<LocalDate>(type: "date", nullable: false),
                    arrived = table.Column<double[]>(type: "double precision[]", nullable: false),
                    waited = table.Column<double[]>(type: "double precision[]", nullable: false),
                    remade = table.Column<int>(type: "integer", nullable: false),
                    kept = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_leads", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_stored_leads_unit_kinds_practice_id_unit_kind_id",
                        columns: x => new { x.practice_id, x.unit_kind_id },
                        principalTable: "unit_kinds",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "unit_repairs",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    done_on = table.Column<LocalDate>(type: "date", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_repairs", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_unit_repairs_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "wear_factors",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity = table.Column<string>(type: "text", nullable: false),
                    habit = table.Column<string>(type: "text", nullable: false),
                    factor = table.Column<double>(type: "double precision", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_wear_factors", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_wear_factors_factor", "factor between 0.2 and 2");
                });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_repeats_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "repeats_id" });

            migrationBuilder.CreateIndex(
                name: "ix_load_forecasts_practice_id_salon_id",
                table: "load_forecasts",
                columns: new[] { "practice_id", "salon_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_order_forecasts_practice_id_workshop_id",
                table: "order_forecasts",
                columns: new[] { "practice_id", "workshop_id" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_reckonings_practice_id_asked_at",
                table: "reckonings",
                columns: new[] { "practice_id", "asked_at" });

            migrationBuilder.CreateIndex(
                name: "ix_reckonings_practice_id_asked_by",
                table: "reckonings",
                columns: new[] { "practice_id", "asked_by" });

            migrationBuilder.CreateIndex(
                name: "ux_reckonings_one_at_a_time",
                table: "reckonings",
                column: "practice_id",
                unique: true,
                filter: "ended_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_reorder_plans_at_risk",
                table: "reorder_plans",
                columns: new[] { "practice_id", "expected_days_without_hair", "client_id" },
                filter: "at_risk");

            migrationBuilder.CreateIndex(
                name: "ix_reorder_plans_practice_id_client_id",
                table: "reorder_plans",
                columns: new[] { "practice_id", "client_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_reorder_plans_practice_id_unit_kind_id",
                table: "reorder_plans",
                columns: new[] { "practice_id", "unit_kind_id" });

            migrationBuilder.CreateIndex(
                name: "ix_stored_fits_practice_id_quantity_fitted_at",
                table: "stored_fits",
                columns: new[] { "practice_id", "quantity", "fitted_at" });

            migrationBuilder.CreateIndex(
                name: "ix_stored_leads_practice_id_unit_kind_id",
                table: "stored_leads",
                columns: new[] { "practice_id", "unit_kind_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_repairs_practice_id_hair_system_id",
                table: "unit_repairs",
                columns: new[] { "practice_id", "hair_system_id" });

            migrationBuilder.CreateIndex(
                name: "ix_wear_factors_practice_id_quantity_habit",
                table: "wear_factors",
                columns: new[] { "practice_id", "quantity", "habit" },
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_hair_systems_hair_systems_practice_id_repeats_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "repeats_id" },
                principalTable: "hair_systems",
                principalColumns: new[] { "practice_id", "id" });

            Fence.Around(
                migrationBuilder,
                "load_forecasts",
                "order_forecasts",
                "reckonings",
                "reorder_plans",
                "stored_fits",
                "stored_leads",
                "unit_repairs",
                "wear_factors"
            );
            PrivacySql.Guard(migrationBuilder, "reorder_plans", "insert or update");
        }
    }
}
