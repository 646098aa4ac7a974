using Bunit;
using HairClinic.Domain.Replacement;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Settings.KeepSpares;

namespace HairClinic.Web.Tests.Features.Settings.KeepSpares;

/// <summary>The form, and its sentences as somebody reads them aloud.</summary>
public sealed class KeepSparesFormTests : UiTestContext
{
    private static readonly Slice.UnitPrice Price = new("EUR", 6, 40_000);
    private readonly Slice.Input _input = new();

    [Fact]
    public void The_proposal_is_a_sentence_with_units_money_and_days()
    {
        Assert.Equal(
            "Lace front: one spare for each client would cost 14 more units lying ready, about 5,600 EUR, and lower days without hair from 62 to 9 a year.",
            SparesText.Proposal(Kind(clients: 20), Localizer)
        );
        Assert.Equal(
            "Lace front: one spare for each client would cost 14 more units lying ready, and lower days without hair from 62 to 9 a year.",
            SparesText.Proposal(Kind(clients: 20) with { Price = null }, Localizer)
        );
        Assert.Equal(
            "Lace front: two spares for each client would cost 34 more units lying ready, about 14,000 EUR, and lower days without hair from 62 to less than 1 a year.",
            SparesText.Proposal(Kind(clients: 20, proposed: 2), Localizer)
        );
        Assert.Equal(
            "Lace front: nobody wears one now. For each client one spare would cost 0.7 of a unit more lying ready, and lower days without hair from 3.1 to 0.5 a year.",
            SparesText.Proposal(Kind(clients: 0), Localizer)
        );
    }

    [Fact]
    public void Where_the_chance_of_a_gap_orders_that_early_already_the_rule_costs_nothing()
    {
        var kind = Kind(clients: 20);
        var free = kind with { Costs = kind.Costs with { WithSpares = [kind.Costs.ByChance with { Spares = 1 }, kind.Costs[2]] } };

        Assert.Equal(
            "Lace front: by the chance of a gap units are ordered so early already that one spare for each client would cost nothing more.",
            SparesText.Proposal(free, Localizer)
        );
        // Both rules stand on one place of the picture, under one word.
        Assert.Equal(["chance 5 %, one", "two"], SparesPlotBuilder.BuildPlotData(free, Localizer).Dots.Select(d => d.Text));
    }

    [Fact]
    public void Each_kind_has_its_three_rules_with_what_they_mean_and_a_tap_changes_that_kind_alone()
    {
        var form = Show(Kind(clients: 20), Kind(clients: 0) with { Name = "Fine lace" });

        var first = form.FindAll("section")[0];
        Assert.Equal("20 clients wear one", first.QuerySelector(".split .quiet")!.TextContent);
        Assert.Equal(
            [
                "Order by the chance of a gap units lying ready: 6, days without hair a year: 62",
                "Always one ready units lying ready: 20, days without hair a year: 9",
                "Always two ready units lying ready: 40, days without hair a year: less than 1",
            ],
            first.QuerySelectorAll("label.tap").Select(l => string.Join(' ', l.QuerySelectorAll("span").Select(s => s.TextContent)))
        );
        Assert.True(first.QuerySelectorAll("input")[0].HasAttribute("checked"));

        form.Find("input[name='Lines[1].Spares'][value='2']").Change("2");

        Assert.Equal([0, 2], _input.Lines.Select(l => l.Spares));
    }

    [Fact]
    public void What_it_costs_and_buys_is_a_table_and_a_picture_with_the_rule_that_holds_marked()
    {
        var form = Show(Kind(clients: 20) with { Spares = 1 });

        var rows = form.FindAll("table.folds tbody tr").Select(r => r.Children.Select(c => c.TextContent.Trim()).ToArray()).ToList();
        Assert.Equal(["Always one ready", "20", "8,000 EUR", "1 %"], rows[1][..4]);
        Assert.Contains("9", rows[1][4], StringComparison.Ordinal);
        Assert.Contains("0.5 each", rows[1][4], StringComparison.Ordinal);
        Assert.Equal(
            "Lace front: the more units lie ready for each client, the fewer days without hair a year: 3.1 with a chance of 5 %, 0.5 with one spare, less than 0.1 with two.",
            form.Find("svg[role=img]").GetAttribute("aria-label")
        );
        var picture = SparesPlotBuilder.BuildPlotData(Kind(clients: 20) with { Spares = 1 }, Localizer);
        Assert.Equal([("chance 5 %", false), ("one", true), ("two", false)], picture.Dots.Select(d => (d.Text, d.IsNow)));
        Assert.Contains("Chance of a gap 5 %, as accepted", form.Find("figure table").TextContent, StringComparison.Ordinal);
        Assert.Contains("Leads from orders that arrived: 12; price: the mean of 6.", form.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_what_the_figures_stand_on_and_that_a_spare_helps_when_the_records_do_not()
    {
        var form = Show(Kind(clients: 20));

        Assert.Contains(
            "The figures hold while lives and leads stay as the records say.",
            form.Find("p.note").TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains("nothing was learnt yet", form.Markup, StringComparison.Ordinal);
        Assert.Contains("There is no kind of unit yet.", Show().Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<KeepSparesForm> Show(params Slice.KindRow[] kinds)
    {
        _input.Lines = [.. kinds.Select(k => new Slice.Line { UnitKindId = k.Id, Spares = k.Spares })];
        return Render<KeepSparesForm>(p => p.Add(f => f.Screen, new Slice.Screen(_input, kinds, 5, null)).Add(f => f.Input, _input));
    }

    private static Slice.KindRow Kind(int clients, int proposed = 1)
    {
        var chance = new CertaintyOption(0.05, 0, 1, 60, 0.05, 3.1, 0.3);
        return new(
            Guid.CreateVersion7(),
            "Lace front",
            0,
            clients,
            new(
                [
                    chance with
                    {
                        Alpha = 0.2,
                        DaysWithoutPerYear = 9,
                        IdleUnits = 0.1,
                    },
                    chance,
                    chance with
                    {
                        Alpha = 0.01,
                        IdleUnits = 0.5,
                    },
                ],
                chance,
                [new CertaintyOption(0.05, 1, 1, 0, 0.01, 0.45, 1.0), new CertaintyOption(0.05, 2, 2, 0, 0.001, 0.01, 2.0)],
                proposed
            )
        )
        {
            Price = Price,
            Orders = 12,
        };
    }
}
