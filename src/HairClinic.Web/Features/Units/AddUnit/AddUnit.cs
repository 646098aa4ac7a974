using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>A unit comes into the book: to be ordered, ready-made, bought elsewhere, or worn before; a client's, or nobody's for the stock.</summary>
public sealed class AddUnit(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <param name="clientId">Null for the stock.</param>
    /// <returns>Null: no such client, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid? clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = clientId is { } id
            ? await db.Clients.AsNoTracking().UnmergedById(id).Where(c => c.ErasedAt == null).SingleOrDefaultAsync(cancellation)
            : null;
        if (clientId is not null && client is null)
            return null;
        var salon = await UnitSalon.LoadAsync(db, null, clientId, current.Person, cancellation);
        var salons = await UnitSalon.ChoicesAsync(db, current.Person, cancellation);
        return new Screen(
            client is null ? null : new Whose(client.Id, client.Name, client.Code),
            salon.DayOf(clock.GetCurrentInstant()),
            await (
                from kind in db.UnitKinds
                where !kind.Retired
                join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
                join workshop in db.Workshops on kind.WorkshopId equals workshop.Id into made
                from workshop in made.DefaultIfEmpty()
                orderby kind.Name
                select new KindChoice(kind.Id, kind.Name, material.Name, workshop == null ? null : workshop.Name)
            ).ToListAsync(cancellation),
            salons,
            new Input
            {
                ClientId = clientId,
                Serial = await UnitSerials.ProposeAsync(db, client, cancellation),
                SalonId = UnitSalon.Prefer(salons, salon.Id),
                Currency = salon.Currency,
                Origin = clientId is null ? UnitOrigin.ReadyMade : null,
            }
        );
    }

    /// <exception cref="Refusal">The client or kind is not there, the serial is taken, or the day has not come.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(AddUnit), input, db => WriteAsync(db, key, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, HairSystemMap.OneSerial))
        {
            throw new Refusal("There is a unit {0} already. Give this one another serial.", input.Serial.Trim())
            {
                Field = nameof(Input.Serial),
            };
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        if (input.ClientId is { } id)
        {
            var client =
                await db.Clients.AsNoTracking().UnmergedById(id).SingleOrDefaultAsync(cancellation)
                ?? throw new Refusal("This client is not there any more. They may have been merged with another record.");
            if (input.Origin == UnitOrigin.ToBeOrdered)
                client.RequireNeed();
        }
        if (!await db.UnitKinds.AnyAsync(k => k.Id == input.UnitKindId && !k.Retired, cancellation))
            throw new Refusal("Choose the kind of unit.") { Field = nameof(Input.UnitKindId) };
        if (input.SalonId is { } at && !current.Person.Salons.Contains(at))
            throw new Refusal("Say in which salon it is.") { Field = nameof(Input.SalonId) };
        var salon = await UnitSalon.LoadAsync(db, input.SalonId, input.ClientId, current.Person, cancellation);
        var unit = HairSystem.AddToBook(
            key,
            input.Serial,
            input.ClientId,
            input.UnitKindId!.Value,
            input.Origin!.Value,
            salon.DayOf(clock.GetCurrentInstant()),
            input.HereSince,
            input.SalonId
        );
        if (input.PriceMinor is { } price)
            unit.SetPrice(price, input.Currency);
        db.HairSystems.Add(unit);
        // A word that leads to a unit is let in once the unit is there.
        await db.Database.BeginTransactionAsync(cancellation);
        await db.SaveChangesAsync(cancellation);
        db.FindWords.Add(FindWordIndexer.For(unit));
        return new Outcome(unit.Id, unit.Serial, unit.State == UnitState.Specified);
    }

    /// <param name="Client">Null for the stock.</param>
    public sealed record Screen(
        Whose? Client,
        LocalDate Today,
        IReadOnlyList<KindChoice> Kinds,
        IReadOnlyList<SalonChoice> Salons,
        Input Start
    );

    public sealed record Whose(Guid Id, string Name, string Code);

    public sealed record KindChoice(Guid Id, string Name, string Base, string? Workshop);

    public sealed record Input
    {
        public Guid? ClientId { get; set; }
        public UnitOrigin? Origin { get; set; }
        public Guid? UnitKindId { get; set; }
        public string Serial { get; set; } = "";

        /// <summary>Of one that is here: since when; of one that was worn, since when it was worn.</summary>
        public LocalDate? HereSince { get; set; }

        public Guid? SalonId { get; set; }
        public long? PriceMinor { get; set; }
        public string Currency { get; set; } = "";
    }

    /// <param name="ToBeOrdered">It is a draft: the order comes next.</param>
    public sealed record Outcome(Guid UnitId, string Serial, bool ToBeOrdered);
}
