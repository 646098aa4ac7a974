using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>The bonds of one client, and what their salon sees of them.</summary>
/// <remarks>
/// Rebonds are booked by the client's rhythm, whatever the bond does; one bond in twenty comes off earlier for another reason. Of
/// a bond that lifts before, 55 % of the clients know the day; else it lies between two contacts (4 to 14 days apart) or
/// between the last contact and the take-down. Days are whole days.
/// </remarks>
internal sealed class HoldStory(Dice dice, LifeTruth truth, int client)
{
    private static readonly Window[] Windows = [new(28, 56), new(21, 35)];
    private readonly double _effect = truth.Client(dice);
    private readonly Window _window = dice.Of(Windows);
    private readonly double _oily = dice.Chance(0.4) ? 1 : 0;
    private readonly double _adhesive = dice.Chance(0.3) ? 1 : 0;
    private readonly double _share = 0.6 + 0.3 * dice.Whole(0, 10) / 10;

    public static IReadOnlyList<string> Names { get; } = ["oily skin", "other adhesive", "waits cut"];

    /// <summary>The practice has a factor row for the last.</summary>
    public static IReadOnlyList<NormalPrior> Priors { get; } =
    [LifePriors.UsualCoefficient, LifePriors.UsualCoefficient, NormalPrior.OfFactor(0.9)];

    public Window Window => _window;

    public IEnumerable<Seen> Earlier(int count)
    {
        for (var bond = 0; bond < count; bond++)
        {
            var booked = (int)(_share * _window.High) + dice.Whole(-3, 3);
            yield return See(Covariates(), dice.Chance(0.05) ? dice.Whole(3, booked) : booked, goesOn: false);
        }
    }

    /// <summary>The bond on the head, made some days ago.</summary>
    public Seen OnTheHead() => See(Covariates(), dice.Whole(0, (int)(_share * _window.High)), goesOn: true);

    public (double[] Covariates, double Days) Next()
    {
        var covariates = Covariates();
        return (covariates, truth.Days(dice, _window, _effect, covariates));
    }

    private double[] Covariates() => [_oily, _adhesive, dice.Chance(0.25) ? 1 : 0];

    private Seen See(double[] covariates, int until, bool goesOn)
    {
        var hold = truth.Days(dice, _window, _effect, covariates);
        if (hold > until)
            return new Seen(client, _window, covariates, Spell.RightCensored(until), until, goesOn);
        if (dice.Chance(0.55))
        {
            var day = Math.Round(hold);
            return new Seen(client, _window, covariates, day == 0 ? Spell.LeftCensored(1) : Spell.Exact(day), Math.Max(1, day), false);
        }
        var (sound, contact) = (0, dice.Whole(4, 14));
        for (; contact < hold; contact += dice.Whole(4, 14))
            sound = contact;
        contact = Math.Min(contact, until);
        return new Seen(client, _window, covariates, Spell.FromBounds(sound, contact), contact, false);
    }
}
