namespace HairClinic.Web.Features.Visits;

/// <summary>
/// The form as it opens: unit and recipe as last time, so that a normal visit needs few taps. Whether an edge was up, whether the waits
/// were kept and how the unit looks are never filled in: they are what the practice learns from.
/// </summary>
internal static class RebondPrefill
{
    public static LogRebond.Input Prefill(
        Guid visitId,
        LogRebond.WornUnit? worn,
        Bond? last,
        IReadOnlyList<LogRebond.UnitChoice> units,
        IReadOnlyList<LogRebond.ProductChoice> products,
        LocalTime? finishedAt
    )
    {
        var input = new LogRebond.Input
        {
            VisitId = visitId,
            WornBondId = worn?.BondId,
            UnitId = worn?.UnitId ?? units.Where(u => u.State.IsBondable() && !u.IsNobodys).OrderBy(u => u.Unclean).FirstOrDefault()?.Id,
            Attachment = last?.Attachment ?? Attachment.Liquid,
            Products = [.. (last?.Products ?? []).Select(p => Line(p, products)).OfType<LogRebond.ProductLine>()],
            FinishedAt = finishedAt is { } time ? new LocalTime(time.Hour, time.Minute) : null,
        };
        if (input.SetToldLift(worn?.Lift))
            input.Because = RemovalReason.Lifted;
        return input;
    }

    /// <summary>The lot used last while it may still be used, else the one that expires first.</summary>
    public static Guid? LotFor(LogRebond.ProductChoice product, Guid? usedLast) =>
        (product.Lots.FirstOrDefault(l => l.Id == usedLast && l.Usable) ?? product.Lots.FirstOrDefault(l => l.Usable))?.Id;

    private static LogRebond.ProductLine? Line(BondProduct used, IReadOnlyList<LogRebond.ProductChoice> products) =>
        products.FirstOrDefault(p => p.Id == used.ProductId) is { } product
            ? new LogRebond.ProductLine
            {
                ProductId = product.Id,
                LotId = LotFor(product, used.LotId),
                Coats = used.Coats,
            }
            : null;
}
