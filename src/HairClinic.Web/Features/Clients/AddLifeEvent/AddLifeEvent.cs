using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Clients;

/// <summary>A wedding, a journey, an operation: dates the next rebond is to respect. One that was noted can be called off.</summary>
public sealed class AddLifeEvent(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation) is not { } heading)
            return null;
        var today = clock.Today(heading.Zone);
        var events = await db.LifeEvents.AsNoTracking().Where(e => e.ClientId == clientId).ToListAsync(cancellation);
        return new Screen(heading.Name, heading.Code, today, ClientLifeEventText.FilterCurrent(events, today));
    }

    /// <exception cref="Refusal">The client is not there, or the event ends before it starts.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(AddLifeEvent),
            input,
            async db =>
            {
                await RequireAsync(db, input.ClientId, cancellation);
                var from = input.From!.Value;
                var planned = new LifeEvent(key, input.ClientId, input.Kind!.Value, from, input.To ?? from, input.Away);
                db.LifeEvents.Add(planned);
                Refresh(db, input.ClientId);
                return new Outcome(planned.Id);
            },
            cancellation
        );

    /// <exception cref="Refusal">The client is not there.</exception>
    public Task<Outcome> CallOffAsync(Guid key, Gone input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(CallOffAsync),
            input,
            async db =>
            {
                await RequireAsync(db, input.ClientId, cancellation);
                var planned = await db.LifeEvents.SingleOrDefaultAsync(
                    e => e.Id == input.EventId && e.ClientId == input.ClientId,
                    cancellation
                );
                // Called off by somebody else already: that is what was wanted.
                if (planned is not null)
                {
                    db.LifeEvents.Remove(planned);
                    Refresh(db, input.ClientId);
                }
                return new Outcome(input.EventId);
            },
            cancellation
        );

    private async Task RequireAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        if (!await db.Clients.UnmergedById(clientId).AnyAsync(cancellation))
            throw new Refusal("This client is not there any more. They may have been merged with another record.");
    }

    private void Refresh(ClinicDb db, Guid clientId) =>
        db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId, clock.GetCurrentInstant()));

    /// <param name="Coming">Events that are not over or still keep from bonding, soonest first.</param>
    public sealed record Screen(string Name, string Code, LocalDate Today, IReadOnlyList<LifeEvent> Coming);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public LifeEventKind? Kind { get; set; }
        public LocalDate? From { get; set; }

        /// <summary>Last day, included; empty for a single day.</summary>
        public LocalDate? To { get; set; }

        /// <summary>They cannot come on these days.</summary>
        public bool Away { get; set; }
    }

    public sealed record Gone(Guid ClientId, Guid EventId);

    public sealed record Outcome(Guid EventId);
}
