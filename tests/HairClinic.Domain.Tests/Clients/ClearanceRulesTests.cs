using HairClinic.Domain.Clients;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Clients;

// What blocks a bond and what only asks for a second look: common practice, no source.
public sealed class ClearanceRulesTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    [Fact]
    public void Sound_skin_and_no_history_clear_everything() => Assert.Empty(ClearanceRules.ClearancesFor(new(), Today));

    [Fact]
    public void A_product_someone_reacted_to_is_blocked_without_end_and_named_once()
    {
        var product = Guid.CreateVersion7();
        var history = new HealthHistory { Reactions = [new() { ProductId = product }, new() { ProductId = product, What = "Rash" }] };

        var fact = Assert.Single(ClearanceRules.ClearancesFor(history, Today));

        Assert.Equal(new ClearanceSpec(product, null, Today, null, ClearanceSeverity.Block), fact);
    }

    [Theory]
    [InlineData(ScalpSign.Broken, ClearanceSeverity.Block)]
    [InlineData(ScalpSign.Infected, ClearanceSeverity.Block)]
    [InlineData(ScalpSign.Sunburnt, ClearanceSeverity.Block)]
    [InlineData(ScalpSign.FreshlyOperated, ClearanceSeverity.Block)]
    [InlineData(ScalpSign.Irritated, ClearanceSeverity.Warn)]
    public void What_the_skin_looks_like_blocks_bonding_or_asks_for_a_second_look(ScalpSign sign, ClearanceSeverity kind)
    {
        var facts = ClearanceRules.ClearancesFor(new() { ScalpToday = [sign] }, Today);

        Assert.Equal([ServicePurpose.FirstFitting, ServicePurpose.Rebond, ServicePurpose.FixLift], facts.Select(f => f.Purpose!.Value));
        Assert.All(facts, f => Assert.Equal((kind, null), (f.Kind, f.Until)));
    }

    [Theory]
    [InlineData(true, false, false, true)]
    [InlineData(false, true, false, true)]
    [InlineData(true, true, true, false)]
    public void Radiotherapy_or_chemotherapy_blocks_bonding_until_the_care_team_agrees(bool radio, bool chemo, bool agreed, bool blocked)
    {
        var history = new HealthHistory
        {
            UnderRadiotherapy = radio,
            UnderChemotherapy = chemo,
            CareTeamAgreed = agreed,
        };

        Assert.Equal(blocked, ClearanceRules.ClearancesFor(history, Today).Any(f => f.Kind == ClearanceSeverity.Block));
    }

    [Theory]
    [InlineData(LossSign.Pustular)]
    [InlineData(LossSign.Painful)]
    [InlineData(LossSign.Scaling)]
    public void Loss_that_may_be_an_illness_of_the_skin_asks_for_a_second_look(LossSign sign)
    {
        var history = new HealthHistory { Signs = [sign] };

        Assert.All(ClearanceRules.ClearancesFor(history, Today), f => Assert.Equal(ClearanceSeverity.Warn, f.Kind));
        Assert.True(history.CallsForPhysician);
    }

    [Fact]
    public void Who_has_no_sign_is_sent_to_nobody()
    {
        Assert.False(new HealthHistory().CallsForPhysician);
        Assert.False(new HealthHistory { ScalpToday = [ScalpSign.Irritated] }.CallsForPhysician);
        Assert.True(new HealthHistory { ScalpToday = [ScalpSign.Infected] }.CallsForPhysician);
    }

    [Theory]
    [InlineData(null, 0)]
    [InlineData("", 0)]
    [InlineData("  ", 0)]
    [InlineData("nickel", 1)]
    public void A_reaction_or_an_allergy_counts_where_it_says_to_what(string? told, int counts)
    {
        var reacted = new HealthHistory { Reactions = [new() { To = told }] };
        var allergic = new HealthHistory { Allergies = told };

        Assert.All([reacted, allergic], h => Assert.Equal(counts > 0, ClearanceRules.ClearancesFor(h, Today).Count > 0));
    }

    [Fact]
    public void A_clearance_holds_from_its_first_day_to_its_last()
    {
        var fact = new ClearanceSpec(null, ServicePurpose.Rebond, Today, Today.PlusDays(2), ClearanceSeverity.Block);
        var clearance = new Clearance(Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), fact);

        Assert.False(clearance.ConcernsServiceOn(ServicePurpose.Rebond, Today.PlusDays(-1)));
        Assert.True(clearance.ConcernsServiceOn(ServicePurpose.Rebond, Today));
        Assert.True(clearance.ConcernsServiceOn(ServicePurpose.Rebond, Today.PlusDays(2)));
        Assert.False(clearance.ConcernsServiceOn(ServicePurpose.Rebond, Today.PlusDays(3)));
        Assert.False(clearance.ConcernsServiceOn(ServicePurpose.WashAndStyle, Today));
    }
}
