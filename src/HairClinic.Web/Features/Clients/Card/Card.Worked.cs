using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Clients;

// What is worked out from the rows that were read.
public sealed partial class Card
{
    private static Worn WornOf(
        Bond bond,
        IEnumerable<UnitWithKindName> units,
        IEnumerable<RecipeLine> recipe,
        PracticeSettings settings,
        LocalDate today,
        Instant now
    )
    {
        var cure = DueCalculator.CureOf(settings, recipe.Max(line => line.LabelCureHours));
        var dates = new BondDates(bond.OpensOn, bond.ClosesOn)
        {
            AppliedAt = bond.AppliedAt,
            Cure = cure,
            LiftedOn = bond.Lift?.UpBy,
        };
        var unit = units.FirstOrDefault(u => u.Unit.Id == bond.HairSystemId);
        return new Worn(
            bond,
            unit?.Unit.Serial ?? "",
            unit?.Kind ?? "",
            dates.StateOn(today, now),
            bond.AppliedAt is { } applied ? cure.EndsAt(applied) : null,
            cure.Hours
        );
    }

    private static TakenDown? TakenDownOf(Bond bond, bool mayReadHealth, LocalDate today) =>
        bond.RemovedOn is { } on
            ? new TakenDown(
                on,
                bond.RemovedBecause?.IsConfidential() == true && !mayReadHealth ? null : bond.RemovedBecause,
                bond.AsksToWaitOn(today) ? bond.NoBondUntil : null
            )
            : null;

    private static WashVisitDay? WashOf(Client client, Bond? bond, Worn? worn, IEnumerable<VisitRow> visits, Salon home)
    {
        if (worn is null || bond is null || client.WashEveryDays is not { } days)
            return null;
        var last = visits.FirstOrDefault(v => v is { Purpose: ServicePurpose.WashAndStyle, State: VisitState.Done });
        return new WashVisitRhythm(days).Next(
            last?.Day,
            bond.AppliedOn,
            new Cure(worn.CureHours),
            bond.DueOn,
            DueCalculator.OpeningDaysOf(home)
        );
    }

    private static UnitRow UnitOf(
        UnitWithKindName unit,
        IEnumerable<Bonded> bonds,
        Dictionary<Guid, Salon> salons,
        Dictionary<Guid, UnitLoan> loans
    ) =>
        new(
            unit.Unit.Id,
            unit.Unit.Serial,
            unit.Kind,
            unit.Unit.State,
            unit.Unit.PlaceSalonId is { } place && salons.TryGetValue(place, out var salon) ? salon.Name : null,
            unit.Unit.Dates,
            [.. unit.Unit.Promises.OrderBy(p => p.Number).Select(p => p.PromisedFor)],
            bonds.Count(b => b.Bond.HairSystemId == unit.Unit.Id),
            unit.Unit.RetiredBecause
        )
        {
            Spot = unit.Unit.Spot,
            Cleaning = unit.Unit.State.IsBondable() ? unit.Unit.Cleaning : null,
            WithClient = unit.Unit.IsTakenHome,
            DueBackOn = loans.GetValueOrDefault(unit.Unit.Id)?.DueBackOn,
            Next = UnitNextSteps.Awaited(unit.Unit.State, unit.Unit.Cleaning, loans.ContainsKey(unit.Unit.Id)),
        };

    private static string SerialOf(IEnumerable<UnitWithKindName> units, Guid unitId) =>
        units.FirstOrDefault(u => u.Unit.Id == unitId)?.Unit.Serial ?? "";
}
