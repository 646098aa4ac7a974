using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Work;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.AddLifeEvent;

namespace HairClinic.Web.Tests.Features.Clients.AddLifeEvent;

public sealed class AddLifeEventTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Fact]
    public async Task An_event_is_noted_and_the_due_dates_are_worked_out_anew()
    {
        await using var clinic = await OpenClinicAsync();

        await SaveAsync(clinic, Input());

        var planned = Assert.Single((await OpenAsync(clinic))!.Coming);
        Assert.Equal(
            (LifeEventKind.Travel, _given.Today.PlusDays(10), _given.Today.PlusDays(10), true),
            (planned.Kind, planned.From, planned.To, planned.Away)
        );
        Assert.Equal([_client.Id], await RefreshedAsync(clinic));
    }

    [Fact]
    public async Task One_that_is_called_off_is_gone_and_calling_it_off_again_does_no_harm()
    {
        await using var clinic = await OpenClinicAsync();
        var noted = await SaveAsync(clinic, Input());

        await CallOffAsync(clinic, noted.EventId);
        await CallOffAsync(clinic, noted.EventId);

        Assert.Empty((await OpenAsync(clinic))!.Coming);
        Assert.Equal(2, (await RefreshedAsync(clinic)).Count);
    }

    [Fact]
    public async Task One_that_ends_before_it_begins_is_refused()
    {
        await using var clinic = await OpenClinicAsync();

        await Refused.SayingAsync("The event ends before it starts.", () => SaveAsync(clinic, Input() with { To = _given.Today }));
    }

    [Fact]
    public async Task Nobody_of_another_salon_can_add_one()
    {
        await using var clinic = await OpenClinicAsync();

        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    clinic.Acting(_given.DeskThere, _given.There),
                    s => s.SaveAsync(Guid.CreateVersion7(), Input(), TestContext.Current.CancellationToken)
                )
        );
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(server, _given.Laying(g => _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here)));

    private Slice.Input Input() =>
        new()
        {
            ClientId = _client.Id,
            Kind = LifeEventKind.Travel,
            From = _given.Today.PlusDays(10),
            Away = true,
        };

    private static Task<List<Guid?>> RefreshedAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (await db.WorkItems.ToListAsync(TestContext.Current.CancellationToken))
                .Select(w => WorkItemFactory.ReadBody<RefreshDueDatesBody>(w).ClientId)
                .ToList()
        );

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );

    private Task<Slice.Outcome> CallOffAsync(TestClinic clinic, Guid eventId) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.CallOffAsync(Guid.CreateVersion7(), new(_client.Id, eventId), TestContext.Current.CancellationToken)
        );
}
