using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class GuardTheBook : Migration
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

            migrationBuilder.AddColumn<long>(
                name: "last_code_step",
                table: "users",
                type: "bigint",
                nullable: true);

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

            migrationBuilder.AddColumn<int>(
                name: "grant_days_after_visit",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 90);

            migrationBuilder.AddColumn<Instant>(
                name: "erased_at",
                table: "clients",
                type: "timestamp with time zone",
                nullable: true);

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
                    idle_until = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    ended_because = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_sessions", x => x.id);
                    table.ForeignKey(
                        name: "fk_sign_in_sessions_users_user_id",
                        column: x => x.user_id,
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
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
                name: "ix_calendar_feeds_practice_id_client_id",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_feeds_practice_id_secret_hash",
                table: "calendar_feeds",
                columns: new[] { "practice_id", "secret_hash" },
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
                name: "ix_guardians_practice_id_client_id",
                table: "guardians",
                columns: new[] { "practice_id", "client_id" });

            migrationBuilder.CreateIndex(
                name: "ix_guardians_practice_id_email",
                table: "guardians",
                columns: new[] { "practice_id", "email" });

            migrationBuilder.CreateIndex(
                name: "ix_health_answers_practice_id_answered_by",
                table: "health_answers",
                columns: new[] { "practice_id", "answered_by" });

            migrationBuilder.CreateIndex(
                name: "ix_health_answers_practice_id_client_id_saved_at",
                table: "health_answers",
                columns: new[] { "practice_id", "client_id", "saved_at" });

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

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_added_by",
                table: "photos",
                columns: new[] { "practice_id", "added_by" });

            migrationBuilder.CreateIndex(
                name: "ix_photos_practice_id_client_id_added_at",
                table: "photos",
                columns: new[] { "practice_id", "client_id", "added_at" });

            migrationBuilder.CreateIndex(
                name: "ix_retention_rules_practice_id_subject",
                table: "retention_rules",
                columns: new[] { "practice_id", "subject" },
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
                name: "ix_sign_in_sessions_user_id_created_at",
                table: "sign_in_sessions",
                columns: new[] { "user_id", "created_at" });

            Fence.Around(
                migrationBuilder,
                "access_heads",
                "access_notes",
                "calendar_feeds",
                "clearances",
                "client_grants",
                "client_keys",
                "client_preferences",
                "client_requests",
                "client_sign_ins",
                "consent_texts",
                "consents",
                "erasures",
                "guardians",
                "health_answers",
                "own_texts",
                "photos",
                "retention_rules",
                "sealed_drafts"
            );
            GrantsOfToday.Fill(migrationBuilder);
            AccessLogSql.OnlyAdd(migrationBuilder);
            PrivacySql.OnlyAdd(migrationBuilder);
            PrivacySql.KeepErased(migrationBuilder);
            OwnPagesSql.Apply(migrationBuilder);
        }
    }
}
