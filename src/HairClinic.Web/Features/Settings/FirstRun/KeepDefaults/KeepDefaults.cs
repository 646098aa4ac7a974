using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Settings;

/// <summary>The trade's services, bases and hold windows, to be kept as they are or changed before they are.</summary>
public sealed class KeepDefaults(WriteOnce writes)
{
    public static Input SuggestTradeDefaults() =>
        new()
        {
            Services =
            [
                .. TradeDefaults.Services.Select(s => new ServiceLine
                {
                    Name = s.Name,
                    Purpose = s.Purpose,
                    Minutes = s.Minutes,
                }),
            ],
            Windows =
            [
                .. TradeDefaults.HoldWindows.Select(w => new WindowLine
                {
                    Base = w.Base,
                    Attachment = w.Attachment,
                    EarliestWeeks = w.EarliestWeeks,
                    LatestWeeks = w.LatestWeeks,
                }),
            ],
        };

    /// <exception cref="Refusal">There are services already.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(KeepDefaults), input, db => WriteAsync(db, input, cancellation), cancellation);

    private static async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (await db.ServiceKinds.AnyAsync(cancellation) || await db.HoldWindowRules.AnyAsync(cancellation))
            throw new Refusal("Services and hold windows are there already. Change them under Practice.");
        var services = input.Services.Where(s => s.Keep).Select(Make).ToList();
        var bases = TradeDefaults.MakeBases().ToList();
        var windows = input
            .Windows.Where(w => w.Keep || w.FitsAnything)
            .Select(w => Make(w, bases.Find(b => b.Name == w.Base)?.Id))
            .ToList();
        db.AddRange([.. services, .. bases, .. windows, .. TradeDefaults.MakeWearFactors()]);
        // Owner and stylists may do all of it until told otherwise; a trainee's skills are given one by one.
        var hands = await db
            .People.Include(p => p.Skills)
            .Where(p => !p.Left && (p.Role == StaffRole.Owner || p.Role == StaffRole.Stylist))
            .ToListAsync(cancellation);
        foreach (var person in hands)
            person.SetSkills(services.Select(s => (Guid.CreateVersion7(), s.Id)));
        return new Outcome(services.Count, windows.Count);
    }

    private static ServiceKind Make(ServiceLine line)
    {
        var kind = new ServiceKind(Guid.CreateVersion7(), line.Name, line.Purpose);
        kind.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, line.Minutes ?? 0)]);
        return kind;
    }

    private static HoldWindowRule Make(WindowLine line, Guid? baseId)
    {
        var rule = new HoldWindowRule(Guid.CreateVersion7(), line.EarliestWeeks ?? 0, line.LatestWeeks ?? 0);
        rule.Edit(baseId, adhesiveId: null, line.Attachment, line.EarliestWeeks ?? 0, line.LatestWeeks ?? 0);
        return rule;
    }

    public sealed record Input
    {
        public List<ServiceLine> Services { get; set; } = [];
        public List<WindowLine> Windows { get; set; } = [];
    }

    public sealed record ServiceLine
    {
        public bool Keep { get; set; } = true;
        public string Name { get; set; } = "";
        public ServicePurpose Purpose { get; set; }
        public int? Minutes { get; set; }
    }

    public sealed record WindowLine
    {
        public bool Keep { get; set; } = true;
        public string? Base { get; set; }
        public Attachment? Attachment { get; set; }
        public int? EarliestWeeks { get; set; }
        public int? LatestWeeks { get; set; }

        /// <summary>Stands for all that no other window names: a practice always has it.</summary>
        public bool FitsAnything => Base is null && Attachment is null;
    }

    public sealed record Outcome(int Services, int HoldWindows);
}
