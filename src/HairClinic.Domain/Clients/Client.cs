using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Clients;

/// <summary>Someone who wears our units. One record in the whole practice, whichever salon they visit.</summary>
// Another salon has other open days; who left or was merged into another gets no more orders.
[ShapesNextOrder(nameof(HomeSalonId), nameof(LeftOn), nameof(MergedIntoId), ByComingOrGoing = false)]
public sealed partial class Client : PracticeOwned
{
    private readonly List<LifeEvent> _events = [];
    private readonly List<CareFact> _careFacts = [];

    private Client() { }

    public Client(Guid id, string code, string name, Guid homeSalonId)
    {
        Id = id;
        Code = code.Trim();
        Rename(name, calledAs: null);
        HomeSalonId = homeSalonId;
    }

    /// <summary>The practice's own code, unique in the practice; it is what labels and templates carry instead of a name.</summary>
    public string Code { get; private set; } = "";

    public string Name { get; private set; } = "";

    /// <summary>What to be called aloud in the waiting room.</summary>
    public string? CalledAs { get; private set; }

    public Guid HomeSalonId { get; private set; }

    /// <summary>E.164, such as +441632960001.</summary>
    public string? Phone { get; private set; }

    public string? Email { get; private set; }
    public LocalDate? BirthDate { get; private set; }

    /// <summary>Weekdays they like to come on; none means any.</summary>
    public WeekdaySet PreferredDays { get; private set; }

    /// <summary>Days between wash-and-style visits: 7 or 14, common practice; null where they wash at home.</summary>
    public int? WashEveryDays { get; private set; }

    /// <summary>Why a stylist would read it before they begin; never health answers.</summary>
    public string? Note { get; private set; }

    /// <summary>Set when this record was merged into another of the same person; it is then hidden, not lost.</summary>
    public Guid? MergedIntoId { get; private set; }

    /// <summary>The day they stopped being a client.</summary>
    public LocalDate? LeftOn { get; private set; }

    /// <summary>When everything that identified them was erased; nothing can be written on the record after that.</summary>
    public Instant? ErasedAt { get; private set; }

    public IReadOnlyList<LifeEvent> Events => _events;

    /// <summary>Habits that shorten a hold, newest last; staff may read them.</summary>
    public IReadOnlyList<CareFact> CareFacts => _careFacts;

    /// <summary>Existing labels and templates keep the old code and have to be rewritten.</summary>
    public void Recode(string code) => Code = code.Trim();

    public void Rename(string name, string? calledAs)
    {
        Name = name.Trim();
        CalledAs = calledAs.NullIfBlank();
    }

    public void SetContact(string? phone, string? email)
    {
        Phone = phone.NullIfBlank();
        Email = email.NullIfBlank();
    }

    public void MoveTo(Guid homeSalonId) => HomeSalonId = homeSalonId;

    /// <exception cref="Refusal">The rhythm is shorter than a day or longer than eight weeks.</exception>
    public void SetPreferences(WeekdaySet days, int? washEveryDays)
    {
        if (washEveryDays is < 1 or > 56)
            throw new Refusal("A wash-and-style rhythm lies between 1 and 56 days.");
        PreferredDays = days;
        WashEveryDays = washEveryDays;
    }

    public void SetBirthDateAndNote(LocalDate? birthDate, string? note)
    {
        BirthDate = birthDate;
        Note = note.NullIfBlank();
    }

    public void AddLifeEvent(LifeEvent planned) => _events.Add(planned);

    public void RemoveLifeEvent(Guid eventId) => _events.RemoveAll(e => e.Id == eventId);

    public void AddCareFact(CareFact fact) => _careFacts.Add(fact);

    /// <exception cref="Refusal">It is the same record, or one of the two is folded into another already.</exception>
    public void MergeInto(Client kept)
    {
        if (kept.Id == Id)
            throw new Refusal("These are the same record.");
        if (MergedIntoId is not null || kept.MergedIntoId is not null)
            throw new Refusal("One of the two records is merged into another already.");
        MergedIntoId = kept.Id;
    }

    public void UndoMerge() => MergedIntoId = null;
}
