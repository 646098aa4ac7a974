using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Features.Binder;

namespace HairClinic.Web.Demo;

/// <summary>Two years of the invented practice, drawn from <see cref="DemoParameters"/>: the same for the same day, wherever it is drawn.</summary>
public sealed class DemoHistory
{
    // Of a dozen parameters one is outside its 95 % band in about half of all histories; on the example's day none is in this one.
    private const int Seed = 20_243;

    private DemoHistory(LocalDate today, IReadOnlyList<ClientRow> clients, IReadOnlyList<DemoClientSimulation> lives) =>
        (Today, Clients, Lives) = (today, clients, lives);

    public LocalDate Today { get; }

    public IReadOnlyList<ClientRow> Clients { get; }

    public IReadOnlyList<DemoClientSimulation> Lives { get; }

    /// <param name="declining">One of the workshops gets worse in the last year, as the demo shows it.</param>
    public static DemoHistory Generate(LocalDate today, int seed = Seed, bool declining = false)
    {
        var random = new Random(seed);
        var diary = new DemoSlotAllocator(random, today);
        var closures = DemoParameters.WorkshopClosures(today);
        LocalDate? declinesFrom = declining ? today.PlusDays(-DemoParameters.AlderDeclinedBeforeDays) : null;
        var (number, serial) = (0, 0);
        var clients = new List<ClientRow>();
        var lives = new List<DemoClientSimulation>();
        foreach (var salon in DemoPractice.Salons)
        {
            for (var i = 0; i < salon.Clients; i++)
            {
                var client = DemoClient.Invent(++number, salon, random, today);
                var drawer = new DemoUnitSupply(client, random, closures, () => $"U-{++serial:0000}", declinesFrom);
                var life = new DemoClientSimulation(client, diary, drawer, random, today);
                life.Generate();
                clients.Add(client.ToBinderRow(random));
                lives.Add(life);
            }
        }
        return new DemoHistory(today, clients, lives);
    }
}
