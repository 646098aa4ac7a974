using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.TransferClient;

namespace HairClinic.Web.Tests.Features.Clients.TransferClient;

public sealed class TransferClientTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Fact]
    public async Task The_new_salon_sees_them_at_once_and_the_old_one_until_the_day_it_named()
    {
        await using var clinic = await OpenClinicAsync();

        var screen = (await OpenAsync(clinic))!;
        await SaveAsync(clinic, screen.Begin with { SalonId = _given.There.Id, KeepUntil = _given.Today.PlusDays(5) });

        Assert.Equal(
            [(AccessAction.Transferred, _given.There.Id), (AccessAction.GrantedSalon, _given.Here.Id)],
            await clinic.ReadAsync(async db =>
                (
                    await db
                        .AccessNotes.Where(n => n.ClientId == _client.Id)
                        .OrderBy(n => n.Number)
                        .ToListAsync(TestContext.Current.CancellationToken)
                ).ConvertAll(n => (n.Action, n.SubjectId!.Value))
            )
        );
        Assert.Equal(1, await SeenAsync(clinic, clinic.Acting(_given.DeskThere, _given.There)));
        Assert.Equal(1, await SeenAsync(clinic, clinic.Acting(_given.Desk, _given.Here)));
        clinic.Clock.Advance(Duration.FromDays(7));
        Assert.Equal(0, await SeenAsync(clinic, clinic.Acting(_given.Desk, _given.Here)));
        Assert.Null(await OpenAsync(clinic));
    }

    [Fact]
    public async Task Without_a_day_the_old_salon_sees_them_no_more()
    {
        await using var clinic = await OpenClinicAsync();

        var screen = (await OpenAsync(clinic))!;
        await SaveAsync(clinic, screen.Begin with { SalonId = _given.There.Id, KeepUntil = null });

        Assert.Equal(0, await SeenAsync(clinic, clinic.Acting(_given.Desk, _given.Here)));
    }

    [Fact]
    public async Task Whoever_sees_them_as_a_guest_cannot_take_them_away()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => g.LetIn(_client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here)))
        );
        var begin = (await OpenAsync(clinic))!.Begin;

        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    clinic.Acting(_given.DeskThere, _given.There),
                    s =>
                        s.SaveAsync(
                            Guid.CreateVersion7(),
                            begin with
                            {
                                SalonId = _given.There.Id,
                                KeepUntil = null,
                            },
                            TestContext.Current.CancellationToken
                        )
                )
        );
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(server, _given.Laying(g => _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here)));

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

    private static Task<int> SeenAsync(TestClinic clinic, PersonActor person) =>
        clinic.UseAsync<ClinicDbFactory, int>(
            person,
            async databases =>
            {
                await using var db = databases.Open();
                return await db.Clients.CountAsync(TestContext.Current.CancellationToken);
            }
        );
}
