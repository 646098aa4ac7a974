namespace HairClinic.Domain.Practices;

/// <summary>A place of work, with its own time zone: every civil day and hour in it is read in that zone.</summary>
public sealed class Salon : PracticeOwned
{
    private readonly List<SalonHours> _hours = [];
    private readonly List<SalonClosure> _closures = [];

    private Salon() { }

    public Salon(Guid id, string name, string zone, string currency)
    {
        Id = id;
        Edit(name, zone, currency, phone: null, address: null);
    }

    public string Name { get; private set; } = "";

    /// <summary>IANA zone id, such as Europe/London.</summary>
    public string Zone { get; private set; } = "Etc/UTC";

    /// <summary>ISO 4217 code of the money taken here.</summary>
    public string Currency { get; private set; } = "GBP";

    /// <summary>E.164, such as +441632960001; an old one may still be as somebody typed it.</summary>
    public string? Phone { get; private set; }

    public string? Address { get; private set; }
    public bool Retired { get; private set; }

    public IReadOnlyList<SalonHours> Hours => _hours;

    public IReadOnlyList<SalonClosure> Closures => _closures;

    /// <exception cref="Refusal">The zone is not in the IANA database, or the currency is not a code of three letters.</exception>
    public void Edit(string name, string zone, string currency, string? phone, string? address)
    {
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
            throw new Refusal("“{0}” is not a time zone of the IANA database, such as Europe/London.", zone);
        if (currency.Length != 3 || !currency.All(char.IsAsciiLetterUpper))
            throw new Refusal("“{0}” is not a currency code of three capital letters, such as GBP.", currency);
        Name = name.Trim();
        Zone = zone;
        Currency = currency;
        Phone = phone;
        Address = address;
    }

    /// <summary>Replaces the opening hours of one weekday; an empty list closes it.</summary>
    /// <exception cref="Refusal">A spell closes before it opens, or two spells overlap.</exception>
    public void SetHours(IsoDayOfWeek day, IEnumerable<(Guid Id, LocalTime Opens, LocalTime Closes)> spells)
    {
        var sorted = spells.OrderBy(s => s.Opens).ToList();
        for (var i = 0; i < sorted.Count; i++)
        {
            if (sorted[i].Closes <= sorted[i].Opens)
                throw new Refusal("The salon must close after it opens.");
            if (i > 0 && sorted[i].Opens < sorted[i - 1].Closes)
                throw new Refusal("Two opening times of one day overlap.");
        }
        _hours.RemoveAll(h => h.Day == day);
        _hours.AddRange(sorted.Select(s => new SalonHours(s.Id, Id, day, s.Opens, s.Closes)));
    }

    /// <exception cref="Refusal">The closure ends before it starts.</exception>
    public void AddClosure(Guid closureId, LocalDate from, LocalDate to, string reason) =>
        _closures.Add(new SalonClosure(closureId, Id, from, to, reason));

    public void RemoveClosure(Guid closureId) => _closures.RemoveAll(c => c.Id == closureId);

    public void Retire() => Retired = true;

    public DateTimeZone TimeZone => DateTimeZoneProviders.Tzdb[Zone];

    /// <summary>The civil day it is in this salon at an instant.</summary>
    public LocalDate DayOf(Instant instant) => instant.InZone(TimeZone).Date;
}

/// <summary>One spell in which a salon is open, every week, in its own zone.</summary>
public sealed class SalonHours : PracticeOwned
{
    private SalonHours() { }

    internal SalonHours(Guid id, Guid salonId, IsoDayOfWeek day, LocalTime opens, LocalTime closes) =>
        (Id, SalonId, Day, Opens, Closes) = (id, salonId, day, opens, closes);

    public Guid SalonId { get; private set; }
    public IsoDayOfWeek Day { get; private set; }
    public LocalTime Opens { get; private set; }
    public LocalTime Closes { get; private set; }
}

/// <summary>Days on which a salon is shut although its weekly hours say open.</summary>
public sealed class SalonClosure : ClosureOrAbsence
{
    private SalonClosure() { }

    internal SalonClosure(Guid id, Guid salonId, LocalDate from, LocalDate to, string reason)
        : base(id, from, to, reason, "The closure ends before it starts.") => SalonId = salonId;

    public Guid SalonId { get; private set; }
}
