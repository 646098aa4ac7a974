using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Watch;

/// <summary>A row of a fit as the watch of one stream reads it.</summary>
/// <param name="Client">Whose it is; a negative number for a row whose client has no other.</param>
/// <param name="Order">Its unit's (or bond's) place in the stream, from 0; −1 where it is of no account to the stream and tells of its client only.</param>
/// <param name="Covariates">In the order of the fit's columns.</param>
/// <param name="Entered">The time from which the spell was looked at with these covariates; 0 from the start.</param>
public sealed record WatchedRow(
    int Client,
    int Order,
    Spell Spell,
    RowLocationScale Place,
    IReadOnlyList<double> Covariates,
    double Entered = 0
)
{
    /// <summary>
    /// What is known of it where that is more than its spell: the log-likelihood at a centre η of ln T and a scale τ. Null: the spell alone.
    /// </summary>
    internal Func<double, double, RowLogLikelihood>? Evidence { get; init; }

    /// <summary>Its unit may be a dud: one alone is no sign of a decline.</summary>
    /// <remarks>Duds are as rare, and as much shorter, as was assumed before any was seen: so is the fit that the rows are read by.</remarks>
    public bool MayBeDud { get; init; }

    internal bool TellsNothing => Evidence is null && (Spell.Weight == 0 || (Spell.End == SpellEnd.After && Spell.Lower == Entered));

    internal RowLogLikelihood Evaluate(LifeDistribution distribution, double centre, double tau)
    {
        if (Evidence is { } evidence)
            return evidence(centre, tau);
        var whole = Weigh(OfSpell(distribution, Spell, centre, tau), Spell.Weight);
        return Entered == 0 ? whole : Add(whole, Weigh(OfSpell(distribution, Spell.RightCensored(Entered), centre, tau), -Spell.Weight));
    }

    private RowLogLikelihood OfSpell(LifeDistribution distribution, Spell spell, double centre, double tau)
    {
        var lower = spell.Lower > 0 ? Math.Log(spell.Lower) : double.NegativeInfinity;
        var upper = spell.End == SpellEnd.At ? lower : Math.Log(spell.Upper);
        if (MayBeDud)
            return DudLikelihood.Evaluate(
                distribution,
                spell.End,
                lower,
                upper,
                centre,
                tau,
                UnitLifeFitter.AssumedDudShare,
                DudDrop.Unlearnt
            );
        return distribution == LifeDistribution.Weibull
            ? WeibullLikelihood.Evaluate(spell.End, lower, upper, centre, tau)
            : LogNormalLikelihood.Evaluate(spell.End, lower, upper, centre, tau);
    }

    private static RowLogLikelihood Weigh(RowLogLikelihood terms, double weight) =>
        new(terms.Value * weight, terms.E * weight, terms.S * weight, terms.EE * weight, terms.ES * weight, terms.SS * weight);

    private static RowLogLikelihood Add(RowLogLikelihood a, RowLogLikelihood b) =>
        new(a.Value + b.Value, a.E + b.E, a.S + b.S, a.EE + b.EE, a.ES + b.ES, a.SS + b.SS);
}
