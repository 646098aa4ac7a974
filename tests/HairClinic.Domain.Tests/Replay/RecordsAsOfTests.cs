using System.Text.Json;
using CsCheck;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replay;

/// <summary>What was written down after a day changes nothing of how the records read at its end.</summary>
public sealed class RecordsAsOfTests
{
    private static readonly LocalDate Start = new(2026, 1, 10);
    private static readonly Guid Salon = Guid.NewGuid();

    private static readonly Gen<(int Day, int What)[]> Happenings = Gen.Select(Gen.Int[0, 120], Gen.Int[0, 9]).Array[0, 8];

    [Fact]
    public void A_later_record_of_a_bond_changes_nothing_that_was_known_before() =>
        Gen.Select(Happenings, Gen.Int[-3, 130])
            .Sample(
                (all, cut) =>
                {
                    var day = Start.PlusDays(cut);

                    var then = BondOf(all.Where(h => h.Day <= cut)).AsOf(day);
                    var now = BondOf(all).AsOf(day);

                    Assert.Equal(cut < 0, now is null);
                    Assert.Equal(Told(then), Told(now));
                },
                iter: 5000
            );

    [Fact]
    public void A_later_step_of_a_unit_changes_nothing_that_was_known_before() =>
        Gen.Select(Happenings, Gen.Int[0, 130])
            .Sample(
                (all, cut) =>
                {
                    var day = Start.PlusDays(cut);
                    var (then, wornThen) = UnitOf(all.Where(h => h.Day <= cut));
                    var (now, wornNow) = UnitOf(all);

                    var was = now.AsOf(day, wornNow)!;

                    Assert.Equal(Told(then.AsOf(day, wornThen)!), Told(was));
                    // And it is how it really stood then.
                    Assert.Equal(then.State, was.State);
                    Assert.Equal(then.RemadeTimes, was.RemadeTimes);
                    Assert.Equal(then.WaitingSince, was.WaitingSince);
                },
                iter: 5000
            );

    // Worked by hand: noticed on day 20 by the client, told on day 25.
    [Fact]
    public void A_lift_is_not_known_before_it_is_reported()
    {
        var bond = NewBond();
        bond.ReportLift(new Lift(Start.PlusDays(25), Start.PlusDays(20), null, SpotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 24, null), Held(bond, 24));
        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 20, 20), Held(bond, 25));
    }

    // It came off at home on day 30 and was brought in on day 33.
    [Fact]
    public void What_came_off_at_home_is_on_the_head_until_somebody_hears_of_it()
    {
        var bond = NewBond();
        bond.ReportLift(new Lift(Start.PlusDays(33), Start.PlusDays(30), null, SpotFixed: false));
        bond.Remove(Start.PlusDays(30), RemovalReason.BroughtIn);

        Assert.True(bond.AsOf(Start.PlusDays(32))!.IsOpen);
        Assert.Equal(Start.PlusDays(30), bond.AsOf(Start.PlusDays(33))!.RemovedOn);
    }

    private static HoldObservation Held(Bond bond, int day)
    {
        var was = bond.AsOf(Start.PlusDays(day))!;
        return HoldObservation.From(was, Start.PlusDays(day));
    }

    private static Bond NewBond() => new(Guid.Empty, Guid.Empty, Guid.Empty, Start, null, Attachment.Liquid, null);

    // In the order of their days, as far as they can be; what a record refuses did not happen.
    private static Bond BondOf(IEnumerable<(int Day, int What)> happenings)
    {
        var bond = NewBond();
        foreach (var (day, what) in happenings.OrderBy(h => h.Day))
        {
            var on = Start.PlusDays(day);
            Try(() =>
            {
                switch (what)
                {
                    case < 4 when bond.IsOpen:
                        bond.MarkSeenSound(on);
                        break;
                    // Only the first report: a later telling of the same lift's day counts as told at once.
                    case 4 or 5 when bond.Lift is null:
                        bond.ReportLift(new Lift(on, what == 4 ? on.PlusDays(-day / 4) : null, null, SpotFixed: true));
                        break;
                    case 6:
                        bond.Remove(on, RemovalReason.Scheduled);
                        break;
                    case 7:
                        bond.Remove(on, RemovalReason.Lifted);
                        break;
                    case 8 when bond.IsOpen && bond.Lift is null:
                        bond.ReportLift(new Lift(on, on.PlusDays(-day / 5), null, SpotFixed: false));
                        bond.Remove(on.PlusDays(-day / 5), RemovalReason.BroughtIn);
                        break;
                }
            });
        }
        return bond;
    }

    // One step after another on its way, each on its day; bonds are their own record.
    private static (HairSystem Unit, List<WornPeriod> Worn) UnitOf(IEnumerable<(int Day, int What)> happenings)
    {
        var (unit, worn, number) = (new HairSystem(Guid.Empty, "U-1", Guid.Empty, Guid.Empty, Start), new List<WornPeriod>(), 0);
        foreach (var (day, what) in happenings.OrderBy(h => h.Day))
        {
            var on = Start.PlusDays(day);
            var entry = new UnitStepEntry(new Guid(++number, 0, 0, new byte[8]), on, Instant.MinValue, null);
            Try(() => Step(unit, worn, what, on, entry));
        }
        return (unit, worn);
    }

    private static void Step(HairSystem unit, List<WornPeriod> worn, int what, LocalDate on, UnitStepEntry entry)
    {
        switch (unit.State)
        {
            case UnitState.Specified:
                unit.Order(on);
                break;
            case UnitState.Ordered or UnitState.Acknowledged or UnitState.Remake:
                unit.Receive(on, Salon, damaged: false, null, 10, entry);
                break;
            case UnitState.Arrived:
                var findings =
                    what < 4
                        ? new ArrivalFindings(true, true, true, false, ArrivalDecision.Remake, "too dark", RemakePayer.Workshop)
                        : ArrivalFindings.AsOrdered;
                unit.InspectArrival(on, findings, remakePromisedFor: null, entry);
                break;
            case UnitState.Bonded:
                unit.TakeOff();
                worn[^1] = worn[^1] with { To = on };
                break;
            case var state when state.IsBondable() && what < 2 && worn.Count > 0:
                unit.LeaveService(what == 0 ? UnitState.Retired : UnitState.Lost, on, "gone");
                break;
            case var state when state.IsBondable():
                unit.PutOn(on);
                worn.Add(new WornPeriod(unit.Id, on, null));
                break;
        }
    }

    private static void Try(Action act)
    {
        try
        {
            act();
        }
        catch (Refusal)
        {
            // It did not happen.
        }
    }

    private static string Told(Bond? bond) =>
        JsonSerializer.Serialize(
            bond is null
                ? null
                : new
                {
                    Lift = bond.Lift?.ToString(),
                    Sound = bond.LastSoundOn?.ToString(),
                    Off = bond.RemovedOn?.ToString(),
                    bond.RemovedBecause,
                }
        );

    private static string Told(HairSystem unit) =>
        JsonSerializer.Serialize(
            new
            {
                unit.State,
                Dates = unit.Dates.ToString(),
                unit.RemadeTimes,
                unit.RetiredBecause,
                Repairs = unit.Repairs.Count,
            }
        );
}
