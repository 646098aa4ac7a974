using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Clients.AddClient;

/// <summary>A new client at the desk: name, code and home salon; the rest can wait.</summary>
public sealed class AddClient(ClinicDbFactory databases, WriteOnce writes, CurrentActor current)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var own = current.Person.Salons;
        var salons = await db
            .Salons.AsNoTracking()
            .Where(s => !s.Retired && own.Contains(s.Id))
            .OrderBy(s => s.Name)
            .Select(s => new SalonChoice(s.Id, s.Name))
            .ToListAsync(cancellation);
        return new Screen(salons, current.Person.AtSalon);
    }

    /// <exception cref="Refusal">The code is taken, or the phone cannot be read.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(AddClient), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.Broke(e, ClientMap.CodeOnce))
        {
            throw new Refusal("The code {0} belongs to another client already.", input.Code);
        }
    }

    private static async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var client = new Client(Guid.CreateVersion7(), input.Code, input.Name, input.HomeSalonId);
        client.Reach(await TypedPhone.ReadAsync(db, input.Phone, cancellation), input.Email);
        db.Clients.Add(client);
        db.FindWords.AddRange(FindWords.Of(client));
        return new Outcome(client.Id, client.Name);
    }

    public sealed record Screen(IReadOnlyList<SalonChoice> Salons, Guid? AtSalon);

    public sealed record SalonChoice(Guid Id, string Name);

    public sealed record Input
    {
        public string Code { get; set; } = "";

        public string Name { get; set; } = "";

        public Guid HomeSalonId { get; set; }

        public string? Phone { get; set; }

        public string? Email { get; set; }
    }

    public sealed record Outcome(Guid ClientId, string Name);
}
