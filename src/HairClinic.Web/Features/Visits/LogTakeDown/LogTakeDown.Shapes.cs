namespace HairClinic.Web.Features.Visits;

public sealed partial class LogTakeDown
{
    /// <param name="Day">The civil day on which it comes off.</param>
    /// <param name="Worn">What is on the head; null where nothing is.</param>
    /// <param name="Products">What takes bonds down.</param>
    /// <param name="Start">The form as it opens: why it comes off, whether an edge was up and how the unit looks are left open.</param>
    /// <param name="Draft">What the same person typed before and did not send.</param>
    public sealed record Screen(
        Guid ClientId,
        string ClientName,
        string? ClientNote,
        string? VisitNote,
        LocalDate Day,
        LocalDate Today,
        string Zone,
        LogRebond.WornUnit? Worn,
        IReadOnlyList<LogRebond.ProductChoice> Products,
        Input Start,
        Input? Draft,
        LogRebond.LoggedRebond? Logged
    )
    {
        /// <summary>Whoever logs may go on to what the client told of their health.</summary>
        public bool MayReadHealth { get; init; }
    }

    public sealed record Input : TakeDownInput
    {
        /// <summary>The first day on which a bond may be made again, where somebody knows.</summary>
        public LocalDate? NoBondUntil { get; set; }

        /// <summary>What it was taken down with; coats are not counted.</summary>
        public List<LogRebond.ProductLine> Products { get; set; } = [];

        public string? Note { get; set; }

        /// <summary>What was typed into a log, to be logged once more.</summary>
        public static Input FromRecord(VisitRecord record, Bond worn)
        {
            var input = new Input
            {
                VisitId = record.VisitId,
                WornBondId = worn.Id,
                NoBondUntil = worn.NoBondUntil,
                Products = [.. record.TakeDownProducts.Select(p => new LogRebond.ProductLine { ProductId = p.ProductId, LotId = p.LotId })],
                Note = record.Note,
            };
            input.SetFound(record, worn);
            return input;
        }
    }

    /// <param name="Lower">Days the bond held at least.</param>
    /// <param name="Upper">Days it held at most; null where that is not known.</param>
    /// <param name="NoBondUntil">The first day on which a bond may be made again.</param>
    public sealed record Outcome(
        Guid ClientId,
        string Serial,
        RemovalReason Because,
        HoldCensoring Hold,
        int Lower,
        int? Upper,
        LocalDate? NoBondUntil,
        LocalDate Today
    );
}
