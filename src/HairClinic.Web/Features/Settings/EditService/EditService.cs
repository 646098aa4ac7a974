using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Settings;

/// <summary>A service: what it is for, how long it takes, what it costs. Booked visits keep the length they were booked with.</summary>
public sealed class EditService(ClinicDbFactory databases, WriteOnce writes)
{
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var currencies = await db
            .Salons.Where(s => !s.Retired)
            .Select(s => s.Currency)
            .Distinct()
            .OrderBy(c => c)
            .ToListAsync(cancellation);
        if (id is null)
            return new Screen(new Input { Currency = currencies.FirstOrDefault(), Steps = [new()] }, currencies);
        var kind = await db.ServiceKinds.AsNoTracking().Include(k => k.Steps).SingleOrDefaultAsync(k => k.Id == id, cancellation);
        return kind is null ? null : new Screen(Input.Of(kind), currencies);
    }

    /// <exception cref="Refusal">The name is taken.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditService), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "service_kinds"))
        {
            throw new Refusal("There is a service called {0} already.", input.Name);
        }
    }

    private static async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        ServiceKind kind;
        if (input.Id is { } id)
        {
            kind = await db.ServiceKinds.Include(k => k.Steps).SingleAsync(k => k.Id == id, cancellation);
            Guarded.Hold(db, kind, input.Version);
        }
        else
        {
            kind = new ServiceKind(Guid.CreateVersion7(), input.Name, input.Purpose);
            db.ServiceKinds.Add(kind);
        }
        kind.Edit(input.Name, input.Purpose, input.PriceMinor, input.PriceMinor is null ? null : input.Currency);
        kind.OfferToClients(input.OfferedToClients);
        if (!input.Steps.SequenceEqual(Input.StepsOf(kind)))
            kind.Consist(input.Steps.Select(s => (Guid.CreateVersion7(), s.Kind, s.Minutes ?? 0)));
        if (input.Retire)
            kind.Retire();
        return new Outcome(kind.Id);
    }

    public sealed record Screen(Input Input, IReadOnlyList<string> Currencies);

    public sealed record Input : IEditable
    {
        [FromBook]
        public Guid? Id { get; set; }

        [FromBook]
        public uint Version { get; set; }

        [OfTheForm]
        public bool Retire { get; set; }

        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("What for")]
        public ServicePurpose Purpose { get; set; } = ServicePurpose.Rebond;

        [Field("Minutes, chair and hands", ByPlace = true)]
        public List<Step> Steps { get; set; } = [];

        [Field("Price", Currency = nameof(Currency))]
        public long? PriceMinor { get; set; }

        [Field("Currency")]
        public string? Currency { get; set; }

        [Field("Clients may book it on their own page")]
        public bool OfferedToClients { get; set; }

        public static Input Of(ServiceKind kind) =>
            new()
            {
                Id = kind.Id,
                Version = kind.Version,
                Name = kind.Name,
                Purpose = kind.Purpose,
                Steps = [.. StepsOf(kind)],
                PriceMinor = kind.PriceMinor,
                Currency = kind.Currency,
                OfferedToClients = kind.OfferedToClients,
            };

        public static IEnumerable<Step> StepsOf(ServiceKind kind) =>
            kind.Steps.OrderBy(s => s.Position).Select(s => new Step { Kind = s.Kind, Minutes = s.Minutes });
    }

    /// <summary>One stretch of the service. The form makes one, hands on all the time; rows with more keep theirs.</summary>
    public sealed record Step : IFormRow
    {
        public SegmentKind Kind { get; set; } = SegmentKind.HandsOn;

        public int? Minutes { get; set; }

        // Known by its place.
        object? IFormRow.Key => null;

        string IFormRow.Say(EditWords words) => $"{words.Of(Kind)} {words.Of(Minutes)}";
    }

    public sealed record Outcome(Guid ServiceKindId);
}
