using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Tests.Features.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Data.Books;

/// <summary>Random days of random services: what the search proposes the database takes, and what it does not, the database refuses.</summary>
public sealed class SearchAndDatabaseTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task A_start_is_free_for_the_search_exactly_when_the_database_takes_it(int seed)
    {
        var random = new Random(seed);
        List<ServiceKind> services = [];
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                services = [.. Enumerable.Range(1, 4).Select(i => Service(random, i))];
                s.Db.AddRange(services);
                foreach (var person in new[] { _scene.Mara, _scene.Ivo })
                    person.SetSkills([.. services.Select(k => (Guid.CreateVersion7(), k.Id))]);
            }
        );
        Client[] clients = [_scene.Ada, _scene.Bo];
        Person[] people = [_scene.Mara, _scene.Ivo];
        // Whatever of these overlaps is not there in the end.
        for (var i = 0; i < 14; i++)
            await TakesAsync(clinic, Pick(services), Pick(clients), random.Next(2), Pick(people), Quarter(random.Next(36)), keep: true);
        var (taken, refused) = (0, 0);
        foreach (var service in services.Take(2))
        {
            var (client, person, chair) = (Pick(clients), Pick(people), random.Next(2));
            var free = await FreeAsync(clinic, service, client, chair, person);
            for (var start = Quarter(0); start + Duration.FromMinutes(service.Minutes) <= Quarter(36); start += Duration.FromMinutes(15))
            {
                var takes = await TakesAsync(clinic, service, client, chair, person, start, keep: false);
                Assert.True(takes == free.Contains(start), $"{start} {service.Name}: the database takes it: {takes}");
                (taken, refused) = takes ? (taken + 1, refused) : (taken, refused + 1);
            }
        }
        Assert.True(taken > 0 && refused > 0, $"{taken} taken, {refused} refused: nothing was shown");

        T Pick<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
    }

    // Every kind of step, waits too short to be used among them.
    private static ServiceKind Service(Random random, int number)
    {
        var service = new ServiceKind(Guid.CreateVersion7(), $"Service {number}", ServicePurpose.Other);
        var kinds = Enum.GetValues<SegmentKind>();
        service.SetSteps([
            (Guid.CreateVersion7(), SegmentKind.HandsOn, 15),
            .. Enumerable.Range(0, random.Next(1, 4)).Select(_ => (Guid.CreateVersion7(), kinds[random.Next(3)], 5 * random.Next(1, 7))),
            (Guid.CreateVersion7(), SegmentKind.HandsOn, 10),
        ]);
        return service;
    }

    private Instant Quarter(int quarter) => _scene.At(Thursday, 9) + Duration.FromMinutes(15 * quarter);

    private Task<HashSet<Instant>> FreeAsync(TestClinic clinic, ServiceKind service, Client client, int chair, Person person) =>
        clinic.ReadAsync(async db =>
        {
            var day = new Interval(_scene.At(Thursday, 0), _scene.At(Thursday.PlusDays(1), 0));
            var book = await SlotFacts.LoadAsync(db, _scene.Salon.Id, day, client.Id, Cancel);
            ServiceSegment[] steps = [.. service.Steps.OrderBy(s => s.Position).Select(s => new ServiceSegment(s.Kind, s.Minutes))];
            var wish = new SlotCriteria(new ServiceTimeline(steps), service.Id, Quarter(0))
            {
                OnlyChair = _scene.Chairs[chair].Id,
                OnlyPerson = person.Id,
                Best = 100,
            };
            return book.Nearest(wish).Select(s => s.StartsAt).ToHashSet();
        });

    private Task<bool> TakesAsync(
        TestClinic clinic,
        ServiceKind service,
        Client client,
        int chair,
        Person person,
        Instant start,
        bool keep
    ) =>
        clinic.ReadAsync(async db =>
        {
            await using var transaction = await db.Database.BeginTransactionAsync(Cancel);
            var visit = new Visit(Guid.CreateVersion7(), client.Id, _scene.Salon.Id, service.Id);
            visit.PutAt(
                service,
                start,
                _scene.Chairs[chair].Id,
                person.Id,
                _scene.Salon,
                [.. service.Steps.Select(_ => Guid.CreateVersion7())]
            );
            db.Visits.Add(visit);
            try
            {
                await db.SaveChangesAsync(Cancel);
            }
            catch (DbUpdateException e) when (SlotSaveErrors.FindClash(e) is not null)
            {
                return false;
            }
            if (keep)
                await transaction.CommitAsync(Cancel);
            return true;
        });
}
