using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Settings;

namespace HairClinic.Web.Demo;

/// <summary>Two years of one invented client: bonds made and lifted, units worn out, visits kept and missed, as people act who do not know how long anything will last.</summary>
public sealed class DemoClientSimulation(DemoClient client, DemoSlotAllocator diary, DemoUnitSupply drawer, Random random, LocalDate today)
{
    private const int LongestBookingAheadDays = 45;
    private const int OrderedBeforeDays = 95;

    private readonly List<DemoBond> _bonds = [];
    private readonly List<VisitRow> _visits = [];
    private readonly List<DemoBondTakeDown> _takeDowns = [];
    private LocalDate _gapSince;

    public DemoClient Client => client;

    public IReadOnlyList<DemoUnit> Units => drawer.Units;

    public IReadOnlyList<DemoBond> Bonds => _bonds;

    public IReadOnlyList<VisitRow> Visits => _visits;

    public IReadOnlyList<DemoBondTakeDown> TakeDowns => _takeDowns;

    /// <summary>The bond on the head today; null for newcomers, whoever left, and whoever is without hair.</summary>
    public DemoBond? Open { get; private set; }

    /// <summary>Days between a bond that came off with nothing to follow it and the next one, or today.</summary>
    public int GapDays { get; private set; }

    public void Generate()
    {
        var fitting = client.WasClientBefore ? Ordered(client.Since.PlusDays(-OrderedBeforeDays), client.Since) : Begin();
        if (fitting > today)
            return;
        var first = drawer.NextOrNewlyOrdered(fitting);
        var slot = See("First fitting", fitting);
        if (slot.Day >= today)
            return;
        drawer.OrderAhead(slot.Day, first);
        Put(first, slot);
        while (Open is { } bond ? Next(bond) : Wait()) { }
    }

    /// <summary>A newcomer: consultation, measures, and weeks of waiting for the first unit.</summary>
    private LocalDate Begin()
    {
        See("Consultation", client.Since);
        var measured = See("Measure and template", client.Since.PlusDays(6)).Day;
        if (measured > today)
            return measured;
        var fitting = Ordered(LocalDate.Min(today, measured.PlusDays(1)), measured);
        if (fitting > today)
            See("First fitting", fitting.PlusDays(1));
        return fitting;
    }

    private LocalDate Ordered(LocalDate day, LocalDate notBefore)
    {
        drawer.OrderAhead(day, worn: null);
        return LocalDate.Max(notBefore, drawer.NextOrNewlyOrdered(day).Ready.PlusDays(1));
    }

    /// <summary>From this bond to the next; false when today is reached.</summary>
    private bool Next(DemoBond bond)
    {
        var (from, to) = client.HoldWeeks;
        // The day is chosen from the window: how long this bond will hold, nobody knows.
        var late = client.Ending == DemoClientStatus.LetsItSlip;
        var planned = late
            ? bond.AppliedOn.PlusDays(to * 7 + random.Days(3, 21))
            : bond.AppliedOn.PlusDays(from * 7 - 4 + random.Next(4 + (to - from) * 7 / 3));
        var comes = bond.Rings && bond.LiftsOn < planned ? bond.LiftsOn.PlusDays(random.Days(1, late ? 9 : 3)) : planned;
        if (client.Washes && bond.AppliedOn.PlusDays(10) is var wash && wash < comes.PlusDays(-4) && wash < today)
            (bond, comes) = Wash(bond, wash, comes);
        if (comes > today)
            return Stop(bond.WithPhoneReport(today, random), planned, comes);
        if (client.Ending == DemoClientStatus.Left && comes > today.PlusDays(-90))
            return Leave(bond, comes);
        if (random.Next(100) < 4 && Miss(comes) is var missed && (comes = missed.PlusDays(random.Days(3, 14))) > today)
            return Stop(bond.WithPhoneReport(today, random), comes, comes);
        var slot = See(random.Next(5) == 0 ? "Full service with rebond" : "Rebond", comes);
        if (slot.Day >= today)
            return Keep(bond.WithPhoneReport(today, random));
        Renew(bond, slot);
        return true;
    }

    private (DemoBond, LocalDate) Wash(DemoBond bond, LocalDate wanted, LocalDate comes)
    {
        var day = See("Wash and style", wanted).Day;
        if (day >= today)
            return (bond, comes);
        var seen = bond.WithVisitCheck(day, random);
        if (seen.Row.LiftReportedOn is not null)
            comes = LocalDate.Min(comes, day.PlusDays(random.Days(1, 3)));
        return (seen, LocalDate.Max(comes, day.PlusDays(1)));
    }

    private void Renew(DemoBond bond, DemoSlot slot)
    {
        var off = bond.WithRemoval(slot.Day, random.Next(60) == 0 ? RemovalReason.Style : RemovalReason.Scheduled, random);
        _bonds.Add(off);
        var worn = bond.Unit;
        worn.WornDays += Period.DaysBetween(bond.AppliedOn, slot.Day);
        var grades = worn.DrawInspectionGrades(random, worn.WornDays);
        var goesOn = drawer.ChooseAfterTakeDown(slot.Day, worn);
        drawer.OrderAhead(slot.Day, goesOn);
        (Open, worn.OnHead, _gapSince) = (null, false, slot.Day);
        if (goesOn is not null)
            Put(goesOn, slot);
        _takeDowns.Add(new DemoBondTakeDown(_visits[^1], off.Row, grades, Open?.Row.WaitsKept));
    }

