using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using NodaTime;
using Slice = HairClinic.Web.Features.Wear.OfferSlots;

namespace HairClinic.Web.Tests.Features.Wear.OfferSlots;

public sealed class OfferSlotsTests(PgServer server)
{
    private Client _client = null!;
    private Person _desk = null!;
    private Salon _salon = null!;
    private Salon _elsewhere = null!;

    [Fact]
    public async Task Three_times_near_the_due_day_are_offered_and_a_taken_one_is_not_among_them()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var offers = await OfferAsync(clinic, _salon);

        Assert.Equal(3, offers.Count);
        // Due on Friday 12 February; the only chair is taken that day from nine to half past ten.
        Assert.All(offers, o => Assert.InRange(Period.DaysBetween(new LocalDate(2027, 2, 12), o.At.Date), -7, 7));
        Assert.DoesNotContain(offers, o => o.At.Date == new LocalDate(2027, 2, 12) && o.At.TimeOfDay < new LocalTime(10, 30));
        Assert.Contains(offers, o => o.At.Date == new LocalDate(2027, 2, 12));
    }

    [Fact]
    public async Task Somebody_of_another_salon_is_offered_nothing_for_them()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        Assert.Empty(await OfferAsync(clinic, _elsewhere));
    }

    private void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        _elsewhere = scene.OpenSalon("Far Side", "Europe/London", "GBP", chairs: 1);
        _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon, _elsewhere);
        var stylist = scene.Hire("Stylist", StaffRole.Stylist, _salon);
        var adhesive = scene.AddProduct("Adhesive under test", ProductKind.Adhesive, "water-based acrylic", "L1");
        var kind = scene.AddUnitKind("Lace under test", "French lace", "Workshop under test");
        _client = scene.AddClient("C-1", "Ada Fenwick", _salon);
        scene.AddBond(_client, scene.AddUnit(_client, kind, new LocalDate(2027, 1, 5)), new LocalDate(2027, 1, 20), adhesive);
        var other = scene.AddClient("C-2", "Bo Larch", _salon);
        scene.Book(other, scene.ServiceWithPurpose(ServicePurpose.Rebond), scene.Chairs[0], stylist, Instant.FromUtc(2027, 2, 12, 9, 0));
    }

    private Task<IReadOnlyList<Slice.Offer>> OfferAsync(TestClinic clinic, Salon at) =>
        clinic.UseAsync<Slice, IReadOnlyList<Slice.Offer>>(
            clinic.Acting(_desk, at),
            slice => slice.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );
}
