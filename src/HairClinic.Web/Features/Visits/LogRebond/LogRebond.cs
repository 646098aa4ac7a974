using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Visits;

/// <summary>Logs a rebond at the chair: what came down, what went on, and when it is due again.</summary>
public sealed partial class LogRebond(ClinicDbFactory databases, WriteOnce writes, DraftStore drafts, CurrentActor current, IClock clock)
{
    /// <summary>Keeps what was typed so far.</summary>
    public Task KeepDraftAsync(Input input, CancellationToken cancellation) =>
        drafts.StoreAsync(nameof(LogRebond), input.VisitId, input, cancellation);

    /// <exception cref="Refusal">The domain says no, or the database holds that another bond is there already.</exception>
    /// <exception cref="OvertakenException">Someone changed this visit, bond or unit at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        var outcome = await RunAsync(key, input, cancellation);
        await drafts.DeleteForSubjectAsync(nameof(LogRebond), input.VisitId, cancellation);
        return outcome;
    }

    private async Task<Outcome> RunAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(LogRebond), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, VisitRecordMap.OnePerVisit))
        {
            throw new Refusal("This visit is logged already.");
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, BondMap.OpenPerUnit))
        {
            throw new Refusal("By the book this unit is on another head. Log its take-down there first, then save again.");
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, UnitLoanMap.OpenPerUnit))
        {
            throw new Refusal("This unit was lent to somebody else a moment ago. Choose another.");
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, BondMap.OpenPerHead))
        {
            throw new Refusal("Another bond was made on this head a moment ago. Open the visit again to see it.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var sheet = await RebondSaveData.LoadAsync(db, input, current.Person.Salons, cancellation);
        var book = await DueFacts.LoadAsync(db, cancellation);
        var now = clock.GetCurrentInstant();
        var salon = book.Salon(sheet.Visit.SalonId);
        var finished = FinishedAt(input, sheet.Visit, salon, now);
        var day = salon.DayOf(finished);
        BondingPause.On(sheet.Client.Events, day, book.Settings.DaysBeforeEvent)?.RequireBondable(input.DespiteEvent);
        var despite =
            sheet.BondingBlocked(day) && ClearanceGate.RequireSkinCheck([ClearanceSeverity.Block], current.Person, input.DespiteBlock);

        var used = input
            .Products.Select(line => sheet.ProductById(line.ProductId).CreateAppliedProduct(day, line.LotId, line.Coats))
            .ToList();
        var cureHours = sheet.Products.Max(p => p.LabelCureHours);
        var worn = Worn(sheet, input, salon);
        var holds = await HoldFacts.LoadAsync(db, book.Windows, [sheet.Client.Id], cancellation, book.HoldCohorts);
        var adhesive = sheet.AdhesiveAmong(used);
        var basis = book.CalculatorFor(
            sheet.Client,
            sheet.BaseMaterialId,
            adhesive,
            input.Attachment,
            cureHours,
            input.WaitsKept,
            holds,
            used.Find(u => u.ProductId == adhesive)?.LotId,
            // What is found at this take-down counts for the bond that is made now.
            worn is var (old, _, found)
                ? (old.Id, old.HoldIfRemoved(found.OffOn(day), found.Reason, found.ToLift(day)))
                : null
        );
        var made = new NewBond(
            Guid.CreateVersion7(),
            sheet.UnitById(input.UnitId),
            finished,
            input.Attachment,
            [.. used.Select(u => (Guid.CreateVersion7(), u))],
            input.WaitsKept,
            input.Emergency
        )
        {
            Cleaned = input.Cleaned,
        };
        if (made.Unit.ClientId is null && made.Unit.Id != sheet.Worn?.HairSystemId && input.DueBackOn is { } back)
        {
            // It has its bond's id: what takes the bond back finds it.
            made = made with
            {
                Loan = new UnitLoan(made.Id, made.Unit.Id, sheet.Client.Id, day, back),
            };
            db.UnitLoans.Add(made.Loan);
        }
        var bond = sheet.Visit.RecordRebond(
            Guid.CreateVersion7(),
            worn,
            made,
            salon,
            basis.WindowFor(day),
            now,
            current.Actor.Id,
            despite ? ClearanceGate.AppendSetAsideLine(input.Note) : input.Note,
            sheet.WornLoan
        );
        db.Bonds.Add(bond);

        var cure = DueCalculator.CureOf(book.Settings, cureHours);
        return new Outcome(
            sheet.Visit.Id,
            sheet.Client.Id,
            sheet.Client.CalledAs ?? sheet.Client.Name,
            made.Unit.Serial,
            bond.OpensOn,
            bond.DueOn,
            bond.ClosesOn,
            bond.DueReasons,
            salon.DayOf(now),
            now,
            cure.EndsAt(finished),
            cure.Hours,
            sheet.WasFitted ? null : Domain.Wear.FirstFittingFollowUpRule.DueOn(day, DueCalculator.OpeningDaysOf(salon)),
            PlanReplacement: input.UnitId == sheet.Worn?.HairSystemId
                && worn?.Item3.KnownGrades.IsAtLeast(InspectionGrades.PlanReplacement) == true
        )
        {
            Basis = book.Basis,
        };
    }

    private static (Bond, Domain.HairSystems.HairSystem, TakeDown)? Worn(RebondSaveData sheet, Input input, Salon salon)
    {
        if (sheet.Worn?.Id != input.WornBondId)
            throw new Refusal("Another bond is on this head than when you opened this form. Open the visit again to see it.");
        return sheet.Worn is { } worn
            ? (worn, sheet.UnitById(worn.HairSystemId), input.ToTakeDown() with { GradesBefore = sheet.GradesBefore(salon) })
            : null;
    }

    // A visit of an earlier day is logged late; one of a later day takes no record.
    private static Instant FinishedAt(Input input, Visit visit, Salon salon, Instant now)
    {
        var today = salon.DayOf(now);
        var day = visit.Day < today ? visit.Day : today;
        if (input.FinishedAt is { } time)
            return (day + time).InZoneLeniently(salon.TimeZone).ToInstant();
        return day == today ? now : throw new Refusal("Say at what time the bond was finished on {0}.", day);
    }
}
