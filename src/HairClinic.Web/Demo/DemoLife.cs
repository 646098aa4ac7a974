using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Binder.Rows;
using HairClinic.Web.Features.Binder.Sheets.Cells;
using HairClinic.Web.Features.Practices.Defaults;
using NodaTime;

namespace HairClinic.Web.Demo;

/// <summary>Two years of one invented client: units ordered and worn out, bonds made and lifted, visits kept and missed.</summary>
public sealed class DemoLife(DemoClient client, DemoDiary diary, Random random, LocalDate today, Func<string> nextSerial)
{
    private const int LongestBookingAheadDays = 45;

    private static readonly string[] Endings = ["shed at the front", "base torn at the rim", "dry and tangled", "colour turned"];

    private readonly List<DemoUnit> units = [];
    private readonly List<BondRow> bonds = [];
    private readonly List<VisitRow> visits = [];
    private DemoUnit worn = null!;
    private BondRow open = null!;

    public IReadOnlyList<BondRow> Bonds => bonds;

    public IReadOnlyList<VisitRow> Visits => visits;

    public IEnumerable<UnitRow> Units =>
        units.Select(u =>
            u.Row(client.Code, client.Salon.Name, today, new SheetMoney(45_000 + client.Kind.LifeDays.To * 150, client.Salon.Currency))
        );

    public void Live()
    {
        var fitting = client.WasClientBefore ? client.Since : Begin();
        if (fitting > today)
            return;
        var slot = See("First fitting", fitting);
        if (slot.Day >= today)
            return;
        Put(units[0], slot);
        while (Next()) { }
    }

    /// <summary>A newcomer: consultation, measures, and weeks of waiting for the first unit.</summary>
    private LocalDate Begin()
    {
        See("Consultation", client.Since);
        var measured = See("Measure and template", client.Since.PlusDays(6)).Day;
        if (measured > today)
            return measured;
        Order(measured.PlusDays(1) > today ? today : measured.PlusDays(1));
        if (units[0].Ready <= today)
            return units[0].Ready.PlusDays(1);
        See("First fitting", Max(units[0].Ready, today).PlusDays(2));
        return units[0].Ready;
    }

    /// <summary>From this bond to the next; false when today is reached.</summary>
    private bool Next()
    {
        var made = open.AppliedOn!.Value;
        var (from, to) = client.HoldWeeks;
        var due = made.PlusDays(random.Next(from * 7, to * 7 - 1));
        LocalDate? lifted = random.Next(100) < 9 ? made.PlusDays(random.Next(from * 3, from * 6)) : null;
        var told = lifted is not null && random.Next(10) < 6;
        if (told)
            due = lifted!.Value.PlusDays(random.Next(1, 4));
        if (client.Washes && made.PlusDays(10) is var wash && wash < due.PlusDays(-5) && wash < today)
            open = open with { LastSoundOn = See("Wash and style", wash).Day };
        if (open.LastSoundOn is { } sound && sound >= lifted)
            lifted = null;
        // Whoever lets it slip does not come although the window closes; whoever left is off by then.
        if (client.Ending == DemoEnding.LetsItSlip && due > today.PlusDays(-to * 2) || due > today)
            return Stop(due, to);
        if (client.Ending == DemoEnding.Left && due > today.PlusDays(-90))
            return Leave(due);
        if (random.Next(100) < 4)
            Miss(due.PlusDays(-3));
        var slot = See(random.Next(5) == 0 ? "Full service with rebond" : "Rebond", due);
        if (slot.Day >= today)
            return Close(null);
        Close(Ended(slot.Day, lifted, told));
        worn.WornDays += Period.DaysBetween(made, slot.Day);
        OrderAhead(slot.Day);
        Put(Choose(slot.Day), slot);
        return true;
    }

    private BondRow Ended(LocalDate day, LocalDate? lifted, bool told) =>
        lifted is null
            ? open with
            {
                RemovedOn = day,
                RemovedBecause = random.Next(60) == 0 ? RemovalReason.Style : RemovalReason.Scheduled,
                LastSoundOn = day,
            }
            : open with
            {
                RemovedOn = day,
                RemovedBecause = RemovalReason.Lifted,
                // Asked at take-down, only some remember the day.
                LiftedOn = told || random.Next(2) == 0 ? lifted : null,
                LiftReportedOn = told ? Min(lifted.Value.PlusDays(random.Next(2)), day) : day,
                LiftZone = (LiftZone)random.Next(5),
            };

