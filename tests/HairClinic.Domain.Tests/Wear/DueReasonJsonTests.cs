using System.Text.Json;
using HairClinic.Domain.Wear;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace HairClinic.Domain.Tests.Wear;

public sealed class DueReasonJsonTests
{
    private static readonly JsonSerializerOptions Options = new JsonSerializerOptions(JsonSerializerDefaults.Web).ConfigureForNodaTime(
        DateTimeZoneProviders.Tzdb
    );

    [Fact]
    public void Reasons_are_stored_by_name_and_come_back_the_same()
    {
        var due = DueRule.DueWindowFor(
            new(new(2026, 3, 3), Salons.FourToEightWeeks, 32, Salons.OpenTuesdayToSaturday())
            {
                Events = [LifeEventDays.SingleDay(new(2026, 4, 6))],
                Survival = _ => 0.8,
            }
        );

        var json = JsonSerializer.Serialize(due.Why.Explain(), Options);

        Assert.StartsWith(
            """[{"rule":"HoldWindow","from":"2026-03-03","to":"2026-04-28","amount":4,"upTo":8},""",
            json,
            StringComparison.Ordinal
        );
        Assert.Equal(due.Why.Explain(), JsonSerializer.Deserialize<List<DueReason>>(json, Options));
    }
}
