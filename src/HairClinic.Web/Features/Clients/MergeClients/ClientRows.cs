using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Clients;

/// <summary>The tables whose rows say whose they are, and how such rows change hands. What is sealed stays: it opens only with the record's own key.</summary>
public abstract class ClientRows(string table)
{
    public static readonly IReadOnlyList<ClientRows> All =
    [
        new Of<HairSystem>("hair_systems", nameof(HairSystem.ClientId)),
        new Of<Bond>("bonds", nameof(Bond.ClientId)),
        new Of<Visit>("visits", nameof(Visit.ClientId)),
        new Of<LifeEvent>("life_events", nameof(LifeEvent.ClientId)),
        new Of<CareFact>("care_facts", nameof(CareFact.ClientId)),
        new Of<ContactNote>("contact_notes", nameof(ContactNote.ClientId)),
        new Of<Clearance>("clearances", nameof(Clearance.ClientId)),
        new Of<Guardian>("guardians", nameof(Guardian.ClientId)),
        new Of<CalendarFeed>("calendar_feeds", nameof(CalendarFeed.ClientId)),
        new Of<FindWord>("find_words", nameof(FindWord.SubjectId)),
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
    private sealed class Of<T>(string table, string owner) : ClientRows(table)
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
            var rows = await db.WithTakenBack<T>()
                .Where(row => EF.Property<Guid?>(row, owner) == from && (only == null || only.Contains(row.Id)))
                .ToListAsync(cancellation);
            foreach (var row in rows)
                db.Entry(row).Property(owner).CurrentValue = to;
            return [.. rows.Select(row => row.Id)];
        }
    }
}
