using HairClinic.Domain.Clients;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Learning;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

/// <summary>What a bond in the book tells the engines.</summary>
public sealed class HoldFactsTests(PgServer server)
{
    private static readonly LocalDate On = new(2026, 9, 1);
    private Client _client = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_bond_that_nobody_spoke_of_any_more_held_until_its_window_closed_and_tells_nothing_of_later()
    {
        await using var clinic = await OpenAsync();

        Assert.Equal(Spell.RightCensored(56), (await SpellAsync(clinic, today: On.PlusDays(300))).Spell);
        Assert.Equal(Spell.RightCensored(40), (await SpellAsync(clinic, today: On.PlusDays(40))).Spell);
    }

    [Fact]
    public async Task Skin_and_sweat_that_were_known_when_it_was_made_bear_on_it_and_what_was_learnt_later_does_not()
    {
        await using var clinic = await OpenAsync();
        await clinic.ReadAsync(db =>
        {
            db.CareFacts.Add(
                new(Guid.CreateVersion7(), _client.Id, On.PlusDays(-1), new() { Skin = SkinOiliness.Normal, Sweat = Sweating.Heavy })
            );
            db.CareFacts.Add(
                new(Guid.CreateVersion7(), _client.Id, On.PlusDays(1), new() { Skin = SkinOiliness.Oily, Sweat = Sweating.Low })
            );
            return db.SaveChangesAsync(Cancel);
        });

        var columns = (await SpellAsync(clinic, today: On.PlusDays(40))).Columns;

        Assert.Contains(CovariateValue.For(KnownCovariate.HeavySweat), columns);
        Assert.DoesNotContain(CovariateValue.For(KnownCovariate.OilySkin), columns);
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                scene.HoldWindows[0].Edit(null, null, null, 4, 8);
                var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _client = scene.AddClient("c-1", "Una Test", salon);
                scene.AddBond(
                    _client,
                    scene.AddUnit(_client, scene.AddUnitKind("Everyday", "Silk top", "Workshop North"), On.PlusDays(-1)),
                    On,
                    adhesive
                );
            }
        );

    private Task<HoldSpell> SpellAsync(TestClinic clinic, LocalDate today) =>
        clinic.ReadAsync(async db =>
        {
            var dues = await DueFacts.LoadAsync(db, Cancel);
            var holds = await HoldFacts.LoadAsync(db, dues.Windows, [_client.Id], Cancel);
            return Assert.Single(holds.AllSpells(today));
        });
}
