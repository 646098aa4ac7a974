using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Web.Features.Wear;
using HairClinic.Web.Tests.Ui;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Features.Wear.NoteContact;

/// <summary>The taps below a row, as a desk on a real book.</summary>
public sealed class NoteContactFormTests(PgServer server) : UiTestContext
{
    private readonly DueList _list = new();

    [Fact]
    public async Task One_tap_notes_a_call_and_says_so()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _list.Lay(l => l.Bonded("C-1", 40)));
        var row = (await _list.OpenAsync(clinic)).Rows.Single();

        await ShowAsync(clinic, row, form => form.FindAll("button").First(b => b.TextContent == "Rang, no answer").Click());

        Assert.Equal("/due?part=open&noted=yes", Here);
        Assert.Equal(ContactOutcome.RangNoAnswer, (await _list.OpenAsync(clinic)).Rows.Single().LastContact!.Kind);
    }

    [Fact]
    public async Task Putting_off_asks_for_day_and_reason_and_offers_both_to_the_finger()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _list.Lay(l => l.Bonded("C-1", 40)));
        var row = (await _list.OpenAsync(clinic)).Rows.Single();

        await ShowAsync(
            clinic,
            row,
            form =>
            {
                form.FindAll("button").First(b => b.TextContent == "Put off…").Click();
                form.Find("form").Submit();
                Assert.Equal(2, form.FindAll("[aria-invalid=true]").Count);
                form.FindAll("button").First(b => b.TextContent == "In a week").Click();
                form.FindAll("button").First(b => b.TextContent == "Away").Click();
                form.Find("form").Submit();
            }
        );

        Assert.Equal("/due?part=open&noted=2027-02-10", Here);
        Assert.Empty((await _list.OpenAsync(clinic)).Rows);
    }

    [Fact]
    public async Task A_lifted_bond_offers_no_putting_off()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _list.Lay(l => l.Lifted("C-1", 40, 1)));
        var row = (await _list.OpenAsync(clinic)).Rows.Single();

        await ShowAsync(clinic, row, form => Assert.DoesNotContain("Put off", form.Markup, StringComparison.Ordinal));
    }

    private string Here => new Uri(Services.GetRequiredService<NavigationManager>().Uri).PathAndQuery;

    private Task<bool> ShowAsync(TestClinic clinic, DueRow row, Action<IRenderedComponent<NoteContactForm>> use) =>
        clinic.AsAsync(
            clinic.Acting(_list.Desk, _list.ElmRow),
            scope =>
            {
                Services.AddSingleton(scope.GetRequiredService<Web.Features.Wear.NoteContact>());
                Services.AddSingleton(new NoteContactRules());
                BeInteractive();
                var form = Render<NoteContactForm>(p =>
                    p.Add(f => f.ClientId, row.ClientId)
                        .Add(f => f.Today, "2027-02-03")
                        .Add(f => f.MayPutOff, row.LiftReportedOn is null)
                        .Add(f => f.ReturnTo, "/due?part=open")
                );
                use(form);
                form.WaitForState(
                    () => Here.Contains("noted", StringComparison.Ordinal) || row.LiftReportedOn is not null,
                    TimeSpan.FromSeconds(20)
                );
                return Task.FromResult(true);
            }
        );
}
