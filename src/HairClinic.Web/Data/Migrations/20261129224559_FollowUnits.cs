using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    public partial class FollowUnits : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "claim_days",
                table: "workshops",
                type: "integer",
                nullable: false,
                defaultValue: 7);
            migrationBuilder.Sql("alter table workshops alter column claim_days drop default");

            migrationBuilder.AlterColumn<LocalDate>(
                name: "done_on",
                table: "unit_repairs",
                type: "date",
                nullable: true,
                oldClrType: typeof(LocalDate),
                oldType: "date");

            migrationBuilder.AddColumn<LocalDate>(
                name: "back_promised_for",
                table: "unit_repairs",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "cost_minor",
                table: "unit_repairs",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "currency",
                table: "unit_repairs",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "sent_on",
                table: "unit_repairs",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "sent_to",
                table: "unit_repairs",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "order_promise_id",
                table: "promise_revisions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "said_by",
                table: "promise_revisions",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "cleaning",
                table: "hair_systems",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "order_id",
                table: "hair_systems",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "origin",
                table: "hair_systems",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "place",
                table: "hair_systems",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "sent_back_on",
                table: "hair_systems",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "spot",
                table: "hair_systems",
                type: "text",
                nullable: true);

            // The migrator acts for no practice: for the moment the policies of units do not bind it.
            // Who has a unit follows from its state; which salon was written down where it is in one.
            migrationBuilder.Sql(
                """
                alter table hair_systems no force row level security;
                update hair_systems set
                    place = case
                        when state in ('Bonded', 'ReturnedToClient') then 'Client'
                        when state in ('Ordered', 'Acknowledged', 'Shipped', 'Remake') then 'Workshop'
                        when place_salon_id is not null and state <> 'Lost' then 'Salon' end,
                    place_salon_id = case
                        when state not in ('Bonded', 'ReturnedToClient', 'Ordered', 'Acknowledged', 'Shipped', 'Remake', 'Lost') then place_salon_id end;
                do $$
                begin
                    if exists (select from hair_systems where (place is not distinct from 'Salon') <> (place_salon_id is not null)) then
                        raise exception 'a unit is in a salon without one, or has one without being there';
                    end if;
                end $$;
                alter table hair_systems force row level security;
                """
            );

            migrationBuilder.CreateTable(
                name: "unit_arrivals",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    arrived_on = table.Column<LocalDate>(type: "date", nullable: false),
                    damaged = table.Column<bool>(type: "boolean", nullable: false),
                    condition = table.Column<string>(type: "text", nullable: true),
                    claim_until = table.Column<LocalDate>(type: "date", nullable: true),
                    inspected_on = table.Column<LocalDate>(type: "date", nullable: true),
                    kind_as_ordered = table.Column<bool>(type: "boolean", nullable: true),
                    base_as_ordered = table.Column<bool>(type: "boolean", nullable: true),
                    price_as_ordered = table.Column<bool>(type: "boolean", nullable: true),
                    altered = table.Column<bool>(type: "boolean", nullable: false),
                    decision = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    remake_paid_by = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_arrivals", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_unit_arrivals_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "unit_loans",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lent_on = table.Column<LocalDate>(type: "date", nullable: false),
                    due_back_on = table.Column<LocalDate>(type: "date", nullable: false),
                    back_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_loans", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_unit_loans_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_unit_loans_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "unit_questions",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    asked_on = table.Column<LocalDate>(type: "date", nullable: false),
                    question = table.Column<string>(type: "text", nullable: false),
                    answered_on = table.Column<LocalDate>(type: "date", nullable: true),
                    answer = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_questions", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_unit_questions_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "unit_steps",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    on = table.Column<LocalDate>(type: "date", nullable: false),
                    recorded_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    recorded_by = table.Column<Guid>(type: "uuid", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    before = table.Column<string>(type: "jsonb", nullable: false),
                    after = table.Column<string>(type: "jsonb", nullable: false),
                    taken_back_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    taken_back_by = table.Column<Guid>(type: "uuid", nullable: true),
                    taken_back_because = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_steps", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_unit_steps_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "workshop_orders",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(type: "text", nullable: false),
                    workshop_id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sent_on = table.Column<LocalDate>(type: "date", nullable: false),
                    acknowledged_on = table.Column<LocalDate>(type: "date", nullable: true),
                    shipped_on = table.Column<LocalDate>(type: "date", nullable: true),
                    currency = table.Column<string>(type: "text", nullable: true),
                    unit_count = table.Column<int>(type: "integer", nullable: false),
                    parcel = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshop_orders", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_workshop_orders_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_workshop_orders_workshops_practice_id_workshop_id",
                        columns: x => new { x.practice_id, x.workshop_id },
                        principalTable: "workshops",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "order_promises",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    workshop_order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    promised_for = table.Column<LocalDate>(type: "date", nullable: false),
                    said_on = table.Column<LocalDate>(type: "date", nullable: false),
                    said_by = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_order_promises", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_order_promises_workshop_orders_practice_id_workshop_order_id",
                        columns: x => new { x.practice_id, x.workshop_order_id },
                        principalTable: "workshop_orders",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_order_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "order_id" });

            migrationBuilder.CreateIndex(
                name: "ix_order_promises_practice_id_workshop_order_id_number",
                table: "order_promises",
                columns: new[] { "practice_id", "workshop_order_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_arrivals_practice_id_hair_system_id_number",
                table: "unit_arrivals",
                columns: new[] { "practice_id", "hair_system_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_loans_open_per_unit",
                table: "unit_loans",
                columns: new[] { "practice_id", "hair_system_id" },
                unique: true,
                filter: "back_on is null");

            migrationBuilder.CreateIndex(
                name: "ix_unit_loans_practice_id_client_id",
                table: "unit_loans",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_unit_questions_practice_id_hair_system_id",
                table: "unit_questions",
                columns: new[] { "practice_id", "hair_system_id" });

            migrationBuilder.CreateIndex(
                name: "ix_unit_steps_practice_id_hair_system_id",
                table: "unit_steps",
                columns: new[] { "practice_id", "hair_system_id" });

            migrationBuilder.CreateIndex(
                name: "ix_workshop_orders_practice_id_number",
                table: "workshop_orders",
                columns: new[] { "practice_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_workshop_orders_practice_id_salon_id",
                table: "workshop_orders",
                columns: new[] { "practice_id", "salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_workshop_orders_practice_id_workshop_id",
                table: "workshop_orders",
                columns: new[] { "practice_id", "workshop_id" });

            migrationBuilder.AddForeignKey(
                name: "fk_hair_systems_workshop_orders_practice_id_order_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "order_id" },
                principalTable: "workshop_orders",
                principalColumns: new[] { "practice_id", "id" });
        }
    }
}
