using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Workers;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Clients.EndNeed;

/// <summary>What is sent, ordered and opened once a need has ended.</summary>
public sealed class EndNeedLettersTests(PgServer server)
{
    private readonly EndNeedScene _scene = new();

    private static CancellationToken Cancel => EndNeedScene.Cancel;

    [Theory]
    [InlineData(NeedEnd.Died)]
    [InlineData(NeedEnd.MovedAway)]
    [InlineData(NeedEnd.HairReturned)]
    public async Task What_waits_for_them_goes_at_once_and_what_opens_their_pages_ends(NeedEnd because)
    {
        await using var clinic = await _scene.OpenAsync(server);
        var own = await clinic.SignInAsync(_scene.Ada.Id);

        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, because));

        Assert.Equal(["desk@example.test"], await WaitingAsync(clinic));
        Assert.Equal((0, 0), await OpenAsync(clinic));
        await Assert.ThrowsAsync<StaleActorException>(() => DatesAsync(clinic, own));
    }

    [Fact]
    public async Task Whoever_tries_without_keeps_their_page_and_gets_the_link_they_asked_for_and_no_invitation()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var own = await clinic.SignInAsync(_scene.Ada.Id);

        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.TryingWithout));

        Assert.Equal(["ada@example.test", "desk@example.test"], (await WaitingAsync(clinic)).Order());
        Assert.Equal((2, 1), await OpenAsync(clinic));
        Assert.NotNull(await DatesAsync(clinic, own));
    }

    [Theory]
    [InlineData(NeedEnd.Died, LetterKind.SignInLink, 0)]
    [InlineData(NeedEnd.Died, LetterKind.AddressEnded, 0)]
    [InlineData(NeedEnd.TryingWithout, LetterKind.SignInLink, 1)]
    [InlineData(NeedEnd.TryingWithout, LetterKind.Invitation, 0)]
    public async Task What_is_written_to_them_afterwards_is_not_sent(NeedEnd because, LetterKind kind, int sent)
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, because));
        var box = new Letterbox();
        await Letterbox.WorkAsync(clinic, box);
        box.Sent.Clear();
        await clinic.LayAsync(s => s.Db.WorkItems.Add(WorkItemFactory.SendLetter(_scene.Letter(kind), s.Now)));

        await Letterbox.WorkAsync(clinic, box);

        Assert.Equal(sent, box.Sent.Count);
    }

    [Fact]
    public async Task Nothing_is_drafted_or_ordered_for_them()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.Other));

        await Refused.SayingAsync(
            "This client has needed no units since {0}. If they are back, say so on their card first.",
            () =>
                clinic.UseAsync<HairClinic.Web.Features.Clients.NextUnit, HairClinic.Web.Features.Clients.NextUnit.Outcome>(
                    clinic.Acting(_scene.Given.Desk, _scene.Given.Here),
                    s => s.DraftAsync(Guid.CreateVersion7(), new() { ClientId = _scene.Ada.Id, Wanted = 1 }, Cancel)
                )
        );
    }

    private static Task<List<string>> WaitingAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (await db.WorkItems.Where(i => i.Kind == WorkKind.SendMail && i.DoneAt == null).ToListAsync(Cancel)).ConvertAll(i =>
                WorkItemFactory.ReadBody<Letter>(i).To
            )
        );

    private Task<(int SignIns, int Feeds)> OpenAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (
                await db.ClientSignIns.CountAsync(s => s.ClientId == _scene.Ada.Id && s.EndedAt == null, Cancel),
                await db.CalendarFeeds.CountAsync(f => f.ClientId == _scene.Ada.Id && f.EndedAt == null, Cancel)
            )
        );

    private static Task<string?> DatesAsync(TestClinic clinic, ClientActor own) =>
        clinic.UseAsync<DatesFile, string?>(own, s => s.OpenAsync(Cancel));
}
