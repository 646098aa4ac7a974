using HairClinic.Domain.Practices;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Keys;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace HairClinic.Web.Tests.AccessLog;

public sealed class AccessLogTests(PgServer server)
{
    private Guid _ada;
    private Person _sten = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Administrator =>
        new NpgsqlConnectionStringBuilder(server.Administrator)
        {
            Database = new NpgsqlConnectionStringBuilder(server.Connections.Program).Database,
        }.ToString();

    [Fact]
    public async Task Two_hundred_notes_at_once_make_one_chain_without_gaps()
    {
        await using var clinic = await OpenAsync();

        await Task.WhenAll(Enumerable.Range(0, 200).Select(_ => NoteAsync(clinic, AccessAction.OpenedHealth)));

        Assert.Equal(
            Enumerable.Range(1, 200).Select(n => (long)n),
            await clinic.ReadAsync(db => db.AccessNotes.OrderBy(n => n.Number).Select(n => n.Number).ToListAsync(Cancel))
        );
        var walked = await WalkAsync(clinic);
        Assert.True(walked.Whole);
        Assert.Equal(200, walked.Last.Number);
    }

    [Fact]
    public async Task A_note_says_who_in_which_role_did_what_with_whose_things()
    {
        await using var clinic = await OpenAsync();
        await NoteAsync(clinic, AccessAction.OpenedPhotos);

        var note = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(Cancel));

        Assert.Equal((AccessActorKind.Person, _sten.Id, "Stylist"), (note.ActorKind, note.ActorId!.Value, note.Role));
        Assert.Equal((AccessAction.OpenedPhotos, _ada, TestClinic.UsualNow), (note.Action, note.ClientId!.Value, note.At));
        var seen = Assert.Single(await clinic.ReadAsync(db => AccessLogStore.AccessesToClientAsync(db, _ada, Cancel)));
        Assert.Equal(new AccessLogStore.Seen(TestClinic.UsualNow, AccessActorKind.Person, "Stylist", AccessAction.OpenedPhotos), seen);
    }

    [Fact]
    public async Task A_note_in_a_transaction_falls_with_it_and_leaves_no_gap()
    {
        await using var clinic = await OpenAsync();
        await clinic.AsAsync(
            clinic.Acting(_sten),
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await using var transaction = await db.Database.BeginTransactionAsync(Cancel);
                await services.GetRequiredService<AccessLogStore>().NoteAsync(db, AccessAction.SavedHealth, _ada, cancellation: Cancel);
                await transaction.RollbackAsync(Cancel);
                return true;
            }
        );
        await NoteAsync(clinic, AccessAction.OpenedHealth);

        Assert.Equal(1, (await WalkAsync(clinic)).Last.Number);
    }

    [Theory]
    [InlineData("update access_notes set reason = 'x' where practice_id = '{0}'")]
    [InlineData("delete from access_notes where practice_id = '{0}'")]
    [InlineData("truncate access_notes")]
    [InlineData("delete from access_heads where practice_id = '{0}'")]
    public async Task Nobody_but_a_superuser_can_change_or_remove_a_line(string sql)
    {
        await using var clinic = await OpenAsync();
        await NoteAsync(clinic, AccessAction.OpenedHealth);
        var statement = string.Format(null, sql, clinic.PracticeId);

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.RefusalAsync(server.Connections.Program, statement));
        if (sql.Contains("access_notes", StringComparison.Ordinal))
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.RefusalAsync(server.Connections.Migrator!, statement));
        Assert.True((await WalkAsync(clinic)).Whole);
    }

    [Theory]
    [InlineData("update access_notes set role = 'Owner' where practice_id = '{0}' and number = 3", 3)]
    [InlineData("update access_notes set at = at + interval '1 microsecond' where practice_id = '{0}' and number = 2", 2)]
    [InlineData("update access_notes set client_id = null where practice_id = '{0}' and number = 1", 1)]
    [InlineData("update access_notes set reason = '' where practice_id = '{0}' and number = 4", 4)]
    [InlineData("delete from access_notes where practice_id = '{0}' and number = 2", 2)]
    [InlineData("delete from access_notes where practice_id = '{0}' and number = 5", 5)]
    public async Task The_first_line_that_was_changed_or_taken_out_is_named(string sql, long number)
    {
        await using var clinic = await OpenAsync();
        for (var i = 0; i < 5; i++)
            await NoteAsync(clinic, AccessAction.OpenedHealth);
        await Sql.AskAsync(Administrator, string.Format(null, sql, clinic.PracticeId));

        Assert.Equal(number, (await WalkAsync(clinic)).Broken);
    }

    [Fact]
    public async Task A_log_cut_short_together_with_its_head_is_caught_by_the_head_that_was_written_down()
    {
        await using var clinic = await OpenAsync();
        for (var i = 0; i < 4; i++)
            await NoteAsync(clinic, AccessAction.OpenedHealth);
        var head = (await WalkAsync(clinic)).Last;
        await NoteAsync(clinic, AccessAction.OpenedHealth);
        Assert.True((await WalkAsync(clinic, head)).Whole);

        await Sql.AskAsync(
            Administrator,
            $"""
            delete from access_notes where practice_id = '{clinic.PracticeId}' and number > 3;
            update access_heads h set (number, hash) = (select number, hash from access_notes n where n.practice_id = h.practice_id and number = 3)
            where practice_id = '{clinic.PracticeId}'
            """
        );

        Assert.True((await WalkAsync(clinic)).Whole);
        Assert.True((await WalkAsync(clinic, head)).MissesHead);
    }

    [Fact]
    public async Task Lines_outlive_a_rotation_of_the_master_key()
    {
        await using var clinic = await OpenAsync();
        await NoteAsync(clinic, AccessAction.OpenedHealth);
        await clinic.UseAsync<MasterKeys, MasterKey>(clinic.Job, keys => Task.FromResult(keys.GenerateNew()));
        await NoteAsync(clinic, AccessAction.SavedHealth);

        Assert.Equal(2, await clinic.ReadAsync(db => db.AccessNotes.Select(n => n.KeyId).Distinct().CountAsync(Cancel)));
        Assert.True((await WalkAsync(clinic)).Whole);
    }

    private async Task<TestClinic> OpenAsync() =>
        await TestClinic.OpenAsync(
            server,
            scene =>
            {
                var salon = scene.AddPractice("Practice under test").OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                _ada = scene.AddClient("C-1", "Ada Fenwick", salon).Id;
                _sten = scene.Hire("Sten Ito", StaffRole.Stylist, salon);
            }
        );

    private Task<bool> NoteAsync(TestClinic clinic, AccessAction deed) =>
        clinic.AsAsync(
            clinic.Acting(_sten),
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services.GetRequiredService<AccessLogStore>().NoteAsync(db, deed, _ada, cancellation: Cancel);
                return true;
            }
        );

    private static Task<AccessLogCheck.Outcome> WalkAsync(TestClinic clinic, AccessLogCheck.Head? written = null) =>
        clinic.UseAsync<AccessLogCheck, AccessLogCheck.Outcome>(clinic.Job, check => check.WalkAsync(clinic.PracticeId, written, Cancel));
}
