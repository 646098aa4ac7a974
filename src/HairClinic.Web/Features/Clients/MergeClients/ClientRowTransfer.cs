using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Clients;

/// <summary>The tables whose rows say whose they are, and how such rows change hands. What is sealed stays: it opens only with the record's own key.</summary>
public abstract class ClientRowTransfer(string table)
{
    public static readonly IReadOnlyList<ClientRowTransfer> All =
    [
        new EntityRows<HairSystem>("hair_systems", nameof(HairSystem.ClientId)),
        new EntityRows<Bond>("bonds", nameof(Bond.ClientId)),
        new EntityRows<UnitLoan>("unit_loans", nameof(UnitLoan.ClientId)),
        new EntityRows<Visit>("visits", nameof(Visit.ClientId)),
        new EntityRows<LifeEvent>("life_events", nameof(LifeEvent.ClientId)),
        new EntityRows<CareFact>("care_facts", nameof(CareFact.ClientId)),
        new EntityRows<ContactNote>("contact_notes", nameof(ContactNote.ClientId)),
        new EntityRows<Clearance>("clearances", nameof(Clearance.ClientId)),
        new EntityRows<Guardian>("guardians", nameof(Guardian.ClientId)),
        new EntityRows<CalendarFeed>("calendar_feeds", nameof(CalendarFeed.ClientId)),
        new EntityRows<FindWord>("find_words", nameof(FindWord.SubjectId)),
    ];

    public string Table { get; } = table;

    /// <param name="only">The rows that may move; null for all.</param>
    /// <returns>The ids of the rows that moved.</returns>
    public abstract Task<IReadOnlyList<Guid>> MoveAsync(
        ClinicDb db,
        Guid from,
        Guid to,
        IReadOnlyList<Guid>? only,
        CancellationToken cancellation
    );

    // Whose a row is never changes but here, so the entities have no method for it and the mapping is asked.
    private sealed class EntityRows<T>(string table, string owner) : ClientRowTransfer(table)
        where T : PracticeOwned
    {
        public override async Task<IReadOnlyList<Guid>> MoveAsync(
            ClinicDb db,
            Guid from,
            Guid to,
            IReadOnlyList<Guid>? only,
            CancellationToken cancellation
        )
        {
            var rows = await db.IncludingTakenBack<T>()
                .Where(row => EF.Property<Guid?>(row, owner) == from && (only == null || only.Contains(row.Id)))
                .ToListAsync(cancellation);
            foreach (var row in rows)
                db.Entry(row).Property(owner).CurrentValue = to;
            return [.. rows.Select(row => row.Id)];
        }
    }
}
