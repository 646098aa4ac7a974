using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Features.Wear;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Tests.Ui;
using HairClinic.Web.Ui.Wear;
using NodaTime;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using DueSlice = HairClinic.Web.Features.Wear.Due;
using NextUnitSlice = HairClinic.Web.Features.Clients.NextUnit;
using OwnUnits = HairClinic.Web.Features.MyHair.MyUnits;
using RecalculateSlice = HairClinic.Web.Features.Outlook.Recalculate;
using WhatLastsSlice = HairClinic.Web.Features.Lasting.WhatLasts;

namespace HairClinic.Web.Tests.Learning;

/// <summary>The newest recalculation found no answer: what predicts says what it stands on, and why.</summary>
public sealed class StandsOnTests(PgServer server) : UiTestContext
{
    private const string OfLives =
        "What is predicted here stands on the records up to Sun 3 Jan 2027: the newest recalculation of how long units last found no answer. "
        + "There is no estimate: no row tells anything.";
    private const string OfHolds =
        "What is predicted here stands on the practice’s rows alone: the newest recalculation of how long bonds hold found no answer. "
        + "There is no estimate: no row tells anything.";

    private static readonly LocalDate Today = new(2027, 2, 3);
    private Client _client = null!;
    private ClientSignIn _signIn = null!;
    private Person _owner = null!;
    private Salon _salon = null!;

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_page_that_predicts_says_what_it_stands_on()
    {
        await using var clinic = await OpenAsync(unanswered: true);
        var owner = clinic.Acting(_owner, _salon);

        var next = await clinic.UseAsync<NextUnitSlice, NextUnitSlice.Screen?>(owner, s => s.OpenAsync(_client.Id, Cancel));
        var card = await clinic.UseAsync<CardSlice, CardSlice.Opened>(owner, s => s.OpenAsync(_client.Id, Cancel));
        var due = await clinic.UseAsync<DueSlice, DueSlice.Screen>(owner, s => s.OpenAsync(new(DuePart.AtRisk, true, null), Cancel));
        var ahead = await clinic.UseAsync<RecalculateSlice, RecalculateSlice.Screen>(owner, s => s.OpenAsync(Cancel));
        var cost = await LastingAsync(clinic, LastingSubject.Cost);
        var bonds = await clinic.ReadAsync(db => DueFacts.LoadAsync(db, Cancel));

        Assert.Equal(OfLives, Said(next!.Line!.Basis));
        Assert.Equal(OfLives, Said(card.Screen!.Line.Basis));
        Assert.Equal(OfLives, Said(due.Basis));
        Assert.Equal(OfHolds, Said(bonds.Basis));
        Assert.Equal([OfHolds, OfLives], ahead.Unanswered.Select(Said));
        Assert.Equal([OfHolds, OfLives], cost.Bases.Select(Said));
        Assert.Equal(new LocalDate(2027, 1, 3), (await LastingAsync(clinic, LastingSubject.Life)).Fit.ShownUpTo);
        Assert.Null((await LastingAsync(clinic, LastingSubject.Hold)).Fit.ShownUpTo);
    }

    [Fact]
    public async Task The_line_is_drawn_for_staff_with_the_reason_and_for_the_client_without()
    {
        await using var clinic = await OpenAsync(unanswered: true);
        var own = await clinic.UseAsync<OwnUnits, WearLineData?>(
            new ClientActor(clinic.PracticeId, _client.Id, _signIn.Id),
            s => s.OpenAsync(Cancel)
        );

        Assert.Equal(OfLives, Shown(own!, forClient: false));
        Assert.Equal("What is predicted here stands on what was known up to Sun 3 Jan.", Shown(own!, forClient: true));
    }

    [Fact]
    public async Task Nothing_is_said_while_the_newest_found_an_answer()
    {
        await using var clinic = await OpenAsync(unanswered: false);

        var card = await clinic.UseAsync<CardSlice, CardSlice.Opened>(clinic.Acting(_owner, _salon), s => s.OpenAsync(_client.Id, Cancel));
        var models = await clinic.ReadAsync(db => WearModelPair.LoadAsync(db, Cancel));

        Assert.Null(card.Screen!.Line.Basis);
        Assert.Empty(models.Bases);
        Assert.Empty(Render<StandsOn>(p => p.Add(s => s.Basis, null)).Markup.Trim());
    }

    private string Said(ModelBasis? basis) => Render<StandsOn>(p => p.Add(s => s.Basis, basis)).Find("p.note").TextContent;

    private string Shown(WearLineData line, bool forClient) =>
        Render<WearLine>(p => p.Add(l => l.Model, line).Add(l => l.ForClient, forClient)).Find("p.note").TextContent.Trim();

    private Task<WhatLastsSlice.Screen> LastingAsync(TestClinic clinic, LastingSubject of) =>
        clinic.UseAsync<WhatLastsSlice, WhatLastsSlice.Screen>(
            clinic.Acting(_owner, _salon),
            s => s.OpenAsync(new(of, LastingSide.Base), Cancel)
        );

    private async Task<TestClinic> OpenAsync(bool unanswered)
    {
        var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _owner = scene.Hire("Ola Test", StaffRole.Owner, _salon);
                var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                var kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                _client = scene.AddClient("c-1", "Una Test", _salon, email: "una@example.test");
                scene.Db.ClientSignIns.Add(_signIn = new ClientSignIn(Guid.NewGuid(), _client.Id, "una@example.test", scene.Now));
                scene.AddBond(_client, scene.AddUnit(_client, kind, Today.PlusDays(-31)), Today.PlusDays(-30), adhesive);
            }
        );
        await clinic.ReadAsync(db =>
        {
            db.StoredFits.Add(Fit(LifetimeKind.Life, [Spell.Exact(200), Spell.RightCensored(150)], new(2027, 1, 3)));
            if (unanswered)
            {
                db.StoredFits.Add(Fit(LifetimeKind.Life, [], new(2027, 2, 2)));
                db.StoredFits.Add(Fit(LifetimeKind.Hold, [], new(2027, 2, 2)));
            }
            return db.SaveChangesAsync(Cancel);
        });
        return clinic;
    }

    // Without priors no rows give no answer.
    private static StoredFit Fit(LifetimeKind quantity, Spell[] spells, LocalDate cut)
    {
        var window = WindowPrior.ForAnyWindow(LifeDistribution.Weibull);
        var rows = LifetimeFitRows.Create(spells, [], [.. spells.Select(_ => window.Place)], [.. spells.Select((_, i) => i)]);
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, spells.Length > 0 ? window.ToLifePriors([]) : LifePriors.Flat(0));
        return new(Guid.CreateVersion7(), quantity, fit, spells.Length, cut, cut.AtMidnight().InUtc().ToInstant());
    }
}