    private bool Stop(LocalDate due, int latestWeeks)
    {
        var made = open.AppliedOn!.Value;
        if (client.Ending == DemoEnding.HasLifted && Period.DaysBetween(made, today) > 7)
        {
            var lifted = today.PlusDays(-random.Next(1, 4));
            open = open with
            {
                LiftedOn = lifted,
                LiftReportedOn = lifted.PlusDays(1),
                LiftZone = (LiftZone)random.Next(5),
                LastSoundOn = null,
            };
            return Close(null);
        }
        var books = client.Ending == DemoEnding.ComesOn && due <= today.PlusDays(LongestBookingAheadDays) && random.Next(100) < 60;
        if (books)
            See("Rebond", Max(due, today));
        if (client.Washes && made.PlusDays(14) > today && made.PlusDays(14) < made.PlusWeeks(latestWeeks - 1))
            See("Wash and style", made.PlusDays(14));
        return Close(null);
    }

    private bool Leave(LocalDate due)
    {
        var off = See("Other", due).Day;
        if (off > today)
            return Close(null);
        Close(open with { RemovedOn = off, RemovedBecause = RemovalReason.Other });
        (worn.OnHead, worn.End, worn.Gone, worn.Because) = (false, UnitState.ReturnedToClient, off, "taken home by the client");
        return false;
    }

    private bool Close(BondRow? ended)
    {
        bonds.Add(ended ?? open);
        return false;
    }

    private void Put(DemoUnit unit, DemoSlot slot)
    {
        if (worn is not null && worn != unit)
            worn.OnHead = false;
        worn = unit;
        worn.OnHead = true;
        worn.FirstBonded ??= slot.Day;
        open = new BondRow
        {
            Serial = unit.Serial,
            ClientCode = client.Code,
            AppliedOn = slot.Day,
            // The old book kept no times; the last months do.
            AppliedAt = slot.Day > today.PlusDays(-120) ? slot.End.PlusMinutes(-15) : null,
            Adhesive = client.Adhesive.Name,
            Lot = DemoPractice.LotOf(client.Adhesive, slot.Day),
            Coats = client.Adhesive.Attachment == Attachment.Liquid ? random.Next(2, 5) : null,
            Attachment = client.Adhesive.Attachment,
            WaitsKept = random.Next(20) switch
            {
                < 16 => true,
                < 18 => null,
                _ => false,
            },
            Stylist = slot.Stylist,
        };
    }

    /// <summary>The worn unit goes on until it is worn out; then the oldest that is ready takes its place, if there is one.</summary>
    private DemoUnit Choose(LocalDate day)
    {
        if (worn.Worn < 1 || units.Find(u => u != worn && u.Gone is null && u.Ready <= day) is not { } spare)
            return worn;
        (worn.OnHead, worn.End, worn.Gone) = (false, UnitState.Retired, day);
        worn.Because = Endings[random.Next(Endings.Length)];
        return spare;
    }

    private void OrderAhead(LocalDate day)
    {
        var waiting = units.Count(u => u != worn && u.Gone is null);
        var wanted = client.Kind.LifeDays.To < 110 ? 2 : 1;
        if (waiting < wanted && worn.Worn >= (client.PlansAhead ? 0.35 : 0.95))
            Order(day);
    }

    private void Order(LocalDate ordered)
    {
        var (from, to) = client.Kind.LifeDays;
        units.Add(new DemoUnit(nextSerial(), client.Kind, ordered, ordered.PlusDays(49 + random.Next(32)), random.Next(from, to + 1)));
    }

    private DemoSlot See(string service, LocalDate wanted)
    {
        if (service == "First fitting" && units.Count == 0)
            Order(wanted.PlusDays(-90));
        var minutes = TradeDefaults.Services.Where(s => s.Name == service).Select(s => s.Minutes).FirstOrDefault(60);
        var slot = diary.Take(client.Salon, client.Stylist, wanted, minutes);
        var name = service == "Other" ? "Consultation" : service;
        visits.Add(Visit(slot, name, slot.Day < today ? VisitState.Done : VisitState.Booked));
        return slot;
    }

    private void Miss(LocalDate wanted)
    {
        var slot = diary.Take(client.Salon, client.Stylist, wanted, 90);
        visits.Add(
            Visit(
                slot,
                "Rebond",
                slot.Day >= today ? VisitState.Booked
                    : random.Next(2) == 0 ? VisitState.Cancelled
                    : VisitState.DidNotCome
            )
        );
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

    private static LocalDate Min(LocalDate one, LocalDate other) => LocalDate.Min(one, other);

    private static LocalDate Max(LocalDate one, LocalDate other) => LocalDate.Max(one, other);
}
