using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>Givens: one client of an invented salon, a worn unit, a spare, and a visit to log.</summary>
internal sealed class Head
{
    public static readonly LocalDate BondedOn = new(2027, 1, 5);
    public static readonly Guid Adhesive = Guid.CreateVersion7();

    public Head()
    {
        Client = new Client(Guid.CreateVersion7(), "C-1", "Ada Fenwick", Salon.Id);
        Worn = Ready("C-1-1");
        Spare = Ready("C-1-2");
        Bond = new Bond(Guid.CreateVersion7(), Worn.Id, Client.Id, BondedOn, null, Attachment.Liquid, appliedBy: null);
        Worn.PutOn(BondedOn);
        Visit = new Visit(Guid.CreateVersion7(), Client.Id, Salon.Id, Guid.CreateVersion7());
        At(28);
    }

    public Salon Salon { get; } = new(Guid.CreateVersion7(), "Elm Row", "Europe/London", "GBP");

    public Client Client { get; }

    public HairSystem Worn { get; }

    public HairSystem Spare { get; }

    public Bond Bond { get; }

    public Visit Visit { get; }

    public Instant Now { get; private set; }

    public LocalDate Today => Salon.DayOf(Now);

    public static Guid Stylist { get; } = Guid.CreateVersion7();

    /// <summary>Eleven in the morning, so many days after the bond was made.</summary>
    public Head At(int days)
    {
        Now = BondedOn.PlusDays(days).At(new LocalTime(11, 0)).InUtc().ToInstant();
        return this;
    }

    public HairSystem Ready(string serial)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), serial, Client.Id, Guid.CreateVersion7(), BondedOn.PlusDays(-90));
        unit.ImportState(
            UnitState.Accepted,
            new UnitDates { SpecifiedOn = BondedOn.PlusDays(-90), AcceptedOn = BondedOn.PlusDays(-5) },
            null
        );
        return unit;
    }

    public NewBond NewBond(HairSystem? unit = null, bool emergency = false) =>
        new(
            Guid.CreateVersion7(),
            unit ?? Worn,
            Now,
            Attachment.Liquid,
            [(Guid.CreateVersion7(), new AppliedProduct(Adhesive, null, 3))],
            WaitsKept: true,
            emergency
        );

    public static TakeDown Sound(RemovalReason because = RemovalReason.Scheduled, InspectionGrades? grades = null) =>
        new(grades ?? InspectionGrades.AsNew, FoundLifted: false, null, null, because);

    public static TakeDown Lifted(LocalDate? on) =>
        new(InspectionGrades.AsNew, FoundLifted: true, on, LiftZone.Front, RemovalReason.Scheduled);

    public Bond Rebond(TakeDown? found = null, NewBond? made = null) =>
        Visit.RecordRebond(
            Guid.CreateVersion7(),
            (Bond, Worn, found ?? Sound()),
            made ?? NewBond(),
            Salon,
            FourToEight(Salon.DayOf((made ?? NewBond()).AppliedAt)),
            Now,
            Stylist,
            note: null
        );

    public static DueWindow FourToEight(LocalDate appliedOn) =>
        DueRule.DueWindowFor(new DueRuleInput(appliedOn, new HoldWindow(4, 8), 32, Wear.Salons.OpenTuesdayToSaturday()));
}
