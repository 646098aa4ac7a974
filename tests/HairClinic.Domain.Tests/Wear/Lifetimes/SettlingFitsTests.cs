using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Large books, and books whose bonds are all alike: the fit settles, and where it settles nothing near or far is likelier.</summary>
/// <remarks>What is likelier is said by <see cref="SimulatedBook"/>: sums over a dense grid, nothing of the program's.</remarks>
public sealed class SettlingFitsTests
{
    public static TheoryData<string> Books =>
        [
            "2,000 clients, whole days, s = -0.4, first",
            "2,000 clients, whole days, s = -0.4, second",
            "1,000 clients, s = -0.8",
            "400 clients, s = -1",
            "400 clients, s = +1",
            "nearly all sound at one day",
            "95 % at 28 days",
            "95 % at 28 days, three bonds each",
            "110 holds",
            "110 lives",
            "1,000 holds",
            "1,000 lives",
            "1,000 sound at 28 days",
            "1,000 sound at 90 days",
        ];

    [Theory]
    [MemberData(nameof(Books))]
    public void The_fit_settles_where_nothing_is_likelier(string name)
    {
        var book = Book(name);
        var fit = book.Fit();

        Assert.Null(fit.Missing);
        Assert.False(fit.EndsToTheDay);
        Assert.Equal(book.LogPosterior(fit.Coefficients[0], fit.LogScale), fit.LogPosterior, 1e-6);
        Assert.All([-4, -2.5, -1, 0, 1.5], s => Assert.True(book.Highest(s, -2, 3, 1e-2) <= fit.LogPosterior, $"likelier at s = {s}"));
        // Beside the answer it falls as the standard error says, to within the third order.
        var fall = 0.5 * Math.Pow(0.05 / fit.StdError(1), 2);
        foreach (var away in new[] { -0.05, 0.05 })
        {
            var beside = book.Highest(fit.LogScale + away, fit.Coefficients[0] - 0.1, fit.Coefficients[0] + 0.1, 1e-5);
            Assert.InRange(fit.LogPosterior - beside, 0.7 * fall, 1.4 * fall);
        }
    }

    // Unrounded, all clients differ: the integral is checked at the answer, and the answer against the program's own values elsewhere.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Three_thousand_clients_known_to_the_hour_settle(int seed)
    {
        var book = SimulatedBook.Draw(seed, 3000, 1, -0.4, takenDown: 32, wholeDays: false, intervals: 0);
        var fit = book.Fit();
        var target = new LogPosterior(LifeDistribution.Weibull, book.Rows, book.Priors);

        Assert.Null(fit.Missing);
        Assert.InRange(fit.LogScale, -0.4 - 3 * fit.StdError(1), -0.4 + 3 * fit.StdError(1));
        Assert.Equal(book.LogPosterior(fit.Coefficients[0], fit.LogScale), fit.LogPosterior, 1e-5);
        for (var s = -4.0; s <= 2; s += 1)
        {
            for (var centre = -1.0; centre <= 1; centre += 0.25)
                Assert.True(target.Evaluate([centre, s], new double[2], new double[4]) < fit.LogPosterior);
        }
    }

    public static TheoryData<bool, int, int> Ties =>
        new()
        {
            { true, 110, 2 },
            { true, 110, 5 },
            { false, 110, 2 },
            { true, 1000, 2 },
        };

    // Several ends of one client on the same day: the spread has no least size that times noted in whole days could tell.
    [Theory]
    [MemberData(nameof(Ties))]
    public void Ends_of_one_client_on_the_very_same_day_are_taken_as_known_to_the_day(bool holds, int clients, int each)
    {
        var (window, day) = holds ? (SimulatedBook.Holds, 28) : (SimulatedBook.Lives, 220);
        var book = SimulatedBook.AllAlike(window, clients, each, Spell.Exact(day));
        var toTheDay = book.ToTheDay();
        var fit = book.Fit();

        Assert.Null(fit.Missing);
        Assert.True(fit.EndsToTheDay);
        Assert.Contains(LifetimeFitNote.EndsToTheDay, fit.Notes);
        Assert.Equal(toTheDay.Fit().LogPosterior, fit.LogPosterior, 1e-9);
        Assert.Equal(toTheDay.LogPosterior(fit.Coefficients[0], fit.LogScale), fit.LogPosterior, 1e-6);
        // Such a client's next bond ends on that day, as far as δ is known; another's band is as wide as clients differ.
        var population = PopulationParameters.FromFit(fit);
        var own = LifetimeFitRows.Create(
            [.. Enumerable.Repeat(Spell.Exact(day), each)],
            [],
            [.. Enumerable.Repeat(window.Place, each)],
            new int[each]
        );
        var (from, to) = new LifePrediction(population, ClientEffectNodes.For(population, own), window.Place).Band;
        Assert.InRange(from, 0, day);
        Assert.True(to > day);
        Assert.InRange(Math.Log(to / from), 0, 2.6 * fit.StdError(0) * window.Width + 1.0 / day);
        (from, to) = new LifePrediction(population, ClientEffectNodes.For(population), window.Place).Band;
        Assert.InRange(Math.Log(to / from), 2.4 * window.ClientSpread, 2.8 * window.ClientSpread);
    }

