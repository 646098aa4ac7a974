using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Privacy;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Tests.Privacy;

public sealed class PracticeEraserTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_of_the_practice_is_left_and_the_others_are_untouched()
    {
        await using var ours = await TestClinic.OpenAsync(server, Lay);
        await using var theirs = await TestClinic.OpenAsync(server, Lay);
        await AddAccountAsync(ours);
        await AddAccountAsync(theirs);
        var before = await RowsAsync(theirs.PracticeId);
        Assert.Equal(
            before.Where(t => t.Value > 0).Select(t => t.Key),
            (await RowsAsync(ours.PracticeId)).Where(t => t.Value > 0).Select(t => t.Key)
        );

        var gone = await ours.ReadAsync(db => PracticeEraser.EraseAsync(db, Cancel));

        Assert.All(await RowsAsync(ours.PracticeId), table => Assert.Equal(0, table.Value));
        Assert.Equal(before, await RowsAsync(theirs.PracticeId));
        Assert.Equal(before.Values.Sum(), gone);
    }

    [Fact]
    public void Every_fenced_table_has_its_turn_once_and_after_those_that_refer_to_it()
    {
        using var db = new ClinicDb(ClinicDbOptions.For("Host=layout"));
        var order = PracticeEraser.Tables(db.Model).ToList();

        Assert.Equal(ClinicDb.FencedTypes.Count(), order.Distinct().Count());
        var wrong =
            from type in db.Model.GetEntityTypes()
            where type.ClrType.IsSubclassOf(typeof(PracticeOwned))
            from key in type.GetForeignKeys()
            where key.PrincipalEntityType != type
            where order.IndexOf(type.GetTableName()!) > order.IndexOf(key.PrincipalEntityType.GetTableName()!)
            select $"{type.GetTableName()} → {key.PrincipalEntityType.GetTableName()}";
        Assert.Empty(wrong);
    }

    private static void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        salon.AddClosure(Guid.CreateVersion7(), new LocalDate(2027, 8, 1), new LocalDate(2027, 8, 7), "Painting");
        var stylist = scene.Hire("Sten Ito", StaffRole.Stylist, salon);
        var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "A-1");
        var kind = scene.AddUnitKind("Everyday", "French lace", "Workshop North");
        var client = scene.AddClient("C-1", "Ada Fenwick", salon);
        var unit = scene.AddUnit(client, kind, new LocalDate(2027, 1, 4));
        scene.AddBond(client, unit, new LocalDate(2027, 1, 12), adhesive);
        scene.Book(
            client,
            scene.ServiceWithPurpose(ServicePurpose.Rebond),
            scene.Chairs[0],
            stylist,
            TestClinic.UsualNow + Duration.FromDays(7)
        );
        scene.Db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, TestClinic.UsualNow));
    }

    private static Task<int> AddAccountAsync(TestClinic clinic) =>
        clinic.ReadAsync(db =>
        {
            var name = $"sten-{clinic.PracticeId:N}";
            db.Users.Add(
                new AppUser
                {
                    Id = Guid.CreateVersion7(),
                    PracticeId = clinic.PracticeId,
                    PersonId = Guid.CreateVersion7(),
                    UserName = name,
                    NormalizedUserName = name.ToUpperInvariant(),
                    SecurityStamp = "stamp",
                }
            );
            db.SignInLinks.Add(
                new SignInLink(
                    Guid.CreateVersion7().ToByteArray(),
                    clinic.PracticeId,
                    Guid.CreateVersion7(),
                    "ada@example.test",
                    TestClinic.UsualNow
                )
            );
            return db.SaveChangesAsync(Cancel);
        });

    // As the superuser, whom no fence holds back: what is counted is what is there.
    private async Task<SortedDictionary<string, long>> RowsAsync(Guid practice)
    {
        await using var connection = new NpgsqlConnection(
            new NpgsqlConnectionStringBuilder(server.Administrator)
            {
                Database = new NpgsqlConnectionStringBuilder(server.Connections.Program).Database,
            }.ToString()
        );
        await connection.OpenAsync(Cancel);
        var tables = new List<string>();
        await using (
            var ask = new NpgsqlCommand(
                "select table_name from information_schema.columns where table_schema = 'public' and column_name = 'practice_id'",
                connection
            )
        )
        await using (var reader = await ask.ExecuteReaderAsync(Cancel))
        {
            while (await reader.ReadAsync(Cancel))
                tables.Add(reader.GetString(0));
        }
        var rows = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var (table, column) in tables.Select(t => (t, "practice_id")).Append(("practices", "id")))
        {
            await using var count = new NpgsqlCommand($"select count(*) from {table} where {column} = $1", connection)
            {
                Parameters = { new() { Value = practice } },
            };
            rows[table] = (long)(await count.ExecuteScalarAsync(Cancel))!;
        }
        return rows;
    }
}
