using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;
using Columns = HairClinic.Web.Features.Binder.Sheets.VisitColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the visits sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record VisitRow
{
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
        $"{clientCode}|{CellText.Of(day)}|{CellText.Of(start)}";

    public static VisitRow Read(CellReader cells, SheetRow row) =>
        new()
        {
            ClientCode = cells.Code(row, Columns.ClientCode) ?? "",
            Salon = cells.Text(row, Columns.Salon),
            Day = cells.Date(row, Columns.Date),
            Start = cells.Time(row, Columns.Start),
            Minutes = cells.Minutes(row, Columns.Minutes),
            Service = cells.Text(row, Columns.Service),
            Chair = cells.Text(row, Columns.Chair),
            Stylist = cells.Text(row, Columns.Stylist),
            State = ChoiceWords.Read<VisitState>(cells.Choice(row, Columns.State)),
            Note = cells.Text(row, Columns.Note),
        };

    public static VisitRow Of(Visit visit, string clientCode, Salon salon, string service, string? chair, string? stylist)
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
    public VisitRow Over(VisitRow book) =>
        new()
        {
            ClientCode = ClientCode,
            Salon = Salon ?? book.Salon,
            Day = book.Day,
            Start = book.Start,
            Minutes = Minutes ?? book.Minutes,
            Service = Service ?? book.Service,
            Chair = Chair ?? book.Chair,
            Stylist = Stylist ?? book.Stylist,
            State = State is null or VisitState.Booked ? book.State : State,
            Note = Note ?? book.Note,
        };

    public IReadOnlyList<string> Cells() =>
        [
            ClientCode,
            CellText.Of(Salon),
            CellText.Of(Day),
            CellText.Of(Start),
            CellText.Of(Minutes),
            CellText.Of(Service),
            CellText.Of(Chair),
            CellText.Of(Stylist),
            CellText.Of(ChoiceWords.Of(State)),
            CellText.Of(Note),
        ];
}
