using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Practices;

/// <summary>
/// What holds for the whole practice. Every number is a default of the trade that the practice may
/// edit; product labels and local codes come before any of them.
/// </summary>
public sealed class PracticeSettings : PracticeOwned
{
    private PracticeSettings() { }

    public PracticeSettings(Guid id, string name, string region, string culture)
    {
        Id = id;
        SetNameAndLocale(name, region, culture);
    }

    public string Name { get; private set; } = "";

    /// <summary>ISO 3166 country that phone numbers without a prefix belong to.</summary>
    public string Region { get; private set; } = "GB";

    /// <summary>Language and formats of the staff screens, as a culture name such as en-GB.</summary>
    public string Culture { get; private set; } = "en-GB";

    /// <summary>Hours a fresh bond must stay dry and cool; 24–48, common practice, the label wins.</summary>
    public int CureHours { get; private set; } = 24;

    /// <summary>A rebond is pulled at least this many days ahead of a client's event.</summary>
    public int DaysBeforeEvent { get; private set; } = LifeEventDays.UsualDaysAhead;

    /// <summary>The least chance, in percent, that a bond is sound to the end of a celebration; with less a rebond comes before it.</summary>
    public int CelebrationSoundPercent { get; private set; } = LifeEventDays.UsualCelebrationPercent;

    /// <summary>The same for a journey.</summary>
    public int JourneySoundPercent { get; private set; } = LifeEventDays.UsualJourneyPercent;

    /// <summary>A window opening within this many days is listed as opening soon.</summary>
    public int OpeningSoonDays { get; private set; } = 7;

    /// <summary>Bookings start on multiples of this many minutes.</summary>
    public int SlotMinutes { get; private set; } = 15;

    /// <summary>How many days after a client's visit to another salon its staff may still open their record; common practice, no source.</summary>
    public int GrantDaysAfterVisit { get; private set; } = 90;

    /// <summary>Up to this many hours before a visit a client can move or cancel it online; after that they have to ring.</summary>
    public int ClientMoveHours { get; private set; } = 24;

    /// <summary>Days from arrival until a unit can be bonded: inspection, colour, cut-in, waiting for a chair; common practice, no source.</summary>
    public int PreparationDays { get; private set; } = 14;

    /// <summary>The accepted chance, in percent, of a day with no unit that still wears well: the next unit is ordered before the chance exceeds it.</summary>
    public int GapChancePercent { get; private set; } = 5;

    /// <summary>The demo practice, which can be deleted in one step.</summary>
    public bool IsDemo { get; private set; }

    /// <summary>When the first-run guide was finished; it is never shown again after that.</summary>
    public Instant? GuideFinishedAt { get; private set; }

    public void SetNameAndLocale(string name, string region, string culture)
    {
        Name = name.Trim();
        Region = region;
        Culture = culture;
    }

    /// <exception cref="Refusal">Outside 24–48 hours of cure, or a number no schedule can use.</exception>
    public void SetSchedulingRules(int cureHours, int daysBeforeEvent, int openingSoonDays, int slotMinutes)
    {
        if (cureHours is < 24 or > 48)
            throw new Refusal("A cure lasts 24 to 48 hours; the product's label may ask for more care, never less.");
        if (slotMinutes is not (5 or 10 or 15 or 20 or 30))
            throw new Refusal("Bookings can start every 5, 10, 15, 20 or 30 minutes.");
        CureHours = cureHours;
        DaysBeforeEvent = daysBeforeEvent;
        OpeningSoonDays = openingSoonDays;
        SlotMinutes = slotMinutes;
    }

    /// <exception cref="Refusal">Outside 50–99 percent: nothing is ever certain, and what is as likely to lift needs no rule.</exception>
    public void SetEventRule(int celebrationSoundPercent, int journeySoundPercent)
    {
        if (celebrationSoundPercent is < 50 or > 99 || journeySoundPercent is < 50 or > 99)
            throw new Refusal("The chance that a bond lasts to the end of an event is set from 50 to 99 percent.");
        (CelebrationSoundPercent, JourneySoundPercent) = (celebrationSoundPercent, journeySoundPercent);
    }

    /// <exception cref="Refusal">Outside 0–730 days.</exception>
    public void SetGrantDaysAfterVisit(int daysAfterVisit) =>
        GrantDaysAfterVisit = daysAfterVisit is >= 0 and <= 730
            ? daysAfterVisit
            : throw new Refusal("Another salon may see a client for 0 to 730 days after a visit there.");

    /// <exception cref="Refusal">More than a week, or less than nothing.</exception>
    public void SetClientMoveHours(int hoursBefore)
    {
        if (hoursBefore is < 0 or > 168)
            throw new Refusal("Clients may change a visit up to 0 to 168 hours before it.");
        ClientMoveHours = hoursBefore;
    }

    /// <exception cref="Refusal">Outside 0–90 days, or 1–30 percent.</exception>
    public void SetOrderRule(int preparationDays, int gapChancePercent)
    {
        if (preparationDays is < 0 or > 90)
            throw new Refusal("A unit is ready to bond 0 to 90 days after it arrives.");
        if (gapChancePercent is < 1 or > 30)
            throw new Refusal("The accepted chance of a day with no unit that still wears well is 1 to 30 percent.");
        (PreparationDays, GapChancePercent) = (preparationDays, gapChancePercent);
    }

    public void MarkAsDemo() => IsDemo = true;

    public void FinishGuide(Instant now) => GuideFinishedAt ??= now;
}
