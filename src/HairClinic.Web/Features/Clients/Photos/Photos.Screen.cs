namespace HairClinic.Web.Features.Clients;

public sealed partial class Photos
{
    /// <param name="NextBefore">Where the next page goes on; null when there is none.</param>
    public sealed record Screen(string Name, string Code, LocalDate Today, IReadOnlyList<PhotoRow> Rows, Guid? NextBefore, bool MayAdd);

    public sealed record PhotoRow(Guid Id, PhotoKind Kind, LocalDate TakenOn, bool Shared, string? By);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public PhotoKind Kind { get; set; }
        public LocalDate? TakenOn { get; set; }

        /// <summary>The client agreed to this photo today.</summary>
        public bool Agreed { get; set; }

        public bool Share { get; set; }
    }

    public sealed record Outcome(Guid PhotoId, Guid FileId);
}
