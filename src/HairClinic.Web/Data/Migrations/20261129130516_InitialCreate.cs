using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class InitialCreate : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterDatabase()
                .Annotation("Npgsql:PostgresExtension:btree_gist", ",,");

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
                    grant_days_after_visit = table.Column<int>(type: "integer", nullable: false),
                    client_move_hours = table.Column<int>(type: "integer", nullable: false),
                    preparation_days = table.Column<int>(type: "integer", nullable: false),
                    gap_chance_percent = table.Column<int>(type: "integer", nullable: false),
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
                    offered_to_clients = table.Column<bool>(type: "boolean", nullable: false),
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
                    email = table.Column<string>(type: "text", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    invitation = table.Column<bool>(type: "boolean", nullable: false),
                    used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_links", x => x.token_hash);
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
                name: "users",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at_salon_id = table.Column<Guid>(type: "uuid", nullable: true),
                    last_code_step = table.Column<long>(type: "bigint", nullable: true),
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
                    held_until = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    handed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    done_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    fate = table.Column<string>(type: "text", nullable: true),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    last_error = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    actor_id = table.Column<Guid>(type: "uuid", nullable: true)
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
                    remade_of_twenty = table.Column<int>(type: "integer", nullable: false),
                    inspection_days = table.Column<int>(type: "integer", nullable: false),
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
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    actor_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_write_keys", x => new { x.practice_id, x.id });
                });

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
                name: "recalculations",
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
                    table.PrimaryKey("pk_recalculations", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_recalculations_people_practice_id_asked_by",
                        columns: x => new { x.practice_id, x.asked_by },
                        principalTable: "people",
                        principalColumns: new[] { "practice_id", "id" });
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
                    erased_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
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
                name: "stored_page_results",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    salons = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    question = table.Column<string>(type: "text", nullable: false),
                    answer = table.Column<string>(type: "jsonb", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stored_page_results", x => new { x.practice_id, x.id });
                });

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

            migrationBuilder.CreateTable(
                name: "sign_in_sessions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    way = table.Column<string>(type: "text", nullable: false),
                    device = table.Column<string>(type: "text", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    last_seen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    stepped_up_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    idle_after = table.Column<Duration>(type: "interval", nullable: false),
                    idle_until = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    tablet_id = table.Column<Guid>(type: "uuid", nullable: true),
                    full_id = table.Column<Guid>(type: "uuid", nullable: true),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_because = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_sessions", x => x.id);
                    table.ForeignKey(
                        name: "fk_sign_in_sessions_sign_in_sessions_full_id",
                        column: x => x.full_id,
                        principalTable: "sign_in_sessions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_sign_in_sessions_users_user_id",
                        column: x => x.user_id,
                        principalTable: "users",
                        principalColumn: "id",
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
                name: "unit_kinds",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    base_material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    workshop_id = table.Column<Guid>(type: "uuid", nullable: true),
                    lead_half_days = table.Column<int>(type: "integer", nullable: false),
                    lead_nine_in_ten_days = table.Column<int>(type: "integer", nullable: false),
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
                name: "calendar_feeds",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    email = table.Column<string>(type: "text", nullable: false),
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
                name: "client_requests",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    client_id = table.Column<Guid>(type: "uuid", nullable: false),
                    salon_id = table.Column<Guid>(type: "uuid", nullable: false),
                    asked_by = table.Column<Guid>(type: "uuid", nullable: false),
                    asked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    because = table.Column<string>(type: "text", nullable: false),
                    answered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    granted = table.Column<bool>(type: "boolean", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_client_requests", x => new { x.practice_id, x.id });
                    table.ForeignKey(
                        name: "fk_client_requests_clients_practice_id_client_id",
                        columns: x => new { x.practice_id, x.client_id },
                        principalTable: "clients",
                        principalColumns: new[] { "practice_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_client_requests_salons_practice_id_salon_id",
                        columns: x => new { x.practice_id, x.salon_id },
                        principalTable: "salons",
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
                    invitation = table.Column<bool>(type: "boolean", nullable: false),
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
                    holds_client = table.Column<bool>(type: "boolean", nullable: false),
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
                    remade_times = table.Column<int>(type: "integer", nullable: true),
                    repeats_id = table.Column<Guid>(type: "uuid", nullable: true),
                    order_note = table.Column<string>(type: "text", nullable: true),
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
                        name: "fk_hair_systems_hair_systems_practice_id_repeats_id",
                        columns: x => new { x.practice_id, x.repeats_id },
                        principalTable: "hair_systems",
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
                    posterior = table.Column<double[]>(type: "double precision[]", nullable: false),
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
                name: "visit_segments",
                columns: table => new
                {
                    practice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    visit_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    chair_id = table.Column<Guid>(type: "uuid", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    starts_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    holds_chair = table.Column<bool>(type: "boolean", nullable: false),
                    holds_hands = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_visit_segments", x => new { x.practice_id, x.id });
                    table.CheckConstraint("ck_visit_segments_ends_after_start", "ends_at > starts_at");
                    table.ForeignKey(
                        name: "fk_visit_segments_chairs_practice_id_chair_id",
                        columns: x => new { x.practice_id, x.chair_id },
                        principalTable: "chairs",
                        principalColumns: new[] { "practice_id", "id" });
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
                name: "ix_bonds_open_lifted",
                table: "bonds",
                columns: new[] { "practice_id", "closes_on", "id" },
                filter: "removed_on is null and lift_reported_on is not null");

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
                name: "ix_calendar_feeds_practice_id_client_id",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_practice_id_email",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_practice_id_secret_hash",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "secret_hash" },
                unique: true);

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
                name: "ix_clearances_practice_id_client_id",
                table: "clearances",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_clearances_practice_id_product_id",
                table: "clearances",
                columns: new[] { "practice_id", "product_id" });

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
                name: "ix_client_merges_practice_id_folded_id",
                table: "client_merges",
                columns: new[] { "practice_id", "folded_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_merges_practice_id_kept_id",
                table: "client_merges",
                columns: new[] { "practice_id", "kept_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_preferences_practice_id_client_id",
                table: "client_preferences",
                columns: new[] { "practice_id", "client_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_client_requests_practice_id_client_id",
                table: "client_requests",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_requests_practice_id_salon_id",
                table: "client_requests",
                columns: new[] { "practice_id", "salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_sign_ins_practice_id_client_id",
                table: "client_sign_ins",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_client_sign_ins_practice_id_email",
                table: "client_sign_ins",
                columns: new[] { "practice_id", "email" });

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
                name: "ix_contact_notes_practice_id_client_id_at",
                table: "contact_notes",
                columns: new[] { "practice_id", "client_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_drafts_practice_id_person_id_form_subject_id",
                table: "drafts",
                columns: new[] { "practice_id", "person_id", "form", "subject_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ux_erasures_client",
                table: "erasures",
                columns: new[] { "practice_id", "client_id" },
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
                name: "ix_guardians_practice_id_client_id",
                table: "guardians",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_guardians_practice_id_email",
                table: "guardians",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_client_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_place_salon_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "place_salon_id" });

            migrationBuilder.CreateIndex(
                name: "ix_hair_systems_practice_id_repeats_id",
                table: "hair_systems",
                columns: new[] { "practice_id", "repeats_id" });

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
                name: "ix_health_answers_practice_id_answered_by",
                table: "health_answers",
                columns: new[] { "practice_id", "answered_by" });

            migrationBuilder.CreateIndex(
                name: "ix_health_answers_practice_id_client_id_saved_at",
                table: "health_answers",
                columns: new[] { "practice_id", "client_id", "saved_at" });

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
                name: "ix_link_asks_address_hash_at",
                table: "link_asks",
                columns: new[] { "address_hash", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_link_asks_at",
                table: "link_asks",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_stored_page_results_practice_id_question",
                table: "stored_page_results",
                columns: new[] { "practice_id", "question" });

            migrationBuilder.CreateIndex(
                name: "ix_load_forecasts_practice_id_salon_id",
                table: "load_forecasts",
                columns: new[] { "practice_id", "salon_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_opening_addresses_practice_id_client_id",
                table: "opening_addresses",
                columns: new[] { "practice_id", "client_id" });

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

            migrationBuilder.CreateIndex(
                name: "ux_opening_addresses_own",
                table: "opening_addresses",
                columns: new[] { "practice_id", "client_id" },
                unique: true,
                filter: "guardian_id is null and ended_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_order_forecasts_practice_id_workshop_id",
                table: "order_forecasts",
                columns: new[] { "practice_id", "workshop_id" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_own_texts_practice_id_topic_language",
                table: "own_texts",
                columns: new[] { "practice_id", "topic", "language" },
                unique: true);

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
                name: "ix_photos_practice_id_added_by",
                table: "photos",
                columns: new[] { "practice_id", "added_by" });

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_client_id_added_at",
                table: "photos",
                columns: new[] { "practice_id", "client_id", "added_at" });

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
                name: "ix_recalculations_practice_id_asked_at",
                table: "recalculations",
                columns: new[] { "practice_id", "asked_at" });

            migrationBuilder.CreateIndex(
                name: "ix_recalculations_practice_id_asked_by",
                table: "recalculations",
                columns: new[] { "practice_id", "asked_by" });

            migrationBuilder.CreateIndex(
                name: "ux_recalculations_one_at_a_time",
                table: "recalculations",
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
                name: "ix_retention_rules_practice_id_subject",
                table: "retention_rules",
                columns: new[] { "practice_id", "subject" },
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
                name: "ix_sealed_drafts_practice_id_client_id",
                table: "sealed_drafts",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ux_sealed_drafts_one_each",
                table: "sealed_drafts",
                columns: new[] { "practice_id", "person_id", "form", "client_id" },
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
                name: "ix_sign_in_sessions_full_id",
                table: "sign_in_sessions",
                column: "full_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_sessions_tablet_id",
                table: "sign_in_sessions",
                column: "tablet_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_sessions_user_id_created_at",
                table: "sign_in_sessions",
                columns: new[] { "user_id", "created_at" });

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
                name: "ix_unit_repairs_practice_id_hair_system_id",
                table: "unit_repairs",
                columns: new[] { "practice_id", "hair_system_id" });

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
                name: "ix_visit_segments_practice_id_chair_id_starts_at",
                table: "visit_segments",
                columns: new[] { "practice_id", "chair_id", "starts_at" });

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
                name: "ix_wear_factors_practice_id_quantity_habit",
                table: "wear_factors",
                columns: new[] { "practice_id", "quantity", "habit" },
                unique: true);

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

            // A chair, a pair of hands and a client are in one place at a time, whoever writes. Ranges stand only here: reads go by the
            // plain columns, which row security lets an index serve.
            migrationBuilder.Sql(
                """
                alter table visits add constraint ex_visits_client
                    exclude using gist (practice_id with =, client_id with =, tstzrange(starts_at, ends_at) with &&) where (holds_client);
                alter table visit_segments add constraint ex_visit_segments_chair
                    exclude using gist (practice_id with =, chair_id with =, tstzrange(starts_at, ends_at) with &&) where (holds_chair);
                alter table visit_segments add constraint ex_visit_segments_hands
                    exclude using gist (practice_id with =, person_id with =, tstzrange(starts_at, ends_at) with &&) where (holds_hands);
                """
            );
        }
    }
}
