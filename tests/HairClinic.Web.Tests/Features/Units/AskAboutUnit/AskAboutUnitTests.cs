using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.AskAboutUnit;

namespace HairClinic.Web.Tests.Features.Units.AskAboutUnit;

public sealed class AskAboutUnitTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private HairSystem _unit = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_the_workshop_asks_is_open_until_it_is_answered_once()
    {
        await using var book = await OpenAsync();
        await SaveAsync(book, Input("Which colour?") with { On = Today.PlusDays(-2) });
        var open = Assert.Single((await OpenAsync(book, book.AtDesk))!.Open);

        var answer = Input("As the last one") with { QuestionId = open.Id };
        await book.RefusedAsync(
            "It was asked on {0}, so it cannot be answered before.",
            () => SaveAsync(book, answer with { On = Today.PlusDays(-3) })
        );
        await SaveAsync(book, answer);

        Assert.Empty((await OpenAsync(book, book.AtDesk))!.Open);
        var kept = await book.Clinic.ReadAsync(db => db.UnitQuestions.SingleAsync(Cancel));
        Assert.Equal(("Which colour?", "As the last one", (LocalDate?)Today), (kept.Question, kept.Answer, kept.AnsweredOn));
        await book.RefusedAsync("This was answered on {0}.", () => SaveAsync(book, answer));
    }

    [Fact]
    public async Task Nothing_is_asked_tomorrow_of_another_salons_unit_or_by_a_trainee()
    {
        await using var book = await OpenAsync();

        await book.RefusedAsync(
            "{0} is in the future: choose today or earlier.",
            () => SaveAsync(book, Input("x") with { On = Today.PlusDays(1) })
        );
        await book.RefusedAsync(
            "You cannot open this unit: it belongs to another salon. Ask somebody there.",
            () => SaveAsync(book, Input("x"), book.AsElsewhere)
        );
        Assert.Null(await OpenAsync(book, book.AsElsewhere));
        await book.RefusedAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () => SaveAsync(book, Input("x"), book.AsTrainee)
        );
        await book.RefusedAsync(
            "This question is not in the book. Open the unit again.",
            () => SaveAsync(book, Input("x") with { QuestionId = Guid.CreateVersion7() })
        );
        Assert.Equal(["Write it down."], new AskAboutUnitRules().Validate(Input("")).Errors.Select(e => e.ErrorMessage));
    }

    private Slice.Input Input(string text) =>
        new()
        {
            UnitId = _unit.Id,
            On = Today,
            Text = text,
        };

    private Task<Slice.Screen?> OpenAsync(UnitBook book, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(_unit.Id, Cancel));

    private static Task<Slice.Outcome> SaveAsync(UnitBook book, Slice.Input input, PersonActor? by = null) =>
        book.Clinic.UseAsync<Slice, Slice.Outcome>(by ?? book.AtDesk, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

    private Task<UnitBook> OpenAsync() =>
        UnitBook.OpenAsync(
            server,
            b =>
            {
                b.Order("7", Today.PlusDays(-30), _unit = b.Draft("U-1", b.Una));
                b.GiveToTrainee(b.Una);
            }
        );
}
