using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

public sealed class ModelBasisTests
{
    private static readonly StoredFit Answered = Stored([Spell.Exact(30), Spell.Exact(40)], new(2026, 10, 3));
    private static readonly StoredFit Unanswered = Stored([], new(2026, 10, 9));

    [Fact]
    public void While_the_newest_found_no_answer_the_one_before_is_named_with_the_reason() =>
        Assert.Equal(
            new ModelBasis(LifetimeKind.Hold, new(2026, 10, 3), new("There is no estimate: no row tells anything.")),
            ModelBasis.Of(Answered, Unanswered)
        );

    [Fact]
    public void Without_one_before_it_is_said_that_the_rows_alone_speak() => Assert.Null(ModelBasis.Of(null, Unanswered)!.RecordsUpTo);

    [Fact]
    public void There_is_nothing_to_say_while_what_is_used_is_newer_or_nothing_was_calculated()
    {
        Assert.Null(ModelBasis.Of(Stored([Spell.Exact(30), Spell.Exact(40)], new(2026, 10, 10)), Unanswered));
        Assert.Null(ModelBasis.Of(Answered, null));
        Assert.Null(ModelBasis.Of(null, null));
    }

    private static StoredFit Stored(Spell[] spells, LocalDate cut)
    {
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(spells, []), LifePriors.Flat(0));
        return new(Guid.CreateVersion7(), LifetimeKind.Hold, fit, 2, cut, cut.AtMidnight().InUtc().ToInstant());
    }
}
