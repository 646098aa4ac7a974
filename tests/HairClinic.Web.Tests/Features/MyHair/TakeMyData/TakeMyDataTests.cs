using System.IO.Compression;
using System.Net;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Security;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using Slice = HairClinic.Web.Features.MyHair.TakeMyData;

namespace HairClinic.Web.Tests.Features.MyHair.TakeMyData;

public sealed class TakeMyDataTests(PgServer server)
{
    private readonly OwnScene _own = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_link_opened_a_moment_ago_lets_them_take_it_and_an_older_one_does_not()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var actor = await SignInAsync(clinic);

        Assert.True((await OpenAsync(clinic, actor))!.Fresh);
        clinic.Clock.Advance(SessionStore.Fresh);
        Assert.False((await OpenAsync(clinic, actor))!.Fresh);
        Assert.False((await OpenAsync(clinic, _own.Acting(clinic)))!.Fresh);
    }

    [Fact]
    public async Task The_archive_holds_their_own_rows_and_nobody_elses_and_is_noted_as_theirs()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        using var file = new MemoryStream();

        Assert.True(await clinic.UseAsync<Slice, bool>(_own.Acting(clinic), s => s.WriteAsync(() => file, Cancel)));

        file.Position = 0;
        using var archive = new ZipArchive(file);
        using var reader = new StreamReader(await archive.GetEntry("client.json")!.OpenAsync(Cancel));
        var json = await reader.ReadToEndAsync(Cancel);
        Assert.Contains("Ada Fenwick", json, StringComparison.Ordinal);
        Assert.DoesNotContain("Bo Larch", json, StringComparison.Ordinal);
        var note = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(Cancel));
        Assert.Equal(
            (AccessAction.ExportedClient, AccessActorKind.Client, _own.Client.Id, _own.Client.Id),
            (note.Action, note.ActorKind, note.ActorId!.Value, note.ClientId!.Value)
        );
    }

    [Fact]
    public async Task A_new_link_goes_to_the_address_the_sign_in_came_by()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var actor = await SignInAsync(clinic);

        await clinic.UseAsync<Slice, bool>(
            actor,
            async s =>
            {
                await s.SaveAsync(Cancel);
                return true;
            }
        );

        Assert.Equal(1, await clinic.ReadAsync(db => db.LinkAsks.CountAsync(a => a.Address == _own.Address, Cancel)));
    }

    [Fact]
    public async Task Over_the_wire_it_is_a_file_without_a_telling_name_that_no_browser_keeps()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var browser = await site.OpenLinkAsync(site.Here.Own.Client);

        using var answer = await browser.GetAsync("/my-hair/take-my-data/file", Cancel);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/zip", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("attachment; filename=\"my-data.zip\"", answer.Content.Headers.ContentDisposition!.ToString());
        Assert.True(answer.Headers.CacheControl!.NoStore);
        using var archive = new ZipArchive(await answer.Content.ReadAsStreamAsync(Cancel));
        Assert.Contains(archive.Entries, e => e.FullName == "readable.pdf");
    }

    [Fact]
    public async Task Over_the_wire_an_older_sign_in_is_led_to_where_a_new_link_is_sent()
    {
        var clock = new FakeClock(SystemClock.Instance.GetCurrentInstant());
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder => builder.ConfigureTestServices(services => services.AddSingleton<IClock>(clock))
        );
        var browser = await site.OpenLinkAsync(site.Here.Own.Client);
        clock.Advance(SessionStore.Fresh);

        using var answer = await browser.GetAsync("/my-hair/take-my-data/file", Cancel);

        Assert.Equal("/my-hair/take-my-data", answer.Headers.Location!.OriginalString);
        Assert.Contains("Send me a new link", await browser.GetStringAsync("/my-hair/take-my-data", Cancel), StringComparison.Ordinal);
    }

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, ClientActor actor) =>
        clinic.UseAsync<Slice, Slice.Screen?>(actor, s => s.OpenAsync(Cancel));

    private Task<ClientActor> SignInAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var signIn = new ClientSignIn(Guid.NewGuid(), _own.Client.Id, _own.Address, clinic.Clock.GetCurrentInstant());
            db.ClientSignIns.Add(signIn);
            await db.SaveChangesAsync(Cancel);
            return new ClientActor(clinic.PracticeId, _own.Client.Id, signIn.Id);
        });
}
