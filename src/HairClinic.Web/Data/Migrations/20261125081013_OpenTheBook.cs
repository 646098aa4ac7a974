using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class OpenTheBook : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterDatabase()
                .Annotation("Npgsql:PostgresExtension:btree_gist", ",,");

            migrationBuilder.CreateTable(
                name: "base_materials",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    life_from_days = table.Column<int>(type: "integer", nullable: false),
                    life_to_days = table.Column<int>(type: "integer", nullable: false),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_base_materials", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_base_materials_life", "life_to_days > life_from_days");
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "find_words",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    word = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_find_words", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    role = table.Column<string>(type: "text", nullable: false),
                    left = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "practice_settings",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    region = table.Column<string>(type: "text", nullable: false),
                    culture = table.Column<string>(type: "text", nullable: false),
                    cure_hours = table.Column<int>(type: "integer", nullable: false),
                    days_before_event = table.Column<int>(type: "integer", nullable: false),
                    opening_soon_days = table.Column<int>(type: "integer", nullable: false),
                    slot_minutes = table.Column<int>(type: "integer", nullable: false),
                    is_demo = table.Column<bool>(type: "boolean", nullable: false),
                    guide_finished_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_practice_settings", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "practices",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_practices", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "products",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    chemistry = table.Column<string>(type: "text", nullable: true),
                    label_cure_hours = table.Column<int>(type: "integer", nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_products", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "salons",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    zone = table.Column<string>(type: "text", nullable: false),
                    currency = table.Column<string>(type: "text", nullable: false),
                    phone = table.Column<string>(type: "text", nullable: true),
                    address = table.Column<string>(type: "text", nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_salons", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "service_kinds",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    purpose = table.Column<string>(type: "text", nullable: false),
                    price_minor = table.Column<long>(type: "bigint", nullable: true),
                    currency = table.Column<string>(type: "text", nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_service_kinds", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "sign_in_links",
                columns: table => new
                {
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_links", x => x.token_hash);
                });

            migrationBuilder.CreateTable(
                name: "users",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at_salon_id = table.Column<Guid>(type: "uuid", nullable: true),
                    user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_users", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "work_items",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                    asked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    not_before = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    done_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    last_error = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_work_items", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "workshops",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshops", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "write_keys",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    deed = table.Column<string>(type: "text", nullable: false),
                    body_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    answer = table.Column<string>(type: "jsonb", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_write_keys", x => new { x.practice_id, x.id });
                });

            migrationBuilder.CreateTable(
                name: "drafts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    form = table.Column<string>(type: "text", nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                    saved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drafts", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_drafts_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "person_absences",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    to = table.Column<LocalDate>(type: "date", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_absences", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_person_absences_ends_after_start", "\"to\" >= \"from\"");
                    table.ForeignKey(
                        name: "fk_person_absences_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "hold_window_rules",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    base_material_id = table.Column<Guid>(type: "uuid", nullable: true),
                    adhesive_id = table.Column<Guid>(type: "uuid", nullable: true),
                    attachment = table.Column<string>(type: "text", nullable: true),
                    earliest_weeks = table.Column<int>(type: "integer", nullable: false),
                    latest_weeks = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_hold_window_rules", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_hold_window_rules_closes_after_opens", "latest_weeks >= earliest_weeks");
                    table.ForeignKey(
                        name: "fk_hold_window_rules_base_materials_practice_id_base_material_",
                        columns: x => new { x.practice_id, x.base_material_id },
                        principalTable: "base_materials",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_hold_window_rules_products_practice_id_adhesive_id",
                        columns: x => new { x.practice_id, x.adhesive_id },
                        principalTable: "products",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "product_lots",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    product_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    expires_on = table.Column<LocalDate>(type: "date", nullable: true),
                    finished = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_product_lots", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_product_lots_products_practice_id_product_id",
                        columns: x => new { x.practice_id, x.product_id },
                        principalTable: "products",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "chairs",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_chairs", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_chairs_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "clients",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    called_as = table.Column<string>(type: "text", nullable: true),
                    home_salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    phone = table.Column<string>(type: "text", nullable: true),
                    email = table.Column<string>(type: "text", nullable: true),
                    birth_date = table.Column<LocalDate>(type: "date", nullable: true),
                    preferred_days = table.Column<byte>(type: "smallint", nullable: false),
                    wash_every_days = table.Column<int>(type: "integer", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    merged_into_id = table.Column<Guid>(type: "uuid", nullable: true),
                    left_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_clients", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_clients_clients_practice_id_merged_into_id",
                        columns: x => new { x.practice_id, x.merged_into_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_clients_salons_practice_id_home_salon_id",
                        columns: x => new { x.practice_id, x.home_salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "person_salons",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_salons", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_person_salons_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_person_salons_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "salon_closures",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    to = table.Column<LocalDate>(type: "date", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_salon_closures", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_salon_closures_ends_after_start", "\"to\" >= \"from\"");
                    table.ForeignKey(
                        name: "fk_salon_closures_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "salon_hours",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<string>(type: "text", nullable: false),
                    opens = table.Column<LocalTime>(type: "time", nullable: false),
                    closes = table.Column<LocalTime>(type: "time", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_salon_hours", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_salon_hours_closes_after_opens", "closes > opens");
                    table.ForeignKey(
                        name: "fk_salon_hours_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "work_spells",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<string>(type: "text", nullable: false),
                    from = table.Column<LocalTime>(type: "time", nullable: false),
                    to = table.Column<LocalTime>(type: "time", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_work_spells", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_work_spells_ends_after_start", "\"to\" > \"from\"");
                    table.ForeignKey(
                        name: "fk_work_spells_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_work_spells_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "person_skills",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    service_kind_id = table.Column<Guid>(type: "uuid", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_skills", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_person_skills_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_person_skills_service_kinds_practice_id_service_kind_id",
                        columns: x => new { x.practice_id, x.service_kind_id },
                        principalTable: "service_kinds",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "service_steps",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    service_kind_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    minutes = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_service_steps", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_service_steps_minutes", "minutes between 5 and 480");
                    table.ForeignKey(
                        name: "fk_service_steps_service_kinds_practice_id_service_kind_id",
                        columns: x => new { x.practice_id, x.service_kind_id },
                        principalTable: "service_kinds",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_user_claims_users_user_id",
                        column: x => x.user_id,
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    provider_key = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_user_logins_users_user_id",
                        column: x => x.user_id,
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "fk_user_passkeys_users_user_id",
                        column: x => x.user_id,
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    name = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "fk_user_tokens_users_user_id",
                        column: x => x.user_id,
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "unit_kinds",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    base_material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    workshop_id = table.Column<Guid>(type: "uuid", nullable: true),
                    retired = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_kinds", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_unit_kinds_base_materials_practice_id_base_material_id",
                        columns: x => new { x.practice_id, x.base_material_id },
                        principalTable: "base_materials",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_unit_kinds_workshops_practice_id_workshop_id",
                        columns: x => new { x.practice_id, x.workshop_id },
                        principalTable: "workshops",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "workshop_closures",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    workshop_id = table.Column<Guid>(type: "uuid", nullable: false),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    to = table.Column<LocalDate>(type: "date", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_workshop_closures", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_workshop_closures_ends_after_start", "\"to\" >= \"from\"");
                    table.ForeignKey(
                        name: "fk_workshop_closures_workshops_practice_id_workshop_id",
                        columns: x => new { x.practice_id, x.workshop_id },
                        principalTable: "workshops",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "care_facts",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    as_of = table.Column<LocalDate>(type: "date", nullable: false),
                    skin = table.Column<string>(type: "text", nullable: true),
                    sweat = table.Column<string>(type: "text", nullable: true),
                    swims_per_week = table.Column<decimal>(type: "numeric", nullable: true),
                    washes_per_week = table.Column<decimal>(type: "numeric", nullable: true),
                    heat_per_week = table.Column<decimal>(type: "numeric", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_care_facts", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_care_facts_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "client_merges",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kept_id = table.Column<Guid>(type: "uuid", nullable: false),
                    folded_id = table.Column<Guid>(type: "uuid", nullable: false),
                    merged_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    merged_by = table.Column<Guid>(type: "uuid", nullable: false),
                    moved = table.Column<string>(type: "jsonb", nullable: false),
                    undone_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_client_merges", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_client_merges_clients_practice_id_folded_id",
                        columns: x => new { x.practice_id, x.folded_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_client_merges_clients_practice_id_kept_id",
                        columns: x => new { x.practice_id, x.kept_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "contact_notes",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_contact_notes", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_contact_notes_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "life_events",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    to = table.Column<LocalDate>(type: "date", nullable: false),
                    away = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_life_events", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_life_events_ends_after_start", "\"to\" >= \"from\"");
                    table.ForeignKey(
                        name: "fk_life_events_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "visits",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    service_kind_id = table.Column<Guid>(type: "uuid", nullable: false),
                    chair_id = table.Column<Guid>(type: "uuid", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    starts_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    holds_chair = table.Column<bool>(type: "boolean", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    book_key = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visits", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_visits_ends_after_start", "ends_at > starts_at");
                    table.ForeignKey(
                        name: "fk_visits_chairs_practice_id_chair_id",
                        columns: x => new { x.practice_id, x.chair_id },
                        principalTable: "chairs",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visits_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visits_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visits_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visits_service_kinds_practice_id_service_kind_id",
                        columns: x => new { x.practice_id, x.service_kind_id },
                        principalTable: "service_kinds",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "hair_systems",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial = table.Column<string>(type: "text", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: true),
                    unit_kind_id = table.Column<Guid>(type: "uuid", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    retired_because = table.Column<string>(type: "text", nullable: true),
                    place_salon_id = table.Column<Guid>(type: "uuid", nullable: true),
                    price_minor = table.Column<long>(type: "bigint", nullable: true),
                    currency = table.Column<string>(type: "text", nullable: true),
                    accepted_on = table.Column<LocalDate>(type: "date", nullable: true),
                    acknowledged_on = table.Column<LocalDate>(type: "date", nullable: true),
                    arrived_on = table.Column<LocalDate>(type: "date", nullable: true),
                    first_bonded_on = table.Column<LocalDate>(type: "date", nullable: true),
                    inspected_on = table.Column<LocalDate>(type: "date", nullable: true),
                    ordered_on = table.Column<LocalDate>(type: "date", nullable: true),
                    prepared_on = table.Column<LocalDate>(type: "date", nullable: true),
                    retired_on = table.Column<LocalDate>(type: "date", nullable: true),
                    shipped_on = table.Column<LocalDate>(type: "date", nullable: true),
                    specified_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_hair_systems", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_hair_systems_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_hair_systems_salons_practice_id_place_salon_id",
                        columns: x => new { x.practice_id, x.place_salon_id },
                        principalTable: "salons",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_hair_systems_unit_kinds_practice_id_unit_kind_id",
                        columns: x => new { x.practice_id, x.unit_kind_id },
                        principalTable: "unit_kinds",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "visit_segments",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    visit_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    starts_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    holds_hands = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visit_segments", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_visit_segments_ends_after_start", "ends_at > starts_at");
                    table.ForeignKey(
                        name: "fk_visit_segments_people_practice_id_person_id",
                        columns: x => new { x.practice_id, x.person_id },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visit_segments_visits_practice_id_visit_id",
                        columns: x => new { x.practice_id, x.visit_id },
                        principalTable: "visits",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "bonds",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    visit_id = table.Column<Guid>(type: "uuid", nullable: true),
                    applied_on = table.Column<LocalDate>(type: "date", nullable: false),
                    applied_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    attachment = table.Column<string>(type: "text", nullable: false),
                    applied_by = table.Column<Guid>(type: "uuid", nullable: true),
                    waits_kept = table.Column<bool>(type: "boolean", nullable: true),
                    opens_on = table.Column<LocalDate>(type: "date", nullable: false),
                    target_on = table.Column<LocalDate>(type: "date", nullable: false),
                    due_on = table.Column<LocalDate>(type: "date", nullable: false),
                    closes_on = table.Column<LocalDate>(type: "date", nullable: false),
                    due_reasons = table.Column<string>(type: "jsonb", nullable: false),
                    last_sound_on = table.Column<LocalDate>(type: "date", nullable: true),
                    removed_on = table.Column<LocalDate>(type: "date", nullable: true),
                    removed_because = table.Column<string>(type: "text", nullable: true),
                    lifted_on = table.Column<LocalDate>(type: "date", nullable: true),
                    lift_reported_on = table.Column<LocalDate>(type: "date", nullable: true),
                    lift_spot_fixed = table.Column<bool>(type: "boolean", nullable: true),
                    lift_zone = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bonds", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_bonds_closes_after_opens", "closes_on >= opens_on");
                    table.CheckConstraint("ck_bonds_removed_after_applied", "removed_on >= applied_on");
                    table.ForeignKey(
                        name: "fk_bonds_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_bonds_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_bonds_people_practice_id_applied_by",
                        columns: x => new { x.practice_id, x.applied_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_bonds_visits_practice_id_visit_id",
                        columns: x => new { x.practice_id, x.visit_id },
                        principalTable: "visits",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "promise_revisions",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    hair_system_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    promised_for = table.Column<LocalDate>(type: "date", nullable: false),
                    said_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_promise_revisions", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_promise_revisions_hair_systems_practice_id_hair_system_id",
                        columns: x => new { x.practice_id, x.hair_system_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "visit_records",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    visit_id = table.Column<Guid>(type: "uuid", nullable: false),
                    removed_unit_id = table.Column<Guid>(type: "uuid", nullable: true),
                    found_lifted = table.Column<bool>(type: "boolean", nullable: false),
                    lifted_on = table.Column<LocalDate>(type: "date", nullable: true),
                    lift_zone = table.Column<string>(type: "text", nullable: true),
                    waits_kept = table.Column<bool>(type: "boolean", nullable: true),
                    recorded_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    recorded_by = table.Column<Guid>(type: "uuid", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    grade_base = table.Column<int>(type: "integer", nullable: true),
                    grade_colour = table.Column<int>(type: "integer", nullable: true),
                    grade_fit = table.Column<int>(type: "integer", nullable: true),
                    grade_hair = table.Column<int>(type: "integer", nullable: true),
                    grade_knots = table.Column<int>(type: "integer", nullable: true),
                    grade_shedding = table.Column<int>(type: "integer", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visit_records", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_visit_records_hair_systems_practice_id_removed_unit_id",
                        columns: x => new { x.practice_id, x.removed_unit_id },
                        principalTable: "hair_systems",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visit_records_people_practice_id_recorded_by",
                        columns: x => new { x.practice_id, x.recorded_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_visit_records_visits_practice_id_visit_id",
                        columns: x => new { x.practice_id, x.visit_id },
                        principalTable: "visits",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateTable(
                name: "bond_products",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    bond_id = table.Column<Guid>(type: "uuid", nullable: false),
                    product_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    coats = table.Column<int>(type: "integer", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bond_products", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_bond_products_bonds_practice_id_bond_id",
                        columns: x => new { x.practice_id, x.bond_id },
                        principalTable: "bonds",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_bond_products_product_lots_practice_id_lot_id",
                        columns: x => new { x.practice_id, x.lot_id },
                        principalTable: "product_lots",
                        principalColumns: new[] { "practice_id", "id" });
                    table.ForeignKey(
                        name: "fk_bond_products_products_practice_id_product_id",
                        columns: x => new { x.practice_id, x.product_id },
                        principalTable: "products",
                        principalColumns: new[] { "practice_id", "id" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_base_materials_practice_id_name",
                table: "base_materials",
                columns: new[] { "practice_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_bond_products_practice_id_bond_id",
                table: "bond_products",
                columns: new[] { "practice_id", "bond_id" });

            migrationBuilder.CreateIndex(
                name: "ix_bond_products_practice_id_lot_id",
                table: "bond_products",
                columns: new[] { "practice_id", "lot_id" });

            migrationBuilder.CreateIndex(
                name: "ix_bond_products_practice_id_product_id",
                table: "bond_products",
                columns: new[] { "practice_id", "product_id" });

            migrationBuilder.CreateIndex(
                name: "ix_bonds_open_closes_on",
                table: "bonds",
                columns: new[] { "practice_id", "closes_on", "id" },
                filter: "removed_on is null");

            migrationBuilder.CreateIndex(
                name: "ix_bonds_practice_id_applied_by",
                table: "bonds",
                columns: new[] { "practice_id", "applied_by" });

            migrationBuilder.CreateIndex(
                name: "ix_bonds_practice_id_client_id_applied_on",
                table: "bonds",
                columns: new[] { "practice_id", "client_id", "applied_on" });

            migrationBuilder.CreateIndex(
                name: "ix_bonds_practice_id_hair_system_id_applied_on",
                table: "bonds",
                columns: new[] { "practice_id", "hair_system_id", "applied_on" });

            migrationBuilder.CreateIndex(
                name: "ix_bonds_practice_id_visit_id",
                table: "bonds",
                columns: new[] { "practice_id", "visit_id" });

            migrationBuilder.CreateIndex(
                name: "ux_bonds_open_per_head",
                table: "bonds",
                columns: new[] { "practice_id", "client_id" },
                unique: true,
                filter: "removed_on is null");

            migrationBuilder.CreateIndex(
                name: "ux_bonds_open_per_unit",
                table: "bonds",
                columns: new[] { "practice_id", "hair_system_id" },
                unique: true,
                filter: "removed_on is null");

            migrationBuilder.CreateIndex(
                name: "ix_care_facts_practice_id_client_id_as_of",
                table: "care_facts",
                columns: new[] { "practice_id", "client_id", "as_of" });

            migrationBuilder.CreateIndex(
                name: "ix_chairs_practice_id_salon_id_name",
                table: "chairs",
                columns: new[] { "practice_id", "salon_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_client_merges_practice_id_folded_id",
                table: "client_merges",
                columns: new[] { "practice_id", "folded_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_merges_practice_id_kept_id",
                table: "client_merges",
                columns: new[] { "practice_id", "kept_id" });

            migrationBuilder.CreateIndex(
                name: "ix_clients_practice_id_home_salon_id",
                table: "clients",
                columns: new[] { "practice_id", "home_salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_clients_practice_id_merged_into_id",
                table: "clients",
                columns: new[] { "practice_id", "merged_into_id" });

            migrationBuilder.CreateIndex(
                name: "ux_clients_code",
                table: "clients",
                columns: new[] { "practice_id", "code" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_contact_notes_practice_id_client_id_at",
                table: "contact_notes",
                columns: new[] { "practice_id", "client_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_drafts_practice_id_person_id_form_subject_id",
                table: "drafts",
                columns: new[] { "practice_id", "person_id", "form", "subject_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_find_words_practice_id_subject_id",
                table: "find_words",
                columns: new[] { "practice_id", "subject_id" });

            migrationBuilder.CreateIndex(
                name: "ix_find_words_practice_id_word",
                table: "find_words",
                columns: new[] { "practice_id", "word" });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_client_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_place_salon_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "place_salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_serial",
                table: "hair_systems",
                columns: new[] { "practice_id", "serial" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_unit_kind_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "unit_kind_id" });

            migrationBuilder.CreateIndex(
                name: "ix_hold_window_rules_practice_id_adhesive_id",
                table: "hold_window_rules",
                columns: new[] { "practice_id", "adhesive_id" });

            migrationBuilder.CreateIndex(
                name: "ix_hold_window_rules_practice_id_base_material_id_adhesive_id_",
                table: "hold_window_rules",
                columns: new[] { "practice_id", "base_material_id", "adhesive_id", "attachment" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_life_events_practice_id_client_id",
                table: "life_events",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_person_absences_practice_id_person_id",
                table: "person_absences",
                columns: new[] { "practice_id", "person_id" });

            migrationBuilder.CreateIndex(
                name: "ix_person_salons_practice_id_person_id_salon_id",
                table: "person_salons",
                columns: new[] { "practice_id", "person_id", "salon_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_person_salons_practice_id_salon_id",
                table: "person_salons",
                columns: new[] { "practice_id", "salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_person_skills_practice_id_person_id_service_kind_id",
                table: "person_skills",
                columns: new[] { "practice_id", "person_id", "service_kind_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_person_skills_practice_id_service_kind_id",
                table: "person_skills",
                columns: new[] { "practice_id", "service_kind_id" });

            migrationBuilder.CreateIndex(
                name: "ix_practice_settings_practice_id",
                table: "practice_settings",
                column: "practice_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_product_lots_practice_id_product_id_code",
                table: "product_lots",
                columns: new[] { "practice_id", "product_id", "code" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_products_practice_id_name",
                table: "products",
                columns: new[] { "practice_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_promise_revisions_practice_id_hair_system_id_number",
                table: "promise_revisions",
                columns: new[] { "practice_id", "hair_system_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_salon_closures_practice_id_salon_id",
                table: "salon_closures",
                columns: new[] { "practice_id", "salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_salon_hours_practice_id_salon_id",
                table: "salon_hours",
                columns: new[] { "practice_id", "salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_salons_practice_id_name",
                table: "salons",
                columns: new[] { "practice_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_service_kinds_practice_id_name",
                table: "service_kinds",
                columns: new[] { "practice_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_service_steps_practice_id_service_kind_id",
                table: "service_steps",
                columns: new[] { "practice_id", "service_kind_id" });

            migrationBuilder.CreateIndex(
                name: "ix_unit_kinds_practice_id_base_material_id",
                table: "unit_kinds",
                columns: new[] { "practice_id", "base_material_id" });

            migrationBuilder.CreateIndex(
                name: "ix_unit_kinds_practice_id_name",
                table: "unit_kinds",
                columns: new[] { "practice_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_kinds_practice_id_workshop_id",
                table: "unit_kinds",
                columns: new[] { "practice_id", "workshop_id" });

            migrationBuilder.CreateIndex(
                name: "ix_user_claims_user_id",
                table: "user_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_user_logins_user_id",
                table: "user_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_user_passkeys_user_id",
                table: "user_passkeys",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_users_normalized_email",
                table: "users",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "ix_users_practice_id_person_id",
                table: "users",
                columns: new[] { "practice_id", "person_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ux_users_normalized_user_name",
                table: "users",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_visit_records_practice_id_recorded_by",
                table: "visit_records",
                columns: new[] { "practice_id", "recorded_by" });

            migrationBuilder.CreateIndex(
                name: "ix_visit_records_practice_id_removed_unit_id",
                table: "visit_records",
                columns: new[] { "practice_id", "removed_unit_id" });

            migrationBuilder.CreateIndex(
                name: "ix_visit_records_practice_id_visit_id",
                table: "visit_records",
                columns: new[] { "practice_id", "visit_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_visit_segments_practice_id_person_id_starts_at",
                table: "visit_segments",
                columns: new[] { "practice_id", "person_id", "starts_at" });

            migrationBuilder.CreateIndex(
                name: "ix_visit_segments_practice_id_visit_id",
                table: "visit_segments",
                columns: new[] { "practice_id", "visit_id" });

            migrationBuilder.CreateIndex(
                name: "ix_visits_practice_id_book_key",
                table: "visits",
                columns: new[] { "practice_id", "book_key" },
                unique: true,
                filter: "book_key is not null");

            migrationBuilder.CreateIndex(
                name: "ix_visits_practice_id_chair_id_starts_at",
                table: "visits",
                columns: new[] { "practice_id", "chair_id", "starts_at" });

            migrationBuilder.CreateIndex(
                name: "ix_visits_practice_id_client_id_starts_at",
                table: "visits",
                columns: new[] { "practice_id", "client_id", "starts_at" });

            migrationBuilder.CreateIndex(
                name: "ix_visits_practice_id_person_id",
                table: "visits",
                columns: new[] { "practice_id", "person_id" });

            migrationBuilder.CreateIndex(
                name: "ix_visits_practice_id_salon_id_day",
                table: "visits",
                columns: new[] { "practice_id", "salon_id", "day" });

            migrationBuilder.CreateIndex(
                name: "ix_visits_practice_id_service_kind_id",
                table: "visits",
                columns: new[] { "practice_id", "service_kind_id" });

            migrationBuilder.CreateIndex(
                name: "ix_work_items_practice_id_not_before",
                table: "work_items",
                columns: new[] { "practice_id", "not_before" },
                filter: "done_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_work_spells_practice_id_person_id",
                table: "work_spells",
                columns: new[] { "practice_id", "person_id" });

            migrationBuilder.CreateIndex(
                name: "ix_work_spells_practice_id_salon_id",
                table: "work_spells",
                columns: new[] { "practice_id", "salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_workshop_closures_practice_id_workshop_id",
                table: "workshop_closures",
                columns: new[] { "practice_id", "workshop_id" });

            migrationBuilder.CreateIndex(
                name: "ix_workshops_practice_id_name",
                table: "workshops",
                columns: new[] { "practice_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_write_keys_practice_id_at",
                table: "write_keys",
                columns: new[] { "practice_id", "at" });

            Fence.Around(
                migrationBuilder,
                "base_materials",
                "bond_products",
                "bonds",
                "care_facts",
                "chairs",
                "client_merges",
                "clients",
                "contact_notes",
                "drafts",
                "find_words",
                "hair_systems",
                "hold_window_rules",
                "life_events",
                "people",
                "person_absences",
                "person_salons",
                "person_skills",
                "practice_settings",
                "product_lots",
                "products",
                "promise_revisions",
                "salon_closures",
                "salon_hours",
                "salons",
                "service_kinds",
                "service_steps",
                "unit_kinds",
                "visit_records",
                "visit_segments",
                "visits",
                "work_items",
                "work_spells",
                "workshop_closures",
                "workshops",
                "write_keys"
            );
            Fence.ForbidClashes(migrationBuilder);
            Fence.GrantRoles(migrationBuilder);
        }
    }
}
