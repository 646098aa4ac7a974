using System.Globalization;
using System.Resources;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Features.Privacy;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using HairClinic.Web.Mail;
using HairClinic.Web.Privacy;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;
using CareSlice = HairClinic.Web.Features.Clients.RecordSkinAndHabits;
using Slice = HairClinic.Web.Features.Privacy.EraseClient;

namespace HairClinic.Web.Tests.Features.Privacy.EraseClient;

public sealed class EraseClientTests(PgServer server)
{
    private readonly PrivacyScene _scene = new();

    private static CancellationToken Cancel => PrivacyScene.Cancel;

    [Fact]
    public async Task After_it_no_text_of_any_table_tells_who_the_client_was()
    {
        await using var clinic = await _scene.OpenAsync(server);
        Assert.NotEmpty(await FoundAsync());

        await EraseAsync(clinic);

        // The serial stays on the base and in the workshop's books; it is told on the screen.
        Assert.DoesNotContain(await FoundAsync(), f => f is not ("hair_systems.serial: Q-7719" or "find_words.word: q7719"));
    }

    [Fact]
    public async Task What_the_screen_says_is_what_is_done_and_recorded()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var screen = await LookAsync(clinic);

        var outcome = await EraseAsync(clinic);

        Assert.Equal(screen!.Counts.OrderBy(c => c.Key), outcome.Counts.OrderBy(c => c.Key));
        var erasure = await clinic.ReadAsync(db => db.Erasures.SingleAsync(Cancel));
        Assert.Equal(outcome.Counts.OrderBy(c => c.Key), erasure.Counts.OrderBy(c => c.Key));
        Assert.Equal(
            (_scene.Client.Id, (Guid?)_scene.Owner.Id, ErasureExemptions.Version),
            (erasure.ClientId, erasure.By, erasure.RuleVersion)
        );
        Assert.True(
            await clinic.ReadAsync(db =>
                db.AccessNotes.AnyAsync(n => n.Action == AccessAction.ErasedClient && n.ClientId == _scene.Client.Id, Cancel)
            )
        );
    }

    [Fact]
    public async Task Bonds_units_and_visits_stay_and_the_visit_ahead_is_called_off_with_its_chair_free()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await EraseAsync(clinic);

        var visit = await clinic.ReadAsync(db => db.Visits.Include(v => v.Segments).SingleAsync(v => v.Id == _scene.Ahead.Id, Cancel));
        Assert.Equal((VisitState.Cancelled, false, null), (visit.State, visit.HoldsChair, visit.Note));
        Assert.DoesNotContain(visit.Segments, s => s.HoldsHands);
        Assert.Equal(1, await clinic.ReadAsync(db => db.Bonds.CountAsync(b => b.ClientId == _scene.Client.Id && b.Products.Any(), Cancel)));
        Assert.Equal(1, await clinic.ReadAsync(db => db.HairSystems.CountAsync(u => u.ClientId == _scene.Client.Id, Cancel)));
    }

    [Fact]
    public async Task Somebody_else_is_untouched()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await EraseAsync(clinic);

        var other = await clinic.ReadAsync(db => db.Clients.SingleAsync(c => c.Code == "Q-7720", Cancel));
        Assert.Equal(("Somebody Else", "+441632960078"), (other.Name, other.Phone));
        Assert.True(await clinic.ReadAsync(db => db.FindWords.AnyAsync(w => w.SubjectId == other.Id, Cancel)));
    }

    [Fact]
    public async Task Letters_to_their_addresses_and_to_whoever_reads_for_them_go_at_once_sent_or_not()
    {
        await using var clinic = await _scene.OpenAsync(server);
        // As they typed it when they asked for a link, not as the desk wrote it down.
        string[] theirs = [_scene.Client.Email!.ToUpperInvariant(), "ward-reader@example.test", "earlier@example.test"];
        foreach (var email in new[] { theirs[2], _scene.Client.Email })
            await clinic.ReadAsync(db =>
                db.Clients.Where(c => c.Id == _scene.Client.Id).ExecuteUpdateAsync(set => set.SetProperty(c => c.Email, email), Cancel)
            );
        await clinic.LayAsync(given =>
        {
            given.Db.Guardians.Add(new(Guid.CreateVersion7(), _scene.Client.Id, "A reader", theirs[1], endsOn: null));
            foreach (var to in theirs.Append("somebody-else@example.test"))
                given.Db.WorkItems.Add(WorkItemFactory.SendLetter(new Letter(to, "Your link", "A link."), TestClinic.UsualNow));
        });
        var marked = $"{Guid.NewGuid():N}";
        await clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                foreach (var to in theirs.Append("somebody-else@example.test"))
                    await services
                        .GetRequiredService<FolderMailSender>()
                        .SendAsync(new Letter(to, "Your link", marked), LetterDelivery.ForSingleAttempt(), Cancel);
                return true;
            }
        );

        await EraseAsync(clinic);

        var waiting = await clinic.ReadAsync(db => db.WorkItems.Where(w => w.Kind == WorkKind.SendMail).ToListAsync(Cancel));
        Assert.Equal(["somebody-else@example.test"], waiting.Select(w => WorkItemFactory.ReadBody<Letter>(w).To));
        var letters = Directory
            .GetFiles(server.MailFolder)
            .Select(File.ReadAllText)
            .Where(l => l.Contains(marked, StringComparison.Ordinal));
        Assert.StartsWith("To: somebody-else@example.test", Assert.Single(letters), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_thing_it_does_is_told_in_words()
    {
        await using var clinic = await _scene.OpenAsync(server);

        var steps = await clinic.ReadAsync(db => Task.FromResult(ErasureStep.Plan(db.Model).Select(s => s.Key).ToList()));

        Assert.DoesNotContain(steps, step => new ResourceManager(typeof(Words)).GetString(step, CultureInfo.InvariantCulture) is null);
    }

    [Fact]
    public async Task Photos_cannot_be_opened_at_once_and_their_files_go_with_the_next_work()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var folder = Path.Combine(server.FilesFolder, clinic.PracticeId.ToString("N"));
        Assert.NotEmpty(Directory.GetFiles(folder));

        await EraseAsync(clinic);
        Assert.NotNull(
            await clinic.ReadAsync(db =>
                db.ClientKeys.Where(k => k.ClientId == _scene.Client.Id).Select(k => k.DestroyedAt).SingleAsync(Cancel)
            )
        );
        await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, w => w.RunAllDueAsync(Cancel));

        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task Another_code_erases_nothing_and_neither_does_the_desk()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var screen = await LookAsync(clinic);

        await Refused.SayingAsync(
            "That is not this client's code. Nothing was erased.",
            () => SaveAsync(clinic, _scene.AsOwner(clinic), Guid.CreateVersion7(), "Q-7720", screen!)
        );
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, clinic.Acting(_scene.Given.Desk, _scene.Given.Here), Guid.CreateVersion7(), "Q-7719", screen!)
        );

        Assert.NotEmpty(await FoundAsync());
    }

    [Fact]
    public async Task A_manager_whose_salon_was_let_in_finds_nobody_to_erase_and_one_at_home_does()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await clinic.LayAsync(s =>
            s.Db.ClientGrants.Add(
                new ClientGrant(
                    Guid.CreateVersion7(),
                    _scene.Client.Id,
                    _scene.Given.There.Id,
                    s.Now,
                    s.Now + Duration.FromDays(9),
                    _scene.Owner.Id,
                    "Holiday"
                )
            )
        );
        var screen = (await LookAsync(clinic))!;
        var there = clinic.Acting(await PersonAsync("Manager there"), _scene.Given.There);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(there, s => s.OpenAsync(_scene.Client.Id, Cancel)));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, there, Guid.CreateVersion7(), "Q-7719", screen)
        );
        await SaveAsync(
            clinic,
            clinic.Acting(_scene.Given.Of(StaffRole.Manager), _scene.Given.Here),
            Guid.CreateVersion7(),
            "Q-7719",
            screen
        );

        Task<Person> PersonAsync(string name) => clinic.ReadAsync(db => db.People.SingleAsync(p => p.Name == name, Cancel));
    }

    [Fact]
    public async Task Who_is_in_the_chair_today_is_not_erased()
    {
        await using var clinic = await _scene.OpenAsync(server);
        clinic.Clock.Reset(_scene.Ahead.StartsAt);
        await clinic.ReadAsync(async db =>
        {
            (await db.Visits.SingleAsync(v => v.Id == _scene.Ahead.Id, Cancel)).Begin(_scene.Ahead.Day);
            return await db.SaveChangesAsync(Cancel);
        });

        var screen = await LookAsync(clinic);

        Assert.NotNull(screen!.Refused);
        await Refused.SayingAsync(
            "This client is in the salon today. Finish the visit first.",
            () => SaveAsync(clinic, _scene.AsOwner(clinic), Guid.CreateVersion7(), "Q-7719", screen)
        );
    }

    [Fact]
    public async Task What_was_written_since_the_screen_opened_stops_it()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var screen = await LookAsync(clinic);
        await CareAsync(clinic);

        await Refused.SayingAsync(
            "Something was written on this client meanwhile. Nothing was erased; look at the list again.",
            () => SaveAsync(clinic, _scene.AsOwner(clinic), Guid.CreateVersion7(), "Q-7719", screen!)
        );

        Assert.NotEmpty(await FoundAsync());
    }

    [Fact]
    public async Task On_an_erased_client_the_database_lets_nobody_write()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await EraseAsync(clinic);

        await Refused.SayingAsync("This client was erased meanwhile. Nothing was saved.", () => CareAsync(clinic));
    }

    [Fact]
    public async Task A_save_that_races_it_comes_wholly_before_or_not_at_all()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var screen = await LookAsync(clinic);

        var saves = Enumerable.Range(0, 6).Select(_ => Task.Run(() => TriedAsync(() => CareAsync(clinic)))).ToList();
        var erased = await TriedAsync(() => SaveAsync(clinic, _scene.AsOwner(clinic), Guid.CreateVersion7(), "Q-7719", screen!));
        await Task.WhenAll(saves);

        var left = await clinic.ReadAsync(db => db.CareFacts.CountAsync(f => f.ClientId == _scene.Client.Id, Cancel));
        Assert.Equal(erased ? 0 : 1 + saves.Count(s => s.Result), left);
    }

    [Fact]
    public async Task A_second_tap_gets_the_first_answer()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var (key, screen) = (Guid.CreateVersion7(), await LookAsync(clinic));

        var first = await SaveAsync(clinic, _scene.AsOwner(clinic), key, "Q-7719", screen!);
        var second = await SaveAsync(clinic, _scene.AsOwner(clinic), key, "Q-7719", screen!);

        Assert.Equal(first.Counts.OrderBy(c => c.Key), second.Counts.OrderBy(c => c.Key));
    }

    private static async Task<bool> TriedAsync(Func<Task> action)
    {
        try
        {
            await action();
            return true;
        }
        catch (Refusal)
        {
            return false;
        }
    }

    private Task<CareSlice.Outcome> CareAsync(TestClinic clinic) =>
        clinic.UseAsync<CareSlice, CareSlice.Outcome>(
            _scene.AsOwner(clinic),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        ClientId = _scene.Client.Id,
                        Habits = new() { SwimsPerWeek = 1 },
                    },
                    Cancel
                )
        );

    private Task<Slice.Screen?> LookAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(_scene.AsOwner(clinic), s => s.OpenAsync(_scene.Client.Id, Cancel));

    private async Task<Slice.Outcome> EraseAsync(TestClinic clinic) =>
        await SaveAsync(clinic, _scene.AsOwner(clinic), Guid.CreateVersion7(), "q-7719", (await LookAsync(clinic))!);

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, PersonActor actor, Guid key, string code, Slice.Screen screen) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            actor,
            s =>
                s.SaveAsync(
                    key,
                    new()
                    {
                        ClientId = _scene.Client.Id,
                        Code = code,
                        Expected = screen.Counts,
                    },
                    Cancel
                )
        );

    // Every column of every table that can hold words, read past the fence.
    private async Task<List<string>> FoundAsync()
    {
        await using var connection = new NpgsqlConnection(server.Connections.Migrator);
        await connection.OpenAsync(Cancel);
        var columns = new List<(string Table, string Column)>();
        await using (
            var ask = new NpgsqlCommand(
                """
                select c.table_name, c.column_name from information_schema.columns c
                join information_schema.columns p on p.table_name = c.table_name and p.table_schema = c.table_schema and p.column_name = 'practice_id'
                where c.table_schema = 'public' and c.data_type in ('text', 'jsonb', 'json', 'character varying', 'date')
                """,
                connection
            )
        )
        await using (var reader = await ask.ExecuteReaderAsync(Cancel))
        {
            while (await reader.ReadAsync(Cancel))
                columns.Add((reader.GetString(0), reader.GetString(1)));
        }
        var found = new List<string>();
        foreach (var (table, column) in columns)
        {
            await using var look = new NpgsqlCommand(
                $"select distinct told from {table}, unnest(@told) told where practice_id = @practice and strpos(lower(\"{column}\"::text), lower(told)) > 0",
                connection
            );
            look.Parameters.AddWithValue("told", PrivacyScene.Telling.Append("1971-03-09").Append("q7719").ToArray());
            look.Parameters.AddWithValue("practice", _scene.Client.PracticeId);
            await using var reader = await look.ExecuteReaderAsync(Cancel);
            while (await reader.ReadAsync(Cancel))
                found.Add($"{table}.{column}: {reader.GetString(0)}");
        }
        return found;
    }
}
