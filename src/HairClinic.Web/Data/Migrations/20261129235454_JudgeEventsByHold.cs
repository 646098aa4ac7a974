using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace HairClinic.Web.Data.Migrations
{
    public partial class JudgeEventsByHold : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "celebration_sound_percent",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 99);

            migrationBuilder.AddColumn<int>(
                name: "journey_sound_percent",
                table: "practice_settings",
                type: "integer",
                nullable: false,
                defaultValue: 90);

            migrationBuilder.AddColumn<Guid>(
                name: "bonding_again_by",
                table: "life_events",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "bonding_again_from",
                table: "life_events",
                type: "date",
                nullable: true);

            // The migrator owns the tables and acts for no practice: for the moment their policies do not bind it. After an operation of
            // before nobody could record that bonding may begin again; a bond that was made since says that it did.
            migrationBuilder.Sql(
                """
                alter table practice_settings alter column celebration_sound_percent drop default,
                    alter column journey_sound_percent drop default;
                alter table practice_settings no force row level security;
                alter table life_events no force row level security;
                alter table bonds no force row level security;
                alter table work_items no force row level security;
                update life_events set kind = 'Operation',
                    bonding_again_from = (select min(b.applied_on) from bonds b
                        where b.practice_id = life_events.practice_id and b.client_id = life_events.client_id
                            and b.applied_on >= life_events."from" and b.removed_because is distinct from 'TakenBack')
                    where kind = 'Surgery';
                insert into work_items (practice_id, id, kind, body, asked_at, not_before, attempts)
                    select practice_id, gen_random_uuid(), 'RefreshDueDates', '{}'::jsonb, now(), now(), 0
                    from practice_settings p where exists (select from life_events e where e.practice_id = p.practice_id);
                alter table practice_settings force row level security;
                alter table life_events force row level security;
                alter table bonds force row level security;
                alter table work_items force row level security;
                """
            );
        }
    }
}
