namespace HairClinic.Web.Features.Clients;

public sealed partial class Photos
{
    /// <param name="NextBefore">Where the next page goes on; null when there is none.</param>
    public sealed record Screen(string Name, string Code, LocalDate Today, IReadOnlyList<PhotoRow> Rows, Guid? NextBefore, bool MayAdd)
    {
        /// <summary>Units a photo can show: theirs, and those they have or had on loan.</summary>
        public IReadOnlyList<UnitChoice> Units { get; init; } = [];

        /// <summary>Visits at which a photo can have been taken, the last first.</summary>
        public IReadOnlyList<VisitChoice> Visits { get; init; } = [];
    }

    /// <param name="Of">The unit it shows; null where it names none.</param>
    /// <param name="At">The visit at which it was taken; null where it names none.</param>
    public sealed record PhotoRow(Guid Id, PhotoKind Kind, LocalDate TakenOn, bool Shared, string? By, UnitChoice? Of, VisitChoice? At);

    public sealed record UnitChoice(Guid Id, string Serial);

    public sealed record VisitChoice(Guid Id, LocalDate Day, string Service);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public PhotoKind Kind { get; set; }
        public LocalDate? TakenOn { get; set; }
        public Guid? UnitId { get; set; }
        public Guid? VisitId { get; set; }

        /// <summary>The client agreed to this photo today.</summary>
        public bool Agreed { get; set; }

        public bool Share { get; set; }
    }

    public sealed record Outcome(Guid PhotoId, Guid FileId);
}
