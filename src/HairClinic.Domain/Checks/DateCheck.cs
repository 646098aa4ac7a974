using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.Checks;

/// <summary>
/// A question to the practice about dates that lie far outside what is usual: is this right? Until somebody answers nothing is learnt
/// from them. What is asked stands on the days as they were: where those change the question is over, and may be asked anew.
/// </summary>
public sealed class DateCheck : PracticeOwned
{
    private DateCheck() { }

    private DateCheck(Guid id, DateCheckKind kind, DatesInDoubt dates, LocalDate askedOn)
    {
        (Id, Kind, AskedOn) = (id, kind, askedOn);
        (From, Until, Days, UsualFrom, UsualTo) = (dates.From, dates.Until, dates.Days, dates.UsualFrom, dates.UsualTo);
    }

    public DateCheckKind Kind { get; private set; }

    /// <summary>Whose order or life it is about; null for bonds and workshops.</summary>
    public Guid? HairSystemId { get; private set; }

    public Guid? BondId { get; private set; }

    public Guid? WorkshopId { get; private set; }

    public LocalDate From { get; private set; }

    /// <summary>Null where it goes on.</summary>
    public LocalDate? Until { get; private set; }

    /// <summary>As they were judged: working days of an order, worn days of a unit.</summary>
    public int Days { get; private set; }

    /// <summary>Four in five take, or last, between these days.</summary>
    public int UsualFrom { get; private set; }

    public int UsualTo { get; private set; }

    /// <summary>Of days in which a workshop seems to be closed: in how many years that was seen.</summary>
    public int? Years { get; private set; }

    public LocalDate AskedOn { get; private set; }

    public DateCheckAnswer? Answer { get; private set; }

    public Guid? AnsweredBy { get; private set; }

    public Instant? AnsweredAt { get; private set; }

    /// <summary>The salon's day of the answer.</summary>
    public LocalDate? AnsweredOn { get; private set; }

    public bool IsOpen => Answer is null;

    /// <summary>What it is about: of each row only one is open.</summary>
    public Guid SubjectId => HairSystemId ?? BondId ?? WorkshopId ?? Guid.Empty;

    public DatesInDoubt Dates => new(From, Until, Days, UsualFrom, UsualTo);

    public static DateCheck OfUnit(Guid id, DateCheckKind kind, Guid unitId, DatesInDoubt dates, LocalDate askedOn) =>
        new(id, kind, dates, askedOn) { HairSystemId = unitId };

    public static DateCheck OfBond(Guid id, Guid bondId, DatesInDoubt dates, LocalDate askedOn) =>
        new(id, DateCheckKind.BondHeld, dates, askedOn) { BondId = bondId };

    public static DateCheck OfWorkshop(Guid id, Guid workshopId, RepeatedClosure seen, LocalDate askedOn) =>
        new(id, DateCheckKind.WorkshopClosed, new(seen.From, seen.To, Period.DaysBetween(seen.From, seen.To) + 1, 0, 0), askedOn)
        {
            WorkshopId = workshopId,
            Years = seen.Years,
        };

    /// <summary>Of days in which a workshop seems to be closed: those in the years in which that was seen, and the next two to come.</summary>
    public IEnumerable<DateInterval> ClosuresThrough(LocalDate today)
    {
        if (Kind != DateCheckKind.WorkshopClosed || Until is not { } until)
            yield break;
        for (var (year, ahead) = (1 - (Years ?? 1), 0); ahead < 2; year++)
        {
            var days = new DateInterval(From.PlusYears(year), until.PlusYears(year));
            ahead += days.End >= today ? 1 : 0;
            yield return days;
        }
    }

    /// <summary>It is about these days: an answer to others says nothing of them.</summary>
    public bool IsAbout(LocalDate from, LocalDate? until) => (From, Until) == (from, until);

    /// <exception cref="Refusal">Somebody else has answered it.</exception>
    public void SetAnswer(DateCheckAnswer answer, Guid? by, Instant at, LocalDate on)
    {
        if (!IsOpen)
            throw new Refusal("Somebody answered this a moment ago. Open the list again.");
        (Answer, AnsweredBy, AnsweredAt, AnsweredOn) = (answer, by, at, on);
    }
}

/// <summary>Days that are asked about, beside what is usual.</summary>
/// <param name="Until">Null where it goes on.</param>
public sealed record DatesInDoubt(LocalDate From, LocalDate? Until, int Days, int UsualFrom, int UsualTo);

/// <summary>What the dates in doubt are those of.</summary>
public enum DateCheckKind
{
    /// <summary>An order that arrived: when it went out, and when it came.</summary>
    OrderTook,

    /// <summary>An order in flight, waited for so long that it may be forgotten.</summary>
    OrderWaiting,

    BondHeld,

    /// <summary>A unit's life, in worn days.</summary>
    UnitLasted,

    /// <summary>Days of the year in which a workshop seems to send nothing.</summary>
    WorkshopClosed,
}

/// <summary>What was said of dates in doubt.</summary>
public enum DateCheckAnswer
{
    /// <summary>They are right: they count. An order is still waited for; a workshop is closed then.</summary>
    Right,

    /// <summary>They are wrong, and nobody knows better: they never count. A workshop is not closed then.</summary>
    Wrong,
}
