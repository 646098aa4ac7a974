using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

/// <summary>One client's units, invented for these tests: one retired, one worn, one on order.</summary>
internal static class WearScene
{
    public static readonly LocalDate Today = new(2031, 11, 25);

    public static WearLineBond Bond(LocalDate applied, LocalDate? removed = null, LocalDate? lifted = null) =>
        new(applied, applied.PlusWeeks(4), applied.PlusDays(32), applied.PlusWeeks(8), removed, lifted);

    public static readonly WearLineUnit Worn = new("U-2", "Thin skin")
    {
        Ordered = new(2031, 3, 20),
        Arrived = new(2031, 5, 14),
        Bonds = [Bond(new(2031, 7, 3), new(2031, 8, 5), new(2031, 7, 29)), Bond(new(2031, 11, 1))],
    };

    public static readonly WearLineUnit OnOrder = new("U-3", "Lace")
    {
        Ordered = new(2031, 11, 2),
        PromisedFrom = new(2032, 2, 20),
        PromisedTo = new(2032, 3, 25),
    };

    public static WearLineData Line(params WearLineUnit[] lanes) => new(new(2031, 3, 1), new(2032, 5, 1), Today, lanes, []);
}
