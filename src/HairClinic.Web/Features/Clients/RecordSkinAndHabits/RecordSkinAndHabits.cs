using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Clients;

/// <summary>Skin, sweat, swimming, washing and heat, as of today: what shortens a hold. Earlier answers stay.</summary>
public sealed class RecordSkinAndHabits(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation) is not { } heading)
            return null;
        var facts = db
            .CareFacts.AsNoTracking()
            .Where(f => f.ClientId == clientId)
            .OrderByDescending(f => f.AsOf)
            .ThenByDescending(f => f.Id);
        return new Screen(heading.Name, heading.Code, clock.Today(heading.Zone), await facts.FirstOrDefaultAsync(cancellation));
    }

    /// <exception cref="Refusal">The client is not there, or a number is out of range.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(RecordSkinAndHabits),
            input,
            async db =>
            {
                var zone = await db.RequireZoneAsync(input.ClientId, cancellation);
                var fact = new CareFact(key, input.ClientId, clock.Today(zone), input.Habits);
                db.CareFacts.Add(fact);
                return new Outcome(fact.Id);
            },
            cancellation
        );

    public sealed record Screen(string Name, string Code, LocalDate Today, CareFact? Latest);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public CareHabits Habits { get; set; } = new();
    }

    public sealed record Outcome(Guid FactId);
}
