using HairClinic.Web.Features.Binder.Sheets;
using Columns = HairClinic.Web.Features.Binder.Sheets.ClientColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the clients sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record ClientRow
{
    public static RowTable<ClientRow> Table { get; } =
        new RowTable<ClientRow>()
            .Code(Columns.Code, r => r.Code)
            .Text(Columns.Name, r => r.Name)
            .Text(Columns.Called, r => r.Called)
            .Text(Columns.HomeSalon, r => r.HomeSalon)
            // As the people write it who live where the client's salon is.
            .Add(Columns.Phone, r => r.Phone, (cells, row, read) => cells.Phone(row, Columns.Phone, read.HomeSalon), CellText.Format)
            .Add(Columns.Email, r => r.Email, (cells, row, _) => cells.Email(row, Columns.Email), CellText.Format)
            .Add(
                Columns.PreferredDays,
                r => r.Days,
                (cells, row, _) => WeekdaySet.Of([.. cells.Weekdays(row, Columns.PreferredDays)]),
                days => CellText.Format(Enumerable.Range(1, 7).Select(d => (IsoDayOfWeek)d).Where(days.Contains)),
                (own, book) => own.Days.IsEmpty ? book.Days : own.Days
            )
            .Date(Columns.BirthDate, r => r.Born)
            .Choice(Columns.SkinOiliness, r => r.Skin)
            .Choice(Columns.Sweat, r => r.Sweat)
            .Number(Columns.SwimsPerWeek, r => r.Swims)
            .Number(Columns.WashesPerWeek, r => r.Washes)
            .Number(Columns.HeatStylingPerWeek, r => r.Heat)
            .Text(Columns.Note, r => r.Note);

    public string Code { get; init; } = "";
    public string? Name { get; init; }
    public string? Called { get; init; }
    public string? HomeSalon { get; init; }
    public string? Phone { get; init; }
    public string? Email { get; init; }
    public WeekdaySet Days { get; init; }
    public LocalDate? Born { get; init; }
    public SkinOiliness? Skin { get; init; }
    public Sweating? Sweat { get; init; }
    public decimal? Swims { get; init; }
    public decimal? Washes { get; init; }
    public decimal? Heat { get; init; }
    public string? Note { get; init; }

    public bool TellsCare => Skin is not null || Sweat is not null || Swims is not null || Washes is not null || Heat is not null;

    /// <param name="client">With their care facts.</param>
    public static ClientRow From(Client client, string? homeSalon)
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
            Skin = care?.Skin,
            Sweat = care?.Sweat,
            Swims = care?.SwimsPerWeek,
            Washes = care?.WashesPerWeek,
            Heat = care?.HeatPerWeek,
            Note = client.Note,
        };
    }

    /// <summary>This row where it speaks, the book where it is silent.</summary>
    public ClientRow Over(ClientRow book) => Table.Over(this, book);

    public IReadOnlyList<string> Cells() => Table.Cells(this);
}
