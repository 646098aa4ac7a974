namespace HairClinic.Domain.Practices;

/// <summary>Someone who works in the practice: what they may do, where, when, and with which skills.</summary>
public sealed class Person : PracticeOwned
{
    private readonly List<PersonSalon> _salons = [];
    private readonly List<PersonSkill> _skills = [];
    private readonly List<WorkSpell> _workSpells = [];
    private readonly List<PersonAbsence> _absences = [];

    private Person() { }

    public Person(Guid id, string name, StaffRole role)
    {
        Id = id;
        Edit(name, role);
    }

    public string Name { get; private set; } = "";
    public StaffRole Role { get; private set; }

    /// <summary>Treats clients, so visits can be booked with them.</summary>
    public bool TakesClients => Role is StaffRole.Owner or StaffRole.Stylist or StaffRole.Trainee && _skills.Count > 0;

    public bool Left { get; private set; }

    public IReadOnlyList<PersonSalon> Salons => _salons;

    /// <summary>The services this person may do alone.</summary>
    public IReadOnlyList<PersonSkill> Skills => _skills;

    /// <summary>Weekly hours by salon; none means the opening hours of their salons.</summary>
    public IReadOnlyList<WorkSpell> WorkSpells => _workSpells;

    public IReadOnlyList<PersonAbsence> Absences => _absences;

    public void Edit(string name, StaffRole role)
    {
        Name = name.Trim();
        Role = role;
    }

    public void SetSalons(IEnumerable<(Guid Id, Guid SalonId)> salons)
    {
        var wanted = salons.ToList();
        _salons.RemoveAll(s => wanted.All(w => w.SalonId != s.SalonId));
        foreach (var (id, salonId) in wanted.Where(w => _salons.All(s => s.SalonId != w.SalonId)))
            _salons.Add(new PersonSalon(id, Id, salonId));
    }

    public void SetSkills(IEnumerable<(Guid Id, Guid ServiceKindId)> skills)
    {
        var wanted = skills.ToList();
        _skills.RemoveAll(s => wanted.All(w => w.ServiceKindId != s.ServiceKindId));
        foreach (var (id, serviceKindId) in wanted.Where(w => _skills.All(s => s.ServiceKindId != w.ServiceKindId)))
            _skills.Add(new PersonSkill(id, Id, serviceKindId));
    }

    /// <exception cref="Refusal">A spell ends before it starts.</exception>
    public void SetWorkingHours(IEnumerable<(Guid Id, Guid SalonId, IsoDayOfWeek Day, LocalTime From, LocalTime To)> spells)
    {
        var made = spells.Select(s => new WorkSpell(s.Id, Id, s.SalonId, s.Day, s.From, s.To)).ToList();
        _workSpells.Clear();
        _workSpells.AddRange(made);
    }

    /// <exception cref="Refusal">The absence ends before it starts.</exception>
    public void AddAbsence(Guid absenceId, LocalDate from, LocalDate to, string reason) =>
        _absences.Add(new PersonAbsence(absenceId, Id, from, to, reason));

    public void RemoveAbsence(Guid absenceId) => _absences.RemoveAll(a => a.Id == absenceId);

    public void Leave() => Left = true;
}

/// <summary>What a person of the practice may see and do.</summary>
public enum StaffRole
{
    Owner,
    Manager,
    FrontDesk,
    Stylist,
    Trainee,
}

/// <summary>A person works in a salon.</summary>
public sealed class PersonSalon : PracticeOwned
{
    private PersonSalon() { }

    internal PersonSalon(Guid id, Guid personId, Guid salonId) => (Id, PersonId, SalonId) = (id, personId, salonId);

    public Guid PersonId { get; private set; }
    public Guid SalonId { get; private set; }
}

/// <summary>A person may do a service.</summary>
public sealed class PersonSkill : PracticeOwned
{
    private PersonSkill() { }

    internal PersonSkill(Guid id, Guid personId, Guid serviceKindId) => (Id, PersonId, ServiceKindId) = (id, personId, serviceKindId);

    public Guid PersonId { get; private set; }
    public Guid ServiceKindId { get; private set; }
}

/// <summary>Weekly hours a person works in one salon, in that salon's zone.</summary>
public sealed class WorkSpell : PracticeOwned
{
    private WorkSpell() { }

    internal WorkSpell(Guid id, Guid personId, Guid salonId, IsoDayOfWeek day, LocalTime from, LocalTime to)
    {
        if (to <= from)
            throw new Refusal("Working hours must end after they start.");
        Id = id;
        PersonId = personId;
        SalonId = salonId;
        Day = day;
        From = from;
        To = to;
    }

    public Guid PersonId { get; private set; }
    public Guid SalonId { get; private set; }
    public IsoDayOfWeek Day { get; private set; }
    public LocalTime From { get; private set; }
    public LocalTime To { get; private set; }
}

/// <summary>Days on which a person does not work.</summary>
public sealed class PersonAbsence : ClosureOrAbsence
{
    private PersonAbsence() { }

    internal PersonAbsence(Guid id, Guid personId, LocalDate from, LocalDate to, string reason)
        : base(id, from, to, reason, "The absence ends before it starts.") => PersonId = personId;

    public Guid PersonId { get; private set; }
}
