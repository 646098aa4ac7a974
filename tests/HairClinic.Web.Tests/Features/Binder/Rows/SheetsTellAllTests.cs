using System.Reflection;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Binder;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Binder.Rows;

/// <summary>What the book keeps of a client's habits or of a unit, its sheet tells too, or it is said here that it does not.</summary>
public sealed class SheetsTellAllTests
{
    private static readonly string[] OfTheUnit =
    [
        nameof(HairSystem.Serial),
        nameof(HairSystem.ClientId),
        nameof(HairSystem.UnitKindId),
        nameof(HairSystem.State),
        nameof(HairSystem.Dates),
        nameof(HairSystem.Promises),
        nameof(HairSystem.RemadeTimes),
        nameof(HairSystem.RetiredBecause),
        nameof(HairSystem.PlaceSalonId),
        nameof(HairSystem.PriceMinor),
        nameof(HairSystem.Currency),
    ];

    // A draft's: it goes out, or is thrown away. Repairs, orders, the trail and what was seen of it are no cells of a row.
    private static readonly string[] NotOfTheSheet =
    [
        nameof(HairSystem.RepeatsId),
        nameof(HairSystem.OrderNote),
        nameof(HairSystem.Repairs),
        nameof(HairSystem.Arrivals),
        nameof(HairSystem.Steps),
        nameof(HairSystem.Origin),
        nameof(HairSystem.OrderId),
        nameof(HairSystem.Place),
        nameof(HairSystem.Spot),
        nameof(HairSystem.Cleaning),
        nameof(HairSystem.EndLook),
    ];

    [Fact]
    public void Every_habit_of_a_client_has_a_column() =>
        Assert.All(
            CareHabits.All,
            question =>
            {
                var row = new ClientRow();
                question.SetAnswerIn(row.Care, question.Choices.Count == 0 ? 2m : question.Choices[^1]);
                Assert.True(!row.Cells().SequenceEqual(new ClientRow().Cells()), $"No line of ClientRow.Table tells {question.Field}.");
            }
        );

    [Fact]
    public void Every_date_of_a_unit_has_a_column() =>
        Assert.All(
            typeof(UnitDates).GetProperties().Where(p => p.CanWrite),
            date =>
            {
                var dates = new UnitDates();
                date.SetValue(dates, new LocalDate(2027, 3, 1));
                var row = new UnitRow { Dates = dates };
                Assert.True(!row.Cells().SequenceEqual(new UnitRow().Cells()), $"No line of UnitRow.Table tells {date.Name}.");
            }
        );

    [Fact]
    public void What_is_kept_of_a_unit_is_told_by_its_sheet_or_named_here()
    {
        var kept = typeof(HairSystem)
            .GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(p => p.CanWrite || typeof(System.Collections.IEnumerable).IsAssignableFrom(p.PropertyType))
            .Select(p => p.Name);

        Assert.Equal(OfTheUnit.Concat(NotOfTheSheet).Order(), kept.Order());
    }
}
