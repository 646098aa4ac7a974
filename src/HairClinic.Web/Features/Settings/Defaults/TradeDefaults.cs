namespace HairClinic.Web.Features.Settings;

/// <summary>
/// The rows a new practice starts with. All are common practice, no source: makers differ by up to ten
/// times, so each is a row the practice edits, and its own records win as soon as there are enough.
/// </summary>
public static class TradeDefaults
{
    /// <summary>Bases with the worn days by which one in ten and nine in ten are worn out.</summary>
    public static readonly IReadOnlyList<(string Name, int LifeFromDays, int LifeToDays)> Bases =
    [
        ("Fine lace", 30, 75),
        ("French lace", 75, 150),
        ("Thin skin 0.03 mm", 21, 35),
        ("Thin skin 0.06 mm", 30, 90),
        ("Poly 0.10 mm and more", 120, 270),
        ("Monofilament with poly rim", 120, 240),
        ("Lace front, skin back", 60, 105),
        ("Silk top", 120, 240),
        ("Integration mesh", 210, 365),
    ];

    /// <summary>Services with the minutes a chair and hands are taken.</summary>
    public static readonly IReadOnlyList<(string Name, ServicePurpose Purpose, int Minutes)> Services =
    [
        ("Consultation", ServicePurpose.Consultation, 60),
        ("Measure and template", ServicePurpose.Measuring, 45),
        ("First fitting", ServicePurpose.FirstFitting, 150),
        ("Rebond", ServicePurpose.Rebond, 90),
        ("Full service with rebond", ServicePurpose.Rebond, 120),
        ("Wash and style", ServicePurpose.WashAndStyle, 45),
        ("Fix a lift", ServicePurpose.FixLift, 30),
    ];

    /// <summary>Hold windows in weeks. The first holds for everything no other row names.</summary>
    public static readonly IReadOnlyList<(string? Base, Attachment? Attachment, int EarliestWeeks, int LatestWeeks)> HoldWindows =
    [
        (null, null, 4, 6),
        (null, Attachment.Tape, 2, 4),
        ("Fine lace", null, 2, 4),
        ("French lace", null, 3, 5),
        ("Thin skin 0.03 mm", null, 2, 3),
        ("Thin skin 0.06 mm", null, 3, 4),
    ];

    /// <summary>What multiplies hold or life; makers and salons name such numbers, and none gives a source.</summary>
    public static IEnumerable<WearFactor> MakeWearFactors() =>
        from quantity in Enum.GetValues<LifetimeKind>()
        from row in CovariateCatalog.All
        let factor = row.AssumedFactor(quantity)
        where factor is not (null or 1)
        select new WearFactor(Guid.CreateVersion7(), quantity, row.Habit, factor.Value);

    public static IEnumerable<BaseMaterial> MakeBases() =>
        Bases.Select(b => new BaseMaterial(Guid.CreateVersion7(), b.Name, b.LifeFromDays, b.LifeToDays));

    public static IEnumerable<ServiceKind> MakeServices() =>
        Services.Select(s =>
        {
            var kind = new ServiceKind(Guid.CreateVersion7(), s.Name, s.Purpose);
            kind.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, s.Minutes)]);
            return kind;
        });

    public static IEnumerable<HoldWindowRule> MakeHoldWindows(IReadOnlyCollection<BaseMaterial> bases) =>
        HoldWindows.Select(w =>
        {
            var rule = new HoldWindowRule(Guid.CreateVersion7(), w.EarliestWeeks, w.LatestWeeks);
            var baseId = w.Base is null ? (Guid?)null : bases.Single(b => b.Name == w.Base).Id;
            rule.Edit(baseId, adhesiveId: null, w.Attachment, w.EarliestWeeks, w.LatestWeeks);
            return rule;
        });
}