    /// <summary>Without hair, until a unit has come.</summary>
    private bool Wait()
    {
        var next = drawer.NextOrNewlyOrdered(_gapSince);
        var comes = LocalDate.Max(next.Ready, _gapSince.PlusDays(1));
        var slot = comes < today ? See("Rebond", comes) : null;
        GapDays += Period.DaysBetween(_gapSince, LocalDate.Min(today, slot?.Day ?? today));
        if (slot is null || slot.Day >= today)
            return false;
        Put(next, slot);
        return true;
    }

    private bool Stop(DemoBond bond, LocalDate planned, LocalDate comes)
    {
        // Nobody books for a lift that has yet to come.
        var wanted = bond.Row.LiftReportedOn is null ? planned : comes;
        var books = client.Ending == DemoClientStatus.ComesOn && wanted <= today.PlusDays(LongestBookingAheadDays) && random.Next(100) < 60;
        if (books)
            See("Rebond", wanted <= today.PlusDays(2) && random.Happens(0.5) ? today : LocalDate.Max(wanted, today));
        if (client.Washes && bond.AppliedOn.PlusDays(14) is var wash && wash > today && wash < planned.PlusDays(-7))
            See("Wash and style", wash);
        return Keep(bond);
    }

    private bool Leave(DemoBond bond, LocalDate comes)
    {
        var off = See("Consultation", comes).Day;
        if (off >= today)
            return Keep(bond.WithPhoneReport(today, random));
        _bonds.Add(bond.WithRemoval(off, RemovalReason.Other, random));
        bond.Unit.WornDays += Period.DaysBetween(bond.AppliedOn, off);
        bond.Unit.LeaveService(UnitState.ReturnedToClient, off, "taken home by the client");
        Open = null;
        return false;
    }

    private bool Keep(DemoBond bond)
    {
        _bonds.Add(bond);
        Open = bond;
        return false;
    }

    private void Put(DemoUnit unit, DemoSlot slot)
    {
        unit.OnHead = true;
        unit.FirstBonded ??= slot.Day;
        var cut = DemoParameters.DrawDryingCutShort(random, client.Adhesive);
        var hasCoats = client.Adhesive.Attachment == Attachment.Liquid;
        var row = new BondRow
        {
            Serial = unit.Serial,
            ClientCode = client.Code,
            AppliedOn = slot.Day,
            // The old book kept no times; the last months do.
            AppliedAt = slot.Day > today.PlusDays(-120) ? slot.End.PlusMinutes(-15) : null,
            Adhesive = client.Adhesive.Name,
            Lot = DemoPractice.LotOf(client.Adhesive, slot.Day),
            Coats = hasCoats ? random.Next(2, 5) : null,
            Attachment = client.Adhesive.Attachment,
            WaitsKept = hasCoats && random.Happens(DemoParameters.ChanceWaitsNoted) ? !cut : null,
            Stylist = slot.Stylist,
        };
        var hold = DemoParameters.DrawHold(random, client, slot.Day, today, cut);
        var attentive = client.Ending == DemoClientStatus.LetsItSlip || random.Happens(DemoParameters.ChanceRings);
        Open = new DemoBond(unit, row, hold, attentive, Remembers: random.Happens(DemoParameters.ChanceRemembers));
    }

    private DemoSlot See(string service, LocalDate wanted)
    {
        var minutes = TradeDefaults.Services.Where(s => s.Name == service).Select(s => s.Minutes).First();
        var slot = diary.Book(client.Salon, client.Stylist, wanted, minutes);
        _visits.Add(Visit(slot, service, slot.Day < today ? VisitState.Done : VisitState.Booked));
        return slot;
    }

    private LocalDate Miss(LocalDate wanted)
    {
        var slot = diary.Book(client.Salon, client.Stylist, wanted, 90);
        _visits.Add(
            Visit(
                slot,
                "Rebond",
                slot.Day >= today ? VisitState.Booked
                    : random.Next(2) == 0 ? VisitState.Cancelled
                    : VisitState.DidNotCome
            )
        );
        return slot.Day;
    }

    private VisitRow Visit(DemoSlot slot, string service, VisitState state) =>
        new()
        {
            ClientCode = client.Code,
            Salon = client.Salon.Name,
            Day = slot.Day,
            Start = slot.Start,
            Minutes = slot.Minutes,
            Service = service,
            Chair = slot.Chair,
            Stylist = slot.Stylist,
            State = state,
            Note = random.Next(60) == 0 ? "Bring the spare" : null,
        };
}

public sealed record DemoSlot(LocalDate Day, LocalTime Start, int Minutes, string Chair, string Stylist)
{
    public LocalTime End => Start.PlusMinutes(Minutes);
}

/// <summary>What was seen when a unit came off, which an old binder has no column for.</summary>
/// <param name="WaitsKept">Of the bond that was made at that visit; null where none was, or nobody wrote it down.</param>
public sealed record DemoBondTakeDown(VisitRow Visit, BondRow Removed, InspectionGrades Grades, bool? WaitsKept);
