using Bunit;
using HairClinic.Web.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Ui;

public sealed class DateTextTests : UiTestContext
{
    [Fact]
    public void A_day_is_readable_by_people_and_by_programs() =>
        Render<DateText>(p => p.Add(d => d.Value, new LocalDate(2031, 12, 3)).Add(d => d.Today, new LocalDate(2031, 11, 25)))
            .MarkupMatches("""<time datetime="2031-12-03">Wed 3 Dec</time>""");
}
