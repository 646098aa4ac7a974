using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>Every bond and unit the reader may see as spells up to a day, read once for all questions that need them.</summary>
internal sealed class WearRecords(ClinicDb db, LocalDate today)
{
    private List<HoldSpell>? _holds;
    private List<LifeSpell>? _lives;

    public LocalDate Today => today;

    public async Task<List<HoldSpell>> HoldsAsync(CancellationToken cancellation)
    {
        if (_holds is null)
        {
            var windows = await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation);
            _holds = [.. (await HoldFacts.LoadAsync(db, windows, clientIds: null, cancellation)).All(today)];
        }
        return _holds;
    }

    public async Task<List<LifeSpell>> LivesAsync(CancellationToken cancellation) =>
        _lives ??= await LifeSpells.ReadAsync(db, today, clientIds: null, cancellation);
}
