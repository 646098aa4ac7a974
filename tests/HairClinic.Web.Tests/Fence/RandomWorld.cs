using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using NodaTime;

namespace HairClinic.Web.Tests.Fence;

/// <summary>
/// Two practices of three salons, with grants that run, have lapsed, are to come and were taken back, and visits past, lapsed, ahead and
/// called off. Who may see and change whom is worked out here from what was laid, not asked of the fence.
/// </summary>
internal sealed record RandomWorld(List<RandomWorld.Asking> Actors, List<Guid> Everybody)
{
    private const int Many = 30;

    /// <param name="Allowed">Clients they may open.</param>
    /// <param name="Hosted">Clients whose visits stand in their own diary.</param>
    /// <param name="AtHome">Clients who are theirs to move, fold and erase.</param>
    /// <param name="Salons">Salons they work in.</param>
    public sealed record Asking(
        Actor Actor,
        HashSet<Guid> Allowed,
        HashSet<Guid> Hosted,
        HashSet<Guid> AtHome,
        HashSet<Guid> Salons,
        Practice Practice
    );

    public sealed record Practice(Guid Id, List<Client> Clients, List<Salon> Salons, Guid Service, Guid Somebody);

    private sealed record Visited(Client Client, Salon Salon, Person Person, bool Opens);

    public static async Task<RandomWorld> LayAsync(PgServer server, Random random)
    {
        var world = new RandomWorld([], []);
        for (var p = 0; p < 2; p++)
            await LayPracticeAsync(world, server, random);
        return world;
    }

    private static async Task LayPracticeAsync(RandomWorld world, PgServer server, Random random)
    {
        List<Salon> salons = [];
        List<Client> clients = [];
        List<Person> people = [];
        List<Visited> visits = [];
        var granted = new List<(Client Client, Salon Salon)>();
        var service = Guid.Empty;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice");
                service = scene.Services[0].Id;
                for (var s = 0; s < 3; s++)
                    salons.Add(scene.OpenSalon($"Salon {s}", "Europe/London", "GBP", chairs: 1));
                foreach (var role in Enum.GetValues<StaffRole>())
                {
                    people.Add(scene.Hire($"{role} one", role, salons[0]));
                    people.Add(scene.Hire($"{role} two", role, salons[1], salons[2]));
                }
                for (var c = 0; c < Many; c++)
                    clients.Add(scene.AddClient($"C-{c}", $"Client {c}", salons[random.Next(3)]));
                foreach (var client in clients)
                    client.AddLifeEvent(
                        new LifeEvent(Guid.CreateVersion7(), client.Id, LifeEventKind.Other, new(2027, 3, 1), new(2027, 3, 2), away: false)
                    );
                for (var v = 0; v < 32; v++)
                    visits.Add(Visit(scene, v, clients[random.Next(Many)], salons[random.Next(3)], people[random.Next(people.Count)]));
                for (var g = 0; g < 12; g++)
                    if (Grant(scene, g, clients[random.Next(Many)], salons[random.Next(3)], people[0]) is { } open)
                        granted.Add(open);
            }
        );
        world.Everybody.AddRange(clients.Select(c => c.Id));
        var practice = new Practice(clinic.PracticeId, clients, salons, service, people[0].Id);
        foreach (var person in people)
        {
            Salon[] own = person.Name.EndsWith("one", StringComparison.Ordinal) ? [salons[0]] : [salons[1], salons[2]];
            var hosted =
                person.Role == StaffRole.Trainee ? visits.Where(v => v.Person == person) : visits.Where(v => own.Contains(v.Salon));
            world.Actors.Add(
                new(
                    clinic.Acting(person, own),
                    [.. clients.Where(c => Opens(person, own, c, visits, granted)).Select(c => c.Id)],
                    [.. hosted.Select(v => v.Client.Id)],
                    [.. clients.Where(c => IsAtHome(person, own, c)).Select(c => c.Id)],
                    [.. own.Select(s => s.Id)],
                    practice
                )
            );
        }
        world.Actors.AddRange(
            clients.Take(5).Select(c => new Asking(new ClientActor(clinic.PracticeId, c.Id), [c.Id], [], [], [], practice))
        );
    }

    // One after another, so that no chair or hand is taken twice.
    private static Visited Visit(Scene scene, int number, Client client, Salon salon, Person person)
    {
        var days = (number % 4) switch
        {
            0 => -5,
            1 => -200,
            2 => 5,
            _ => -6,
        };
        var visit = scene.Book(
            client,
            scene.Services[0],
            scene.Chairs.Single(c => c.SalonId == salon.Id),
            person,
            scene.Now + Duration.FromDays(days) - Duration.FromHours(3 * number)
        );
        // What is long past grants nothing any more, and neither does what was called off.
        if (number % 4 == 3)
            visit.ImportState(VisitState.Cancelled, $"called off {number}", salon.DayOf(scene.Now));
        return new(client, salon, person, number % 4 is 0 or 2);
    }

    private static (Client, Salon)? Grant(Scene scene, int number, Client client, Salon salon, Person by)
    {
        var day = Duration.FromDays(1);
        var (from, until) = (number % 4) switch
        {
            0 => (scene.Now - 20 * day, scene.Now - 10 * day),
            1 => (scene.Now + 2 * day, scene.Now + 20 * day),
            _ => (scene.Now - day, scene.Now + 10 * day),
        };
        var grant = new ClientGrant(Guid.CreateVersion7(), client.Id, salon.Id, from, until, by.Id, "Holiday");
        if (number % 4 == 3)
            grant.TakeBack(scene.Now);
        scene.Db.ClientGrants.Add(grant);
        return number % 4 == 2 ? (client, salon) : null;
    }

    private static bool IsAtHome(Person person, Salon[] own, Client client) =>
        person.Role == StaffRole.Owner || person.Role != StaffRole.Trainee && own.Any(s => s.Id == client.HomeSalonId);

    private static bool Opens(
        Person person,
        Salon[] own,
        Client client,
        List<Visited> visits,
        List<(Client Client, Salon Salon)> granted
    ) =>
        person.Role == StaffRole.Trainee
            ? visits.Any(v => v.Opens && v.Person == person && v.Client == client)
            : IsAtHome(person, own, client)
                || visits.Any(v => v.Opens && v.Client == client && own.Contains(v.Salon))
                || granted.Any(g => g.Client == client && own.Contains(g.Salon));
}
