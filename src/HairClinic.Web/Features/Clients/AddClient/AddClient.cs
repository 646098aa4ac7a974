using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

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
        return new Screen(salons, current.Person.AtSalon, ClientCodes.ProposeCode());
    }

    /// <exception cref="Refusal">A code of one's own is taken, or the phone cannot be read.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            var added = await ClientCodes.SaveWithCodeAsync(
                input.Code,
                input.Proposed,
                nameof(Input.Code),
                code => writes.RunAsync(key, nameof(AddClient), input, db => WriteAsync(db, input, code, cancellation), cancellation)
            );
            return new Outcome { Added = added };
        }
        catch (SamePhoneNumberException e)
        {
            return new Outcome { SamePhoneNumber = e.Others };
        }
    }

    private static async Task<Added> WriteAsync(ClinicDb db, Input input, string code, CancellationToken cancellation)
    {
        var phone = await PhoneParser.ParseAsync(db, input.Phone, input.HomeSalonId, nameof(Input.Phone), cancellation);
        await SharedPhoneCheck.ThrowIfSharedAsync(db, phone, butNot: null, input.SharedPhone == input.Phone, cancellation);
        var client = new Client(Guid.CreateVersion7(), code, input.Name, input.HomeSalonId);
        client.SetContact(phone, input.Email);
        db.Clients.Add(client);
        db.FindWords.AddRange(FindWordIndexer.For(client));
        return new Added(client.Id, client.Name, client.Code);
    }

    /// <param name="Proposed">A code nobody can guess; whether it is free, the save finds out.</param>
    public sealed record Screen(IReadOnlyList<SalonChoice> Salons, Guid? AtSalon, string Proposed);

    public sealed record SalonChoice(Guid Id, string Name);

    public sealed record Input
    {
        public string Code { get; set; } = "";

        /// <summary>What the form proposed: where it is taken, another is drawn.</summary>
        public string? Proposed { get; set; }

        public string Name { get; set; } = "";
        public Guid HomeSalonId { get; set; }
        public string? Phone { get; set; }

        /// <summary>The number, as typed, that is another client's too and was agreed to.</summary>
        public string? SharedPhone { get; set; }

        public string? Email { get; set; }
    }

    /// <summary>Exactly one of the two.</summary>
    public sealed record Outcome
    {
        public Added? Added { get; init; }

        /// <summary>Nothing was saved: these have the same number.</summary>
        public IReadOnlyList<SharedPhoneCheck.Other> SamePhoneNumber { get; init; } = [];
    }

    public sealed record Added(Guid ClientId, string Name, string Code);
}
