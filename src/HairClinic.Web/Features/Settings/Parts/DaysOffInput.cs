using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Settings;

/// <summary>Days off as typed: a closure or an absence, both ends included.</summary>
public sealed record DaysOffInput : IFormRow
{
    /// <summary>Of the row it came from; empty for a new one.</summary>
    public Guid Id { get; set; }

    public LocalDate? From { get; set; }
    public LocalDate? To { get; set; }
    public string Reason { get; set; } = "";

    public static DaysOffInput FromRow(ClosureOrAbsence row) =>
        new()
        {
            Id = row.Id,
            From = row.From,
            To = row.To,
            Reason = row.Reason,
        };

    public static string Describe(IEnumerable<DaysOffInput> ranges) =>
        string.Join(", ", ranges.OrderBy(r => r.From).Select(r => $"{Dates.Iso(r.From)}–{Dates.Iso(r.To)} {r.Reason}".Trim()));

    object? IFormRow.Key => Id == Guid.Empty ? null : Id;

    string IFormRow.Describe(FieldFormatter words) => $"{words.Format(From)}–{words.Format(To)} {Reason}".Trim();

    /// <summary>Makes what is in the book what was typed: rows that differ are taken out and put in anew.</summary>
    public static void Reconcile(
        IEnumerable<ClosureOrAbsence> kept,
        IEnumerable<DaysOffInput> typed,
        Action<Guid> takeOut,
        Action<Guid, LocalDate, LocalDate, string> putIn
    )
    {
        var before = kept.Select(FromRow).ToList();
        var after = typed.Select(r => r with { Reason = r.Reason.Trim() }).ToList();
        foreach (var gone in before.Where(b => !after.Contains(b)))
            takeOut(gone.Id);
        foreach (var fresh in after.Where(a => !before.Contains(a)))
            putIn(Guid.CreateVersion7(), fresh.From!.Value, fresh.To!.Value, fresh.Reason);
    }
}
