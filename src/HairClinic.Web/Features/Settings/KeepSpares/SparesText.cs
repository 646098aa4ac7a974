using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Features.Settings;

/// <summary>The rule of a kind of unit, what it costs and what it buys, in words that can be read aloud.</summary>
public static class SparesText
{
    /// <param name="spares">Always ready beside the one worn.</param>
    public static string Rule(int spares, IStringLocalizer words) =>
        spares switch
        {
            0 => words["Order by the chance of a gap"],
            1 => words["Always one ready"],
            2 => words["Always two ready"],
            _ => words["Always {0} ready", spares],
        };

    /// <summary>What a rule means for all clients of the kind together, or for one where nobody wears it.</summary>
    public static string Meaning(KeepSpares.KindRow kind, int spares, IStringLocalizer words)
    {
        var option = kind.Costs[spares];
        var (units, days) = (
            Number(kind.Together(option.IdleUnits), kind.Clients, words),
            Number(kind.Together(option.DaysWithoutPerYear), kind.Clients, words)
        );
        return kind.Clients == 0
            ? words["for each client {0} of a unit lying ready, days without hair a year: {1}", units, days]
            : words["units lying ready: {0}, days without hair a year: {1}", units, days];
    }

    /// <summary>The spares that the records ask for, and what they would cost and buy.</summary>
    public static string Proposal(KeepSpares.KindRow kind, IStringLocalizer words)
    {
        var costs = kind.Costs;
        string spares = costs.Proposed == 1 ? words["one spare"] : words["two spares"];
        if (costs.IsFree(costs.Proposed))
            return words[
                "{0}: by the chance of a gap units are ordered so early already that {1} for each client would cost nothing more.",
                kind.Name,
                spares
            ];
        var (now, then) = (costs.ByChance, costs[costs.Proposed]);
        var more = kind.Together(then.IdleUnits - now.IdleUnits);
        var (before, after) = (
            Number(kind.Together(now.DaysWithoutPerYear), kind.Clients, words),
            Number(kind.Together(then.DaysWithoutPerYear), kind.Clients, words)
        );
        if (kind.Clients == 0)
            return words[
                "{0}: nobody wears one now. For each client {1} would cost {2} of a unit more lying ready, and lower days without hair from {3} to {4} a year.",
                kind.Name,
                spares,
                Number(more, kind.Clients, words),
                before,
                after
            ];
        var units = UnitsMore(more, kind.Clients, words);
        return kind.Price is { } price
            ? words[
                "{0}: {1} for each client would cost {2} lying ready, about {3}, and lower days without hair from {4} to {5} a year.",
                kind.Name,
                spares,
                units,
                Money(more, price),
                before,
                after
            ]
            : words[
                "{0}: {1} for each client would cost {2} lying ready, and lower days without hair from {3} to {4} a year.",
                kind.Name,
                spares,
                units,
                before,
                after
            ];
    }

    /// <summary>Whole where they are many clients', tenths where they are one's; what is not quite nothing is not said as nothing.</summary>
    public static string Number(double number, int clients, IStringLocalizer words)
    {
        var digits = Digits(number, clients);
        var least = digits == 0 ? 1 : 0.1;
        return number >= least / 2 || number < 1e-6
            ? Math.Max(0, number).ToString($"N{digits}", CultureInfo.CurrentCulture)
            : words["less than {0}", least.ToString($"N{digits}", CultureInfo.CurrentCulture)];
    }

    /// <summary>What so many units cost, to two figures: it stands on an average.</summary>
    public static string Money(double units, KeepSpares.UnitPrice price)
    {
        var major = Math.Max(0, units) * price.Mean / Math.Pow(10, CurrencyDigits.For(price.Currency));
        var step = major < 10 ? 1 : Math.Pow(10, Math.Floor(Math.Log10(major)) - 1);
        return $"{(Math.Round(major / step) * step).ToString("N0", CultureInfo.CurrentCulture)} {price.Currency}";
    }

    public static string Percent(double chance) => NextUnitText.Percent(chance);

    private static string UnitsMore(double units, int clients, IStringLocalizer words) =>
        Number(units, clients, words) is var said && said == 1.ToString(CultureInfo.CurrentCulture)
            ? words["1 more unit"]
            : words["{0} more units", said];

    private static int Digits(double number, int clients) => clients <= 1 && number < 9.95 ? 1 : 0;
}
