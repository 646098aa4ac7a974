using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Data.Migrations;

/// <summary>What the clients' own pages add to the schema by hand.</summary>
public static class OwnPagesSql
{
    public static void Apply(MigrationBuilder migration)
    {
        migration.Sql("update practice_settings set client_move_hours = 24;");
        // What a new practice offers to its clients, for practices that are older. The migrator steps over the fence.
        migration.Sql(
            "update service_kinds set offered_to_clients = true where purpose in ('Rebond', 'WashAndStyle', 'FixLift') and not retired;"
        );
    }
}
