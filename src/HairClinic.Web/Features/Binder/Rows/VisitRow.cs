using HairClinic.Web.Features.Binder.Sheets;
using Columns = HairClinic.Web.Features.Binder.Sheets.VisitColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the visits sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record VisitRow
{
    public static SheetSchema<VisitRow> Table { get; } =
        new SheetSchema<VisitRow>()
            .Code(Columns.ClientCode, r => r.ClientCode)
            .Text(Columns.Salon, r => r.Salon)
            .Date(Columns.Date, r => r.Day, (_, book) => book.Day)
            .Time(Columns.Start, r => r.Start, (_, book) => book.Start)
            .Add(Columns.Minutes, r => r.Minutes, (cells, row, _) => cells.Minutes(row, Columns.Minutes), CellFormatter.Format)
            .Text(Columns.Service, r => r.Service)
            .Text(Columns.Chair, r => r.Chair)
            .Text(Columns.Stylist, r => r.Stylist)
            .Choice(Columns.State, r => r.State, (own, book) => own.State is null or VisitState.Booked ? book.State : own.State)
            .Text(Columns.Note, r => r.Note);

    public string ClientCode { get; init; } = "";
    public string? Salon { get; init; }
    public LocalDate? Day { get; init; }
    public LocalTime? Start { get; init; }
    public int? Minutes { get; init; }
    public string? Service { get; init; }
    public string? Chair { get; init; }
    public string? Stylist { get; init; }
    public VisitState? State { get; init; }
    public string? Note { get; init; }

    /// <summary>What the row is recognised by when the file is brought again.</summary>
    public string BookKey => Key(ClientCode, Day, Start);

    public static string Key(string clientCode, LocalDate? day, LocalTime? start) =>
        $"{clientCode}|{CellFormatter.Format(day)}|{CellFormatter.Format(start)}";

    public static VisitRow FromVisit(Visit visit, string clientCode, Salon salon, string service, string? chair, string? stylist)
    {
        var start = visit.StartsAt.InZone(salon.TimeZone);
        return new()
        {
            ClientCode = clientCode,
            Salon = salon.Name,
            Day = visit.Day,
            Start = start.TimeOfDay,
            Minutes = (int)(visit.EndsAt - visit.StartsAt).TotalMinutes,
            Service = service,
            Chair = chair,
            Stylist = stylist,
            State = visit.State,
            Note = visit.Note,
        };
    }

    /// <summary>This row where it speaks, the book where it is silent. A visit that went on since the file was written does not go back.</summary>
    public VisitRow MergeWithBook(VisitRow book) => Table.MergeWithBook(this, book);

    public IReadOnlyList<string> Cells() => Table.Cells(this);
}
