using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Backing = HairClinic.Web.Features.Units.TakeBackStep;
using Correcting = HairClinic.Web.Features.Units.CorrectStepDay;
using Stepping = HairClinic.Web.Features.Units.TakeStep;

namespace HairClinic.Web.Tests.Features.Units;

/// <summary>Whatever is tried with units in whatever order, state, days, place, bonds and loans agree, and a refusal changes nothing.</summary>
public sealed class RandomStepsTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private static readonly UnitStepKind[] Kinds = Enum.GetValues<UnitStepKind>();

    /// <summary>What must hold of every unit, each asked by SQL of the test's own: rows that break it.</summary>
    private static readonly (string Rule, string Broken)[] Rules =
    [
        (
            "bonded as long as a bond is open",
            "(u.state = 'Bonded') <> exists (select from bonds b where b.hair_system_id = u.id and b.removed_on is null)"
        ),
        (
            "lent with an open loan",
            "u.state = 'Lent' and not exists (select from unit_loans l where l.hair_system_id = u.id and l.back_on is null)"
        ),
        (
            "no open loan of what is in house unworn or gone",
            "u.state not in ('Lent', 'Bonded') and exists (select from unit_loans l where l.hair_system_id = u.id and l.back_on is null)"
        ),
        ("in a salon, and in which", "(coalesce(u.place, '') = 'Salon') <> (u.place_salon_id is not null)"),
        (
            "at the workshop while it is made or mended",
            "u.state in ('Ordered', 'Acknowledged', 'Shipped', 'Remake', 'Away') and u.place is distinct from 'Workshop'"
        ),
        ("with the client while it is worn or lent", "u.state in ('Bonded', 'Lent') and u.place is distinct from 'Client'"),
        ("nowhere before it is ordered and after it is lost", "u.state in ('Specified', 'Lost', 'Cancelled') and u.place is not null"),
        (
            // A trip on which it was lost and found elsewhere stays unfinished beside it.
            "away with an open repair",
            "u.state = 'Away' and not exists (select from unit_repairs r where r.hair_system_id = u.id and r.done_on is null)"
        ),
        (
            "days in order",
            "exists (select from (select d, lag(d) over (order by n) as b from unnest(array[u.ordered_on, u.sent_back_on,"
                + " u.acknowledged_on, u.shipped_on, u.arrived_on, u.inspected_on, u.accepted_on,"
                + " u.prepared_on, u.first_bonded_on, u.retired_on]) with ordinality as t(d, n) where d is not null) s"
                + " where s.d < s.b)"
        ),
        ("nothing in the future", "greatest(u.ordered_on, u.arrived_on, u.retired_on) > date '2027-02-03'"),
        (
            "no step that stands before the unit was there",
            "exists (select from unit_steps s where s.hair_system_id = u.id and s.taken_back_at is null"
                + " and s.kind in ('Cleaned', 'Moved', 'Lent', 'GivenToClient', 'SentForRepair') and s.\"on\" < date '2026-12-05')"
        ),
        (
            "an arrival on the day of its step, and a loan, as it was corrected last",
            "exists (select from unit_steps s left join unit_arrivals a on a.id = s.id left join unit_loans l on l.id = s.id"
                + " where s.hair_system_id = u.id and coalesce(a.arrived_on, l.lent_on) <> coalesce((select c.\"on\" from unit_steps c"
                + " where c.corrects_id = s.id and c.taken_back_at is null order by c.recorded_at desc limit 1), s.\"on\"))"
        ),
        (
            "an arrival for each time it arrived",
            "(select count(*) from unit_arrivals a where a.hair_system_id = u.id)"
                + " <> (select count(*) from unit_steps s where s.hair_system_id = u.id and s.kind = 'Arrived' and s.taken_back_at is null)"
        ),
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public async Task Thirty_random_steps_leave_everything_agreeing(int seed)
    {
        var random = new Random(seed);
        List<HairSystem> units = [];
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                for (var i = 0; i < 2; i++)
                {
                    units.Add(b.Draft($"D-{i}", b.Una));
                    units.Add(b.Draft($"O-{i}", b.Una));
                    units.Add(b.InHouse($"N-{i}", null));
                    units.Add(b.InHouse($"H-{i}", b.Ben));
                    units.Add(b.InHouse($"B-{i}", b.Ben));
                }
                b.Order("7", Today.PlusDays(-60), units[1], units[6]);
                b.Scene.AddBond(b.Ben, units[4], Today.PlusDays(-9), b.Adhesive);
            }
        );
        var written = 0;
        // Ten units of thirty tries each, with every seed: fifty ways.
        foreach (var unit in units)
        {
            for (var i = 0; i < 30; i++)
            {
                var before = await book.RowsAsync();
                var refusal = await Record.ExceptionAsync(() => TryAsync(book, random, unit));
                if (refusal is null)
                    written++;
                else
                {
                    Assert.True(refusal is Refusal, refusal.ToString());
                    Assert.Equal(before, await book.RowsAsync());
                }
            }
            foreach (var (rule, broken) in Rules)
                Assert.Equal(
                    (rule, ""),
                    (
                        rule,
                        await book.AskAsync(
                            $"select coalesce(string_agg(u.serial || ' ' || u.state, ', '), '') from hair_systems u where {broken}"
                        )
                    )
                );
        }

        // Enough of them went through that this says something.
        Assert.InRange(written, 60, 290);
    }

    private static async Task TryAsync(UnitBook book, Random random, HairSystem unit)
    {
        var stored = await book.UnitAsync(unit);
        var by = random.Next(4) switch
        {
            0 => book.AsManager,
            1 => book.AsElsewhere,
            _ => book.AtDesk,
        };
        switch (random.Next(10))
        {
            case 2 when stored.Steps.Count > 0:
                await CorrectAsync(book, random, stored, by);
                return;
            case 0:
                await BackAsync(book, stored, by);
                return;
            case 1:
                await WearAsync(book, random, unit.Id);
                return;
        }
        // Half of the tries are what could come next, the rest is anything.
        var next = UnitNextSteps.After(stored.State, stored.Cleaning, stored.ClientId is null, stored.State == UnitState.Lent);
        var step = random.Next(2) == 0 && next.Count > 0 ? next[random.Next(next.Count)] : Kinds[random.Next(Kinds.Length)];
        await book.TakeAsync(unit, step, i => Fill(book, random, i), by);
    }

    private static void Fill(UnitBook book, Random random, Stepping.Input input)
    {
        input.On = Today.PlusDays(random.Next(4) == 0 ? random.Next(-80, 3) : 0);
        input.PromisedFor = Today.PlusDays(random.Next(-5, 60));
        input.DueBackOn = Today.PlusDays(random.Next(-2, 30));
        input.ClientId = (random.Next(2) == 0 ? book.Una : book.Ben).Id;
        input.Repair = RepairKind.Rim;
        input.Note = "random";
        input.Damaged = random.Next(5) == 0;
        input.Condition = random.Next(2) == 0 ? "torn" : null;
        input.WithClient = random.Next(3) == 0;
        (input.KindAsOrdered, input.BaseAsOrdered, input.PriceAsOrdered) = (random.Next(4) > 0, true, true);
        input.Decision = (ArrivalDecision)random.Next(4);
        input.RemakePaidBy = RemakePayer.Practice;
    }

    private static Task<Backing.Outcome> BackAsync(UnitBook book, HairSystem unit, PersonActor by)
    {
        book.Clinic.Clock.AdvanceMinutes(1);
        var step = unit.Steps.OrderByDescending(s => s.RecordedAt).FirstOrDefault(s => s.Stands) ?? throw new Refusal("There is none.");
        var input = new Backing.Input
        {
            UnitId = unit.Id,
            StepId = step.Id,
            Because = "wrong",
        };
        return book.Clinic.UseAsync<Backing, Backing.Outcome>(by, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }

    private static Task<Correcting.Outcome> CorrectAsync(UnitBook book, Random random, HairSystem unit, PersonActor by)
    {
        book.Clinic.Clock.AdvanceMinutes(1);
        var step = unit.Steps[random.Next(unit.Steps.Count)];
        var input = new Correcting.Input
        {
            UnitId = unit.Id,
            StepId = step.Id,
            On = unit.DayOf(step).PlusDays(random.Next(-6, 4)),
            Because = "wrong day",
        };
        return book.Clinic.UseAsync<Correcting, Correcting.Outcome>(by, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }

    // As at the chair: on a head, or off it.
    private static Task<int> WearAsync(UnitBook book, Random random, Guid id) =>
        book.Clinic.ReadAsync(async db =>
        {
            var unit = await db.HairSystems.SingleAsync(u => u.Id == id, Cancel);
            var open = await db.Bonds.SingleOrDefaultAsync(b => b.HairSystemId == id && b.RemovedOn == null, Cancel);
            if (open is not null)
            {
                open.Remove(Today, RemovalReason.Scheduled);
                unit.TakeOff(book.ElmRow.Id);
            }
            else
            {
                if (unit.ClientId is not { } client)
                    throw new Refusal("Stock is lent first.");
                if (await db.Bonds.AnyAsync(b => b.ClientId == client && b.RemovedOn == null, Cancel))
                    throw new Refusal("One is on their head.");
                unit.PutOn(Today);
                var bond = new Bond(Guid.CreateVersion7(), id, client, Today, null, Attachment.Liquid, appliedBy: null);
                db.Bonds.Add(bond);
            }
            return await db.SaveChangesAsync(Cancel);
        });
}
