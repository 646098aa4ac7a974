using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>Someone who works here: role, salons, skills, hours, days off, and when they leave.</summary>
public sealed partial class EditPerson(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null where there is no such person, or not one this manager may change.</returns>
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var salons = await db
            .Salons.AsNoTracking()
            .Where(s => !s.Retired)
            .OrderBy(s => s.Name)
            .Select(s => new Choice(s.Id, s.Name))
            .ToListAsync(cancellation);
        var services = await db
            .ServiceKinds.AsNoTracking()
            .Where(k => !k.Retired)
            .OrderBy(k => k.Name)
            .Select(k => new Choice(k.Id, k.Name))
            .ToListAsync(cancellation);
        var input = id is { } known ? await ReadAsync(db, known, cancellation) : new Input();
        if (input is null || id is not null && !StaffPermissions.MayManagePerson(current.Person, id.Value, input.Role))
            return null;
        foreach (var salon in salons.Where(s => input.Work.All(w => w.SalonId != s.Id)))
            input.Work.Add(new SalonWeek { SalonId = salon.Id });
        return new Screen(input, salons, services, StaffPermissions.AssignableRoles(current.Person, input.Role, isNew: id is null));
    }

    /// <exception cref="Refusal">The role is not this person's to give, or nobody would be owner any more.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(EditPerson), input, db => WriteAsync(db, input, cancellation), cancellation);

    private static async Task<Input?> ReadAsync(ClinicDb db, Guid id, CancellationToken cancellation)
    {
        var person = await Whole(db).AsNoTracking().SingleOrDefaultAsync(p => p.Id == id && !p.Left, cancellation);
        return person is null ? null : Input.From(person);
    }

    private static IQueryable<Person> Whole(ClinicDb db) =>
        db.People.Include(p => p.Salons).Include(p => p.Skills).Include(p => p.WorkSpells).Include(p => p.Absences).AsSplitQuery();

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        Person person;
        if (input.Id is { } id)
        {
            person = await Whole(db).SingleAsync(p => p.Id == id, cancellation);
            ConcurrentEdits.ExpectVersion(db, person, input.Version);
            if (!StaffPermissions.MayManagePerson(current.Person, person.Id, person.Role))
                throw new Refusal("Only an owner changes owners and managers.");
        }
        else
        {
            person = new Person(Guid.CreateVersion7(), input.Name, input.Role);
            db.People.Add(person);
        }
        if (!StaffPermissions.AssignableRoles(current.Person, person.Role, isNew: input.Id is null).Contains(input.Role))
            throw new Refusal("Only an owner gives people their roles.");
        var losesOwner = person.Role == StaffRole.Owner && (input.Role != StaffRole.Owner || input.Retire);
        if (losesOwner && !await db.People.AnyAsync(p => p.Id != person.Id && p.Role == StaffRole.Owner && !p.Left, cancellation))
            throw new Refusal("A practice has at least one owner. Make someone else an owner first.");
        // What an open screen may do was decided by the old role: it ends now, not within the minute.
        if (input.Id is not null && (person.Role != input.Role || input.Retire))
            await PersonSessions.EndAllAsync(db, person.Id, clock.GetCurrentInstant(), cancellation);
        Fill(person, input);
        return new Outcome(person.Id, input.Retire ? await StillBookedAsync(db, person, cancellation) : 0);
    }

    private static void Fill(Person person, Input input)
    {
        person.Edit(input.Name, input.Role);
        person.SetSalons([.. input.Salons.Select(s => (Guid.CreateVersion7(), s))]);
        person.SetSkills([.. input.Skills.Select(s => (Guid.CreateVersion7(), s))]);
        var spells = input.Work.Where(w => input.Salons.Contains(w.SalonId)).SelectMany(w => w.Spells()).ToList();
        if (!spells.ToHashSet().SetEquals(person.WorkSpells.Select(w => (w.SalonId, w.Day, w.From, w.To))))
            person.SetWorkingHours(spells.Select(s => (Guid.CreateVersion7(), s.SalonId, s.Day, s.From, s.To)));
        DaysOffInput.Reconcile(person.Absences, input.Absences, person.RemoveAbsence, person.AddAbsence);
        if (input.Retire)
            person.Leave();
    }

    private async Task<int> StillBookedAsync(ClinicDb db, Person person, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        return await db.Visits.CountAsync(v => v.PersonId == person.Id && v.State == VisitState.Booked && v.StartsAt > now, cancellation);
    }

    /// <param name="Roles">The roles this form may give.</param>
    public sealed record Screen(Input Input, IReadOnlyList<Choice> Salons, IReadOnlyList<Choice> Services, IReadOnlyList<StaffRole> Roles);

    public sealed record Choice(Guid Id, string Name);

    /// <param name="StillBooked">Visits ahead that still name someone who has left.</param>
    public sealed record Outcome(Guid PersonId, int StillBooked);
}
