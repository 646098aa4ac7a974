using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>A workshop seems to send nothing in some days of each year: they are entered as closed, or it is not asked again.</summary>
public sealed class AnswerClosure(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    public async Task<IReadOnlyList<Row>> OpenAsync(Guid workshopId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await (
            from check in db.DateChecks.AsNoTracking()
            where check.WorkshopId == workshopId && check.Answer == null
            join workshop in db.Workshops on check.WorkshopId equals workshop.Id
            orderby check.From
            select new Row(check.Id, workshop.Name, check.From, check.Until!.Value, check.Years ?? 0)
        ).ToListAsync(cancellation);
    }

    /// <exception cref="Refusal">It is not asked any more, or somebody answered it.</exception>
    /// <exception cref="OvertakenException">Someone else changed the workshop at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(AnswerClosure), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var check =
            await db.DateChecks.SingleOrDefaultAsync(c => c.Id == input.CheckId && c.WorkshopId != null, cancellation)
            ?? throw new Refusal("This is not asked any more. Open the workshop again.");
        var now = clock.GetCurrentInstant();
        var at = current.Person.AtSalon ?? current.Person.Salons[0];
        var today = (await db.Salons.AsNoTracking().SingleAsync(s => s.Id == at, cancellation)).DayOf(now);
        check.SetAnswer(input.Enter ? DateCheckAnswer.Right : DateCheckAnswer.Wrong, current.Actor.Id, now, today);
        if (!input.Enter)
            return new Outcome(0);
        var workshop = await db.Workshops.Include(w => w.Closures).SingleAsync(w => w.Id == check.WorkshopId, cancellation);
        var entered = 0;
        foreach (var days in check.ClosuresThrough(today))
        {
            // What is entered for a year already stays as somebody wrote it.
            if (workshop.Closures.Any(c => c.From <= days.End && c.To >= days.Start))
                continue;
            workshop.AddClosure(Guid.CreateVersion7(), days.Start, days.End, input.Reason);
            entered++;
        }
        db.Entry(workshop).Property(w => w.Name).IsModified = true;
        db.WorkItems.Add(WorkItemFactory.Recalculate(now));
        return new Outcome(entered);
    }

    /// <param name="From">About the first day, in the last year in which it was seen whole.</param>
    /// <param name="Years">Years in which it was seen.</param>
    public sealed record Row(Guid CheckId, string Workshop, LocalDate From, LocalDate To, int Years);

    /// <param name="Reason">What the closures are called.</param>
    public sealed record Input(Guid CheckId, bool Enter, string Reason);

    /// <param name="Closures">So many were entered.</param>
    public sealed record Outcome(int Closures);
}

public sealed class AnswerClosureRules : AbstractValidator<AnswerClosure.Input>
{
    public AnswerClosureRules()
    {
        RuleFor(x => x.CheckId).NotEmpty();
        RuleFor(x => x.Reason).NotEmpty().MaximumLength(120);
    }
}
