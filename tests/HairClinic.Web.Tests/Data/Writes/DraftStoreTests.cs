using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Tests.Features.Visits;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Visits.LogRebond;

namespace HairClinic.Web.Tests.Data.Writes;

public sealed class DraftStoreTests(PgServer server)
{
    private readonly ChairScene _scene = new();

    [Fact]
    public async Task What_was_typed_is_there_again_after_a_reload()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = (await OpenAsync(clinic)).Start;
        (input.FoundLifted, input.LiftedOn, input.Knots, input.Note) = (true, ChairScene.Today.PlusDays(-2), 2, "Front edge up, swims");

        await KeepAsync(clinic, input);

        var draft = (await OpenAsync(clinic)).Draft!;
        Assert.Equal(
            (true, ChairScene.Today.PlusDays(-2), 2, "Front edge up, swims"),
            (draft.FoundLifted, draft.LiftedOn, draft.Knots, draft.Note)
        );
        Assert.NotEmpty(draft.Products);
        Assert.Equal(
            input.Products.Select(p => (p.ProductId, p.LotId, p.Coats)),
            draft.Products.Select(p => (p.ProductId, p.LotId, p.Coats))
        );
    }

    [Fact]
    public async Task The_last_thing_typed_wins_and_one_row_is_kept()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = (await OpenAsync(clinic)).Start;
        foreach (var note in new[] { "F", "Fr", "Front" })
        {
            input.Note = note;
            await KeepAsync(clinic, input);
        }

        Assert.Equal("Front", (await OpenAsync(clinic)).Draft!.Note);
        Assert.Equal(1, await CountAsync(clinic));
    }

    [Fact]
    public async Task Typed_on_two_screens_at_once_by_one_person_one_row_is_kept()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = (await OpenAsync(clinic)).Start;

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => KeepAsync(clinic, input)));

        Assert.Equal(1, await CountAsync(clinic));
    }

    [Fact]
    public async Task A_colleague_does_not_see_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await KeepAsync(clinic, (await OpenAsync(clinic)).Start);

        Assert.Null((await OpenAsync(clinic, _scene.Colleague)).Draft);
    }

    [Fact]
    public async Task Once_logged_no_draft_is_left()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = (await OpenAsync(clinic)).Start;
        (input.FoundLifted, input.WaitsKept) = (false, true);
        await KeepAsync(clinic, input);

        await UseAsync(clinic, _scene.Stylist, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancellation));

        Assert.Equal(0, await CountAsync(clinic));
    }

    [Fact]
    public async Task A_refused_log_leaves_the_draft()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = (await OpenAsync(clinic)).Start;
        input.Products[0].LotId = _scene.Expired.Id;
        await KeepAsync(clinic, input);

        await Refused.SayingAsync(
            "Lot {0} of {1} expired on {2}. Do not bond with it; choose another.",
            () => UseAsync(clinic, _scene.Stylist, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancellation))
        );

        Assert.NotNull((await OpenAsync(clinic)).Draft);
    }

    [Fact]
    public async Task A_draft_of_an_earlier_shape_of_the_form_is_left_aside()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await clinic.LayAsync(later =>
            later.Db.Drafts.Add(
                new Draft(Guid.CreateVersion7(), _scene.Stylist.Id, "LogRebond", _scene.Visit.Id, """{"Knots":"many"}""", later.Now)
            )
        );

        Assert.Null((await OpenAsync(clinic)).Draft);
    }

    [Fact]
    public async Task A_draft_about_a_bond_that_is_no_longer_on_the_head_is_not_offered()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = (await OpenAsync(clinic)).Start;
        input.WornBondId = Guid.CreateVersion7();
        await KeepAsync(clinic, input);

        Assert.Null((await OpenAsync(clinic)).Draft);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private async Task<Slice.Screen> OpenAsync(TestClinic clinic, Person? by = null) =>
        (await UseAsync(clinic, by ?? _scene.Stylist, s => s.OpenAsync(_scene.Visit.Id, Cancellation)))!;

    private Task<bool> KeepAsync(TestClinic clinic, Slice.Input input) =>
        UseAsync(
            clinic,
            _scene.Stylist,
            async s =>
            {
                await s.KeepDraftAsync(input, Cancellation);
                return true;
            }
        );

    private Task<T> UseAsync<T>(TestClinic clinic, Person by, Func<Slice, Task<T>> call) =>
        clinic.UseAsync<Slice, T>(clinic.Acting(by, _scene.Salon), call);

    private static Task<int> CountAsync(TestClinic clinic) => clinic.ReadAsync(db => db.Drafts.CountAsync(Cancellation));
}
