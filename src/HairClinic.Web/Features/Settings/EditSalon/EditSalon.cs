using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>A salon: where it is, when it is open, when it is shut. New ones are opened here too.</summary>
public sealed class EditSalon(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, SalonNames names, IClock clock)
{
    /// <returns>A form to begin with where no id is given; null where the salon is not theirs.</returns>
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (id is null)
        {
            var region = await db.PracticeSettings.Select(s => s.Region).SingleAsync(cancellation);
            return new Input { Zone = Regions.ZoneOf(region), Currency = Regions.CurrencyOf(region) };
        }
        if (!MayEdit(id.Value))
            return null;
        var salon = await db
            .Salons.AsNoTracking()
            .Include(s => s.Hours)
            .Include(s => s.Closures)
            .SingleOrDefaultAsync(s => s.Id == id, cancellation);
        return salon is null ? null : Input.From(salon);
    }

    /// <exception cref="Refusal">The name is taken, the phone cannot be read, or something is still booked in a salon to be closed.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            var outcome = await writes.RunAsync(key, nameof(EditSalon), input, db => WriteAsync(db, input, cancellation), cancellation);
            names.Invalidate(current.Person.PracticeId);
            return outcome;
        }
        catch (DbUpdateException e) when (ConcurrentEdits.IsUniqueViolation(e, "salons"))
        {
            throw new Refusal("There is a salon called {0} already.", input.Name);
        }
    }

    private bool MayEdit(Guid id) => current.Person.StaffRole == StaffRole.Owner || current.Person.Salons.Contains(id);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (input.Id is not { } id)
            return await OpenNewAsync(db, input, cancellation);
        if (!MayEdit(id))
            throw new Refusal("This salon is not one of yours.");
        var salon = await db.Salons.Include(s => s.Hours).Include(s => s.Closures).SingleAsync(s => s.Id == id, cancellation);
        ConcurrentEdits.ExpectVersion(db, salon, input.Version);
        var opening = OpeningOf(salon);
        Fill(salon, input, await PhoneAsync(db, input, salon.Phone, cancellation));
        if (input.Retire)
            await CloseForGoodAsync(db, salon, cancellation);
        if (OpeningOf(salon) != opening)
            db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        return new Outcome(id);
    }

    private async Task<Outcome> OpenNewAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var salon = new Salon(Guid.CreateVersion7(), input.Name, input.Zone, input.Currency);
        Fill(salon, input, await PhoneAsync(db, input, before: null, cancellation));
        db.Salons.Add(salon);
        // Whoever opens their first salon works there, and so does a manager, who would not see it otherwise.
        var me = await db.People.Include(p => p.Salons).SingleAsync(p => p.Id == current.Person.PersonId, cancellation);
        if (me.Salons.Count == 0 || me.Role != StaffRole.Owner)
            me.SetSalons([.. me.Salons.Select(s => (s.Id, s.SalonId)), (Guid.CreateVersion7(), salon.Id)]);
        await StayAsync(db, me, cancellation);
        return new Outcome(salon.Id);
    }

    // Whoever chose no salon looks at the first by name; a new one whose name comes before it must not turn their screen to itself.
    private async Task StayAsync(ClinicDb db, Person me, CancellationToken cancellation)
    {
        var first = await db.Salons.Where(s => !s.Retired).OrderBy(s => s.Name).Select(s => (Guid?)s.Id).FirstOrDefaultAsync(cancellation);
        var undecided = await db
            .Users.Where(u => u.PracticeId == db.PracticeId && u.AtSalonId == null)
            .Where(u => u.PersonId == me.Id || db.People.Any(p => p.Id == u.PersonId && p.Role == StaffRole.Owner))
            .ToListAsync(cancellation);
        foreach (var user in undecided)
            user.AtSalonId = user.PersonId == me.Id ? current.Person.AtSalon : first;
    }

    // In the zone that stands in the form. One from before, as somebody once wrote it, stays until it is touched.
    private static async Task<string?> PhoneAsync(ClinicDb db, Input input, string? before, CancellationToken cancellation)
    {
        if (input.Phone.NullIfBlank() is not { } typed || typed == before)
            return input.Phone.NullIfBlank();
        var region = await db.PracticeSettings.Select(s => s.Region).SingleAsync(cancellation);
        return PhoneParser.Parse(PhoneNumberParser.ForZone(input.Zone, region), typed, nameof(Input.Phone));
    }

    private static void Fill(Salon salon, Input input, string? phone)
    {
        salon.Edit(input.Name, input.Zone, input.Currency, phone, input.Address.NullIfBlank());
        var before = WeekdayHoursInput.WeekFromSpells(salon.Hours.Select(h => (h.Day, h.Opens, h.Closes)));
        foreach (var day in input.Hours.Where(d => !before.Contains(d)))
            salon.SetHours(day.Day, day.Spells().Select(s => (Guid.CreateVersion7(), s.From, s.To)));
        DaysOffInput.Reconcile(salon.Closures, input.Closures, salon.RemoveClosure, salon.AddClosure);
    }

    private async Task CloseForGoodAsync(ClinicDb db, Salon salon, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var booked = await db.Visits.CountAsync(
            v => v.SalonId == salon.Id && v.State == VisitState.Booked && v.StartsAt > now,
            cancellation
        );
        if (booked > 0)
            throw new Refusal("Visits still booked here: {0}. Move them first.", booked);
        if (!await db.Salons.AnyAsync(s => s.Id != salon.Id && !s.Retired, cancellation))
            throw new Refusal("It is the only salon. Open another one first.");
        salon.Retire();
    }

    private static string OpeningOf(Salon salon) =>
        $"{salon.Zone} {WeekdayHoursInput.Describe(WeekdayHoursInput.WeekFromSpells(salon.Hours.Select(h => (h.Day, h.Opens, h.Closes))))} {DaysOffInput.Describe(salon.Closures.Select(DaysOffInput.FromRow))}";

    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Time zone")]
        public string Zone { get; set; } = "";

        [Field("Currency")]
        public string Currency { get; set; } = "";

        [Field("Phone")]
        public string? Phone { get; set; }

        [Field("Address")]
        public string? Address { get; set; }

        [Field("Opening hours")]
        public List<WeekdayHoursInput> Hours { get; set; } = WeekdayHoursInput.EmptyWeek();

        [Field("Closures")]
        public List<DaysOffInput> Closures { get; set; } = [];

        public static Input From(Salon salon) =>
            new()
            {
                Id = salon.Id,
                Version = salon.Version,
                Name = salon.Name,
                Zone = salon.Zone,
                Currency = salon.Currency,
                Phone = salon.Phone,
                Address = salon.Address,
                Hours = WeekdayHoursInput.WeekFromSpells(salon.Hours.Select(h => (h.Day, h.Opens, h.Closes))),
                Closures = [.. salon.Closures.Select(DaysOffInput.FromRow).OrderBy(c => c.From)],
            };
    }

    public sealed record Outcome(Guid SalonId);
}
