using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using NodaTime;
using Npgsql;

namespace HairClinic.Benchmarks.DueQuery;

/// <summary>
/// A practice with as many clients as asked, one unit bonded on each head, windows four to six weeks, bonded over the last sixty
/// days. One in two hundred has lifted, one in five is booked, one in four was rung, one in forty put off, one in three has a spare.
/// </summary>
internal sealed record LargeBook(Guid PracticeId, Guid SalonId, Guid DeskId, int Clients)
{
    public PersonActor Desk => new(PracticeId, DeskId, StaffRole.FrontDesk, [SalonId], SalonId);

    public static async Task<LargeBook> LayAsync(IServiceProvider services, string administrator, int clients, LocalDate today)
    {
        Scene? scene = null;
        var practice = await NewPractice.LayAsync(
            services,
            async (_, _, db) =>
            {
                scene = new Scene(db, SystemClock.Instance.GetCurrentInstant());
                scene.AddPractice($"{clients} clients");
                var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
                scene.Hire("Desk", StaffRole.FrontDesk, salon);
                scene.AddUnitKind("Everyday", "Monofilament with poly rim", "Workshop North");
                await scene.SaveAsync();
            }
        );
        var book = new LargeBook(practice, scene!.Salons[0].Id, scene.People[0].Id, clients);
        await book.FillAsync(administrator, scene, today);
        return book;
    }

    private async Task FillAsync(string administrator, Scene scene, LocalDate today)
    {
        await using var connection = new NpgsqlConnection(administrator);
        await connection.OpenAsync();
        // The rows are sound by construction: reference checks of millions of rows would only take time.
        await RunAsync("set session_replication_role = replica");
        foreach (var sql in LargeBookSql.Tables)
            await RunAsync(sql);
        if (Clients > 1000)
            await RunAsync("vacuum analyze");

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
            if (sql.Contains('@'))
            {
                command.Parameters.AddWithValue("practice", PracticeId);
                command.Parameters.AddWithValue("salon", SalonId);
                command.Parameters.AddWithValue("desk", DeskId);
                command.Parameters.AddWithValue("kind", scene.Kinds[0].Id);
                command.Parameters.AddWithValue("rebond", scene.Services.First(s => s.Purpose == Domain.Visits.ServicePurpose.Rebond).Id);
                command.Parameters.AddWithValue("count", Clients);
                command.Parameters.AddWithValue("today", today.ToDateOnly());
            }
            await command.ExecuteNonQueryAsync();
        }
    }
}
