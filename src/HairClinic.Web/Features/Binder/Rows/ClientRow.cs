using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;
using Columns = HairClinic.Web.Features.Binder.Sheets.ClientColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the clients sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record ClientRow
{
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

    /// <param name="regionAt">The country (ISO 3166) whose phone numbers the clients of the salon of that name write; null where no salon says.</param>
    public static ClientRow Read(CellReader cells, SheetRow row, Func<string, string?> regionAt)
    {
        var salon = cells.Text(row, Columns.HomeSalon);
        return new()
        {
            Code = cells.Code(row, Columns.Code) ?? "",
            Name = cells.Text(row, Columns.Name),
            Called = cells.Text(row, Columns.Called),
            HomeSalon = salon,
            Phone = cells.Phone(row, Columns.Phone, salon is null ? null : regionAt(salon)),
            Email = cells.Email(row, Columns.Email),
            Days = WeekdaySet.Of([.. cells.Weekdays(row, Columns.PreferredDays)]),
            Born = cells.Date(row, Columns.BirthDate),
            Skin = ChoiceWords.Read<SkinOiliness>(cells.Choice(row, Columns.SkinOiliness)),
            Sweat = ChoiceWords.Read<Sweating>(cells.Choice(row, Columns.Sweat)),
            Swims = cells.Number(row, Columns.SwimsPerWeek),
            Washes = cells.Number(row, Columns.WashesPerWeek),
            Heat = cells.Number(row, Columns.HeatStylingPerWeek),
            Note = cells.Text(row, Columns.Note),
        };
    }

    /// <param name="client">With their care facts.</param>
    public static ClientRow Of(Client client, string? homeSalon)
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
    public ClientRow Over(ClientRow book) =>
        new()
        {
            Code = Code,
            Name = Name ?? book.Name,
            Called = Called ?? book.Called,
            HomeSalon = HomeSalon ?? book.HomeSalon,
            Phone = Phone ?? book.Phone,
            Email = Email ?? book.Email,
            Days = Days.IsEmpty ? book.Days : Days,
            Born = Born ?? book.Born,
            Skin = Skin ?? book.Skin,
            Sweat = Sweat ?? book.Sweat,
            Swims = Swims ?? book.Swims,
            Washes = Washes ?? book.Washes,
            Heat = Heat ?? book.Heat,
            Note = Note ?? book.Note,
        };

    public IReadOnlyList<string> Cells() =>
        [
            Code,
            CellText.Of(Name),
            CellText.Of(Called),
            CellText.Of(HomeSalon),
            CellText.Of(Phone),
            CellText.Of(Email),
            CellText.Of(Enumerable.Range(1, 7).Select(d => (IsoDayOfWeek)d).Where(Days.Contains)),
            CellText.Of(Born),
            CellText.Of(ChoiceWords.Of(Skin)),
            CellText.Of(ChoiceWords.Of(Sweat)),
            CellText.Of(Swims),
            CellText.Of(Washes),
            CellText.Of(Heat),
            CellText.Of(Note),
        ];
}
