using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>After an operation, a scan or a treatment somebody has made sure that bonds may be made again, and records from which day.</summary>
public sealed class AllowBonding(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation) is not { } heading)
            return null;
        var today = clock.Today(heading.Zone);
        var begun = await db.LifeEvents.AsNoTracking().Where(e => e.ClientId == clientId && e.From <= today).ToListAsync(cancellation);
        return new Screen(heading.Name, heading.Code, today, [.. begun.Where(e => e.KeepsFromBondingOn(today)).OrderBy(e => e.From)]);
    }

    /// <exception cref="Refusal">
    /// It is not for whoever acts to say so, the client or an event is not there, or bonding would begin again before an event did.
    /// </exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(AllowBonding), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (!StaffPermissions.MayReadHealth(current.Person))
            throw new Refusal("Bonding is allowed again by the owner, a manager or a stylist. Ask one of them.");
        if (!await db.Clients.UnmergedById(input.ClientId).AnyAsync(cancellation))
            throw new Refusal("This client is not there any more. They may have been merged with another record.");
        var seen = await db.LifeEvents.Where(e => e.ClientId == input.ClientId && input.EventIds.Contains(e.Id)).ToListAsync(cancellation);
        if (seen.Count == 0)
            throw new Refusal("Nothing stops bonding any more. Open the client again.");
        foreach (var planned in seen)
            planned.AllowBondingAgain(input.From!.Value, current.Actor.Id);
        db.WorkItems.Add(WorkItemFactory.RefreshDueDates(input.ClientId, clock.GetCurrentInstant()));
        return new Outcome(seen.Count);
    }

    /// <param name="Pausing">The events that keep from bonding today, the earliest first.</param>
    public sealed record Screen(string Name, string Code, LocalDate Today, IReadOnlyList<LifeEvent> Pausing);

    public sealed record Input
    {
        public Guid ClientId { get; set; }

        /// <summary>The events that were shown; one that was added since goes on keeping from bonding.</summary>
        public List<Guid> EventIds { get; set; } = [];

        /// <summary>The first day on which a bond may be made.</summary>
        public LocalDate? From { get; set; }
    }

    /// <param name="Events">How many no longer keep from bonding from that day on.</param>
    public sealed record Outcome(int Events);
}

public sealed class AllowBondingRules : AbstractValidator<AllowBonding.Input>
{
    public AllowBondingRules()
    {
        RuleFor(x => x.From).NotNull().WithMessage("Choose the first day on which a bond may be made.");
    }
}