    [Fact]
    public void Clients_taken_as_alike_with_ends_on_the_very_same_day_settle_too()
    {
        var rows = LifetimeFitRows.Create(
            [.. Enumerable.Repeat(Spell.Exact(28), 1000)],
            [],
            [.. Enumerable.Repeat(SimulatedBook.Holds.Place, 1000)]
        );
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, SimulatedBook.Holds.ToLifePriors([]));

        Assert.Null(fit.Missing);
        Assert.True(fit.EndsToTheDay);
    }

    [Fact]
    public void Two_groups_are_compared_with_their_ends_read_alike()
    {
        Spell[] spells = [.. Enumerable.Range(0, 240).Select(i => Spell.Exact(i < 120 ? 28 : 35))];
        var test = LikelihoodRatio.TestGroups(
            LifeDistribution.Weibull,
            spells,
            [.. spells.Select((_, i) => i / 120)],
            [],
            [.. spells.Select(_ => SimulatedBook.Holds.Place)],
            [.. spells.Select((_, i) => i / 2)],
            SimulatedBook.Holds.ToLifePriors([])
        );

        Assert.Null(test.Missing);
        // Without the groups each of 120 clients lies half the difference from the middle, in units of how clients differ; δ takes some of it.
        var expected = 120 * Math.Pow(Math.Log(35.0 / 28) / 2 / SimulatedBook.Holds.ClientSpread, 2);
        Assert.InRange(test.ChiSquare, 0.8 * expected, expected);
        Assert.Equal(Math.Log(35.0 / 28), test.Effects[1], 0.02);
    }

    private static SimulatedBook Book(string name) =>
        name switch
        {
            "2,000 clients, whole days, s = -0.4, first" => SimulatedBook.Draw(1, 2000, 1, -0.4, 32, true, 0.45),
            "2,000 clients, whole days, s = -0.4, second" => SimulatedBook.Draw(2, 2000, 1, -0.4, 32, true, 0.45),
            "1,000 clients, s = -0.8" => SimulatedBook.Draw(3, 1000, 1, -0.8, 32, true, 0.45),
            "400 clients, s = -1" => SimulatedBook.Draw(4, 400, 1, -1, 32, true, 0.45),
            "400 clients, s = +1" => SimulatedBook.Draw(5, 400, 1, 1, 32, true, 0.45),
            "nearly all sound at one day" => SimulatedBook.Draw(6, 2000, 1, -0.4, 24, true, 0.45),
            "95 % at 28 days" => SimulatedBook.NearlyAllAlike(7, 1000, 1),
            "95 % at 28 days, three bonds each" => SimulatedBook.NearlyAllAlike(8, 200, 3),
            "110 holds" => SimulatedBook.AllAlike(SimulatedBook.Holds, 110, 1, Spell.Exact(28)),
            "110 lives" => SimulatedBook.AllAlike(SimulatedBook.Lives, 110, 1, Spell.Exact(220)),
            "1,000 holds" => SimulatedBook.AllAlike(SimulatedBook.Holds, 1000, 1, Spell.Exact(28)),
            "1,000 lives" => SimulatedBook.AllAlike(SimulatedBook.Lives, 1000, 1, Spell.Exact(220)),
            "1,000 sound at 28 days" => SimulatedBook.AllAlike(SimulatedBook.Holds, 1000, 1, Spell.RightCensored(28)),
            _ => SimulatedBook.AllAlike(SimulatedBook.Holds, 1000, 1, Spell.RightCensored(90)),
        };
}
