using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>One practice from its truths to the tally: what its book holds today, what is believed, and what then comes.</summary>
internal sealed class PracticeStory(int seed, LifeDistribution truly, int mostClients = 200)
{
    private const int PreparationDays = 14;
    private static readonly LocalDate Today = new(2027, 3, 1);
    private readonly Dice _dice = new(seed);
    private readonly Tally _tally = new();

    public Tally Play()
    {
        var clients = _dice.Whole(Math.Min(60, mostClients), mostClients);
        PlayHolds(clients);
        PlayLives(clients);
        return _tally;
    }

    private void PlayHolds(int clients)
    {
        var truth = new LifeTruth(_dice, truly, HoldStory.Priors);
        var (stories, seen) = (new List<HoldStory>(), new List<Seen>());
        for (var client = 0; client < clients; client++)
        {
            var story = new HoldStory(_dice, truth, client);
            // One client in ten is new: nothing of theirs was seen.
            if (!_dice.Chance(0.1))
                seen.AddRange([.. story.Earlier(_dice.Whole(1, 6)), story.OnTheHead()]);
            stories.Add(story);
        }
        var (belief, naive) = (new Belief(seen, HoldStory.Names, HoldStory.Priors), new NaiveRule(seen));
        var knowing = belief.Knowing(truth);
        var own = seen.CountBy(row => row.Client).ToDictionary();
        for (var client = 0; client < clients; client++)
        {
            var (covariates, days) = stories[client].Next();
            var history = own.GetValueOrDefault(client);
            Judge("hold", history, days, belief.Next(client, stories[client].Window, covariates).Band);
            Judge("knowing hold", history, days, knowing.Next(client, stories[client].Window, covariates).Band);
            Judge("naive hold", history, days, naive.Band(client, stories[client].Window));
        }
    }

    private void PlayLives(int clients)
    {
        var truth = new LifeTruth(_dice, truly, UnitStory.Priors);
        var workshops = WorkshopStory.Two(_dice, Today);
        var seen = new List<Seen>();
        var heads = Enumerable.Range(0, clients).Select(client => Head(client, truth, workshops, seen)).ToList();
        var (belief, naive) = (new Belief(seen, UnitStory.Names, UnitStory.Priors), new NaiveRule(seen));
        var knowing = belief.Knowing(truth);
        var lead = workshops.ToDictionary(workshop => workshop, workshop => workshop.Believed());
        var rule = new ReorderRule();
        for (var client = 0; client < clients; client++)
        {
            var (head, running) = (heads[client], heads[client].InHand[0]);
            var left = running.Life - running.WornDays;
            var (from, to) = naive.Band(client, running.Window);
            var band = Band(belief);
            Judge("life", head.Earlier, left, band);
            if (running.Covariates[^1] == 1)
                _tally.Count("repaired", left >= band.From && left <= band.To);
            Judge("knowing life", head.Earlier, left, Band(knowing));
            Judge("naive life", head.Earlier, left, (from - running.WornDays, to - running.WornDays));
            Order(head, client, belief, naive, lead[head.Workshop], rule);

            (double From, double To) Band(Belief who)
            {
                var prediction = who.Running(client, running);
                return (prediction.RemainingQuantile(running.WornDays, 0.1), prediction.RemainingQuantile(running.WornDays, 0.9));
            }
        }
    }

    private OneHead Head(int client, LifeTruth truth, WorkshopStory[] workshops, List<Seen> seen)
    {
        var workshop = _dice.Of(workshops);
        var story = new UnitStory(_dice, truth, client, workshop != workshops[0]);
        var own = new List<Seen>(story.Earlier(_dice.Whole(0, 4)));
        var inHand = new List<LivingUnit> { story.InService(170, own) };
        if (_dice.Chance(0.35))
            inHand.Add(story.InService(40, own));
        var isOrdered = _dice.Chance(0.1) && workshop.IsUnderWay(_dice.Whole(1, 80));
        seen.AddRange(own);
        return new OneHead(workshop, inHand, isOrdered ? story.Ordered() : null, own.Count(row => row.IsOver));
    }

    private void Order(OneHead head, int client, Belief belief, NaiveRule naive, LeadTimeTable lead, ReorderRule rule)
    {
        var question = new ReorderInput(
            LifeDistribution.Weibull,
            belief.Nodes(client),
            [.. head.InHand.Select(belief.InHand)],
            head.Ordered is { } ordered ? [new UnitOnOrder(belief.InHand(ordered), lead, head.Workshop.Days)] : [],
            lead,
            head.Workshop.Days,
            PreparationDays
        );
        var days = rule.Answer(question).ReorderInDays;
        _tally.Count("past", days is null);
        if (days is not { } day)
            return;
        Count("gap", head.Earlier, head.Hair < head.Workshop.Arrives(day) + PreparationDays);
        var expected = head.All.Sum(unit => Math.Max(0, naive.Average(client, unit.Window) - unit.WornDays));
        var naiveDay = (int)Math.Clamp(expected - head.Workshop.MeanLead - PreparationDays, 0, 900);
        Count("naive gap", head.Earlier, head.Hair < head.Workshop.Arrives(naiveDay) + PreparationDays);
    }

    private void Judge(string line, int history, double days, (double From, double To) band)
    {
        Count(line, history, days >= band.From && days <= band.To);
        Count($"{line} short", history, days < band.From);
    }

    private void Count(string line, int history, bool hit)
    {
        _tally.Count(line, hit);
        _tally.Count($"{line}, {Tally.Histories[Math.Min(2, (history + 1) / 2)]}", hit);
    }

    /// <param name="Earlier">Units that are over.</param>
    private sealed record OneHead(WorkshopStory Workshop, List<LivingUnit> InHand, LivingUnit? Ordered, int Earlier)
    {
        public IEnumerable<LivingUnit> All => Ordered is null ? InHand : InHand.Append(Ordered);

        /// <summary>Days that all hair, in house and in flight, truly lasts from today.</summary>
        public double Hair => All.Sum(unit => unit.Life - unit.WornDays);
    }
}
