using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.AddLifeEvent;

namespace HairClinic.Web.Tests.Features.Clients.AddLifeEvent;

public sealed class AddLifeEventFormTests : UiTestContext
{
    [Theory]
    [InlineData(LifeEventKind.Celebration, "the next rebond moves ahead of it")]
    [InlineData(LifeEventKind.Travel, "the next rebond moves ahead of it")]
    [InlineData(LifeEventKind.Other, "the next rebond moves ahead of it")]
    [InlineData(LifeEventKind.Operation, "a take-down is due before it")]
    [InlineData(LifeEventKind.Scan, "a take-down is due before it")]
    [InlineData(LifeEventKind.Treatment, "a take-down is due before it")]
    public void The_form_says_what_the_chosen_kind_does(LifeEventKind kind, string effect)
    {
        var form = Render<AddLifeEventForm>(p =>
            p.Add(f => f.Screen, new Slice.Screen("Ada", "C-1", new LocalDate(2027, 2, 3), []))
                .Add(f => f.Input, new Slice.Input { Kind = kind })
        );

        Assert.Contains(effect, form.Find("p[role=status]").TextContent, StringComparison.Ordinal);
    }
}
