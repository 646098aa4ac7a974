using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Watch;

/// <summary>A practice day by day: units are bonded, looked at whenever a bond comes off, found worn out, and ordered ahead by a plain 5 % rule.</summary>
internal sealed class StoryPractice
{
    private const int Preparation = 14;
    private const double SecondWorkshop = 0.35;
    private const double LeadHalf = 56;
    private const double LeadSpread = 0.2485;
    private const double Chance = 1.645;
    private readonly Dice _dice;
    private readonly WatchTruth _truth;
    private readonly WatchWorld _world;
    private readonly List<Head> _heads = [];

    public StoryPractice(WatchWorld world, int seed)
    {
        (_world, _dice) = (world, new Dice(seed));
        _truth = new WatchTruth(_dice, world);
        var factor = WindowPrior.ForAnyWindow(LifeDistribution.Weibull).ClientFactor;
        for (var i = 0; i < world.Clients; i++)
            _heads.Add(Begin(new StoryClient(i, _dice.Chance(world.ThinShare), _dice.Chance(SecondWorkshop) ? 1 : 0, factor * _dice.Normal())));
    }

    /// <summary>In the order of their delivery.</summary>
    public List<StoryUnit> Units { get; } = [];

    /// <param name="outlook">Of a kind of client: what is to be expected of the rest of a unit of some age.</param>
    public void Live(int today, Func<StoryClient, int, (double Mean, double Variance)> outlook)
    {
        foreach (var head in _heads)
        {
            Receive(head, today);
            Wear(head, today);
            if ((today + head.Client.Number) % 7 == 0)
                Order(head, today, outlook);
        }
    }

    // Clients came within a third of a life before day 0; those of the thin base with two spares, without which nobody could keep them in hair.
    private Head Begin(StoryClient client)
    {
        var first = -(int)(client.Window.High / 3.6 * _dice.Share());
        var head = new Head(client);
        for (var units = client.IsThin ? 3 : _dice.Chance(0.1) ? 2 : 1; units > 0; units--)
        {
            var unit = new StoryUnit(client, first - Preparation, _truth.Life(_dice, client, int.MinValue));
            Units.Add(unit);
            head.Spares.Enqueue(unit);
        }
        for (var day = first; day < 0; day++)
            Wear(head, day);
        return head;
    }

    // Take-downs follow the hold: four to eight weeks under lace, one to two under a thin base.
    private int Rhythm(StoryClient client) => client.IsThin ? _dice.Whole(7, 10) : _dice.Whole(28, 38);

    private void Receive(Head head, int today)
    {
        foreach (var _ in head.Arrivals.Where(day => day == today))
        {
            var unit = new StoryUnit(head.Client, today, _truth.Life(_dice, head.Client, today));
            Units.Add(unit);
            head.Spares.Enqueue(unit);
        }
        head.Arrivals.RemoveAll(day => day == today);
    }

    private void Wear(Head head, int today)
    {
        var isReady = head.Spares.TryPeek(out var spare) && spare.DeliveredOn + Preparation <= today;
        if (head.Worn is { EndedOn: null } worn && today - worn.BondedOn >= worn.Life)
            (worn.EndedOn, worn.LeftGap) = (today, !isReady);
        if (head.Worn is { } seen && today >= head.NextVisit)
        {
            head.NextVisit = today + Rhythm(head.Client);
            if (seen.EndedOn is null)
            {
                seen.SoundOn.Add(today);
                return;
            }
            seen.FoundWornOutOn = today;
            head.Worn = null;
        }
        if (head.Worn is not null || !isReady)
            return;
        head.Worn = head.Spares.Dequeue();
        head.Worn.BondedOn = today;
        head.NextVisit = today + Rhythm(head.Client);
    }

    private void Order(Head head, int today, Func<StoryClient, int, (double Mean, double Variance)> outlook)
    {
        while (true)
        {
            var (mean, variance) = head.Worn is { } worn ? outlook(head.Client, today - worn.BondedOn!.Value) : (0, 0);
            var fresh = outlook(head.Client, 0);
            var waiting = head.Spares.Count + head.Arrivals.Count;
            (mean, variance) = (mean + waiting * fresh.Mean, variance + waiting * fresh.Variance);
            var lead = LeadHalf * Math.Exp(LeadSpread * LeadSpread / 2);
            var need = lead + Preparation + Chance * Math.Sqrt(variance + lead * lead * (Math.Exp(LeadSpread * LeadSpread) - 1));
            if (mean > need)
                return;
            head.Arrivals.Add(today + Math.Max(1, (int)Math.Round(LeadHalf * Math.Exp(LeadSpread * _dice.Normal()))));
            if (waiting > 3)
                return;
        }
    }

    private sealed class Head(StoryClient client)
    {
        public StoryClient Client { get; } = client;

        public StoryUnit? Worn { get; set; }

        public int NextVisit { get; set; }

        public Queue<StoryUnit> Spares { get; } = [];

        public List<int> Arrivals { get; } = [];
    }
}
