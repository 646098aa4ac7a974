using HairClinic.Domain.Bonding;
using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Features.Settings;

namespace HairClinic.Web.Demo;

/// <param name="Share">Of a hundred clients, how many wear it.</param>
public sealed record DemoKind(string Name, string Base, string Workshop, int Share)
{
    public DemoMaker Maker => DemoTruth.Makers.Single(m => m.Name == Workshop);

    public (int From, int To) LifeDays =>
        TradeDefaults.Bases.Where(b => b.Name == Base).Select(b => (b.LifeFromDays, b.LifeToDays)).Single();

    public (int From, int To) HoldWeeks(Attachment attachment) =>
        TradeDefaults
            .HoldWindows.Where(w => (w.Base is null || w.Base == Base) && (w.Attachment is null || w.Attachment == attachment))
            .OrderByDescending(w => (w.Base is null ? 0 : 2) + (w.Attachment is null ? 0 : 1))
            .Select(w => (w.EarliestWeeks, w.LatestWeeks))
            .First();
}
