using HairClinic.Web.Features.Binder.Sheets;
using Columns = HairClinic.Web.Features.Binder.Sheets.ClientColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the clients sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record ClientRow
{
    public static SheetSchema<ClientRow> Table { get; } =
        new SheetSchema<ClientRow>()
            .Code(Columns.Code, r => r.Code)
            .Text(Columns.Name, r => r.Name)
            .Text(Columns.Called, r => r.Called)
            .Text(Columns.HomeSalon, r => r.HomeSalon)
            // As the people write it who live where the client's salon is.
            .Add(Columns.Phone, r => r.Phone, (cells, row, read) => cells.Phone(row, Columns.Phone, read.HomeSalon), CellFormatter.Format)
            .Add(Columns.Email, r => r.Email, (cells, row, _) => cells.Email(row, Columns.Email), CellFormatter.Format)
            .Add(
                Columns.PreferredDays,
                r => r.Days,
                (cells, row, _) => WeekdaySet.Of([.. cells.Weekdays(row, Columns.PreferredDays)]),
                days => CellFormatter.Format(Enumerable.Range(1, 7).Select(d => (IsoDayOfWeek)d).Where(days.Contains)),
                (own, book) => own.Days.IsEmpty ? book.Days : own.Days
            )
            .Date(Columns.BirthDate, r => r.Born)
            .Choice(Columns.SkinOiliness, r => r.Care.Skin)
            .Choice(Columns.Sweat, r => r.Care.Sweat)
            .Number(Columns.SwimsPerWeek, r => r.Care.SwimsPerWeek)
            .Number(Columns.WashesPerWeek, r => r.Care.WashesPerWeek)
            .Number(Columns.HeatStylingPerWeek, r => r.Care.HeatPerWeek)
            .Text(Columns.Note, r => r.Note);

    public string Code { get; init; } = "";
    public string? Name { get; init; }
    public string? Called { get; init; }
    public string? HomeSalon { get; init; }
    public string? Phone { get; init; }
    public string? Email { get; init; }
    public WeekdaySet Days { get; init; }
    public LocalDate? Born { get; init; }
    public CareHabits Care { get; init; } = new();
    public string? Note { get; init; }

    /// <param name="client">With their care facts.</param>
    public static ClientRow FromClient(Client client, string? homeSalon)
    {
        var care = client.CareFacts.OrderBy(f => f.AsOf).ThenBy(f => f.Id).LastOrDefault();
        return new()
        {
            Code = client.Code,
            Name = client.Name,
            Called = client.CalledAs,
            HomeSalon = homeSalon,
            Phone = client.Phone,
            Email = client.Email,
            Days = client.PreferredDays,
            Born = client.BirthDate,
            Care = care is null ? new() : care.Habits with { },
            Note = client.Note,
        };
    }

    /// <summary>This row where it speaks, the book where it is silent.</summary>
    public ClientRow MergeWithBook(ClientRow book) => Table.MergeWithBook(this, book);

    public IReadOnlyList<string> Cells() => Table.Cells(this);
}
