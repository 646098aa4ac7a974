using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Web.Features.Wear.Due;
using HairClinic.Web.Features.Wear.NoteContact;
using HairClinic.Web.Practices;
using HairClinic.Web.Tests.Ui;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Wear.NoteContact;

/// <summary>The taps below a row, as a desk on a real book.</summary>
public sealed class NoteContactFormTests(PgServer server) : UiTestContext
{
    private readonly DueList list = new();
    private readonly List<DueContact> noted = [];

    [Fact]
    public async Task One_tap_notes_a_call_and_says_so()
    {
        await using var clinic = await TestClinic.OpenAsync(server, list.Lay(l => l.Bonded("C-1", 40)));
        var row = (await list.OpenAsync(clinic)).Rows.Single();

        await ShowAsync(clinic, row, form => form.FindAll("button").First(b => b.TextContent == "Rang, no answer").Click());

        Assert.Equal(ContactKind.RangNoAnswer, Assert.Single(noted).Kind);
    }

    [Fact]
    public async Task Putting_off_asks_for_day_and_reason_and_offers_both_to_the_finger()
    {
        await using var clinic = await TestClinic.OpenAsync(server, list.Lay(l => l.Bonded("C-1", 40)));
        var row = (await list.OpenAsync(clinic)).Rows.Single();

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

        Assert.Equal((list.Today.PlusDays(7), "Away"), (noted.Single().Until!.Value, noted.Single().Reason));
    }

    [Fact]
    public async Task A_lifted_bond_offers_no_putting_off()
    {
        await using var clinic = await TestClinic.OpenAsync(server, list.Lay(l => l.Lifted("C-1", 40, 1)));
        var row = (await list.OpenAsync(clinic)).Rows.Single();

        await ShowAsync(clinic, row, form => Assert.DoesNotContain("Put off", form.Markup, StringComparison.Ordinal));
    }

    private Task<bool> ShowAsync(TestClinic clinic, DueRow row, Action<IRenderedComponent<NoteContactForm>> use) =>
        clinic.AsAsync(
            clinic.Acting(list.Desk, list.ElmRow),
            scope =>
            {
                Services.AddSingleton(scope.GetRequiredService<Web.Features.Wear.NoteContact.NoteContact>());
                Services.AddSingleton(new NoteContactRules());
                BeInteractive();
                var form = Render<NoteContactForm>(p => p
                    .Add(f => f.ClientId, row.ClientId)
                    .Add(f => f.Today, list.Today)
                    .Add(f => f.MayPutOff, row.LiftReportedOn is null)
                    .Add(f => f.OnNoted, noted.Add));
                use(form);
                form.WaitForState(() => noted.Count > 0 || row.LiftReportedOn is not null, TimeSpan.FromSeconds(20));
                return Task.FromResult(true);
            }
        );
}
