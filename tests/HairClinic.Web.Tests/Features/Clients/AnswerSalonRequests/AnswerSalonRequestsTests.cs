using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.AnswerSalonRequests;

namespace HairClinic.Web.Tests.Features.Clients.AnswerSalonRequests;

public sealed class AnswerSalonRequestsTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    public async Task The_home_salon_answers_and_the_other_sees_the_client_or_not(bool yes, int seen)
    {
        await using var clinic = await OpenClinicAsync();
        var row = Assert.Single(await OpenAsync(clinic, clinic.Acting(_given.Desk, _given.Here)));
        Assert.Equal(("Ada Fenwick", "Quay", "Stands here"), (row.Client, row.Salon, row.Because));

        await AnswerAsync(clinic, clinic.Acting(_given.Desk, _given.Here), row.RequestId, yes);

        Assert.Equal(
            seen,
            await clinic.UseAsync<ClinicDbFactory, int>(
                clinic.Acting(_given.DeskThere, _given.There),
                async databases =>
                {
                    await using var db = databases.Open();
                    return await db.Clients.CountAsync(TestContext.Current.CancellationToken);
                }
            )
        );
        Assert.Equal(
            seen,
            await clinic.ReadAsync(db =>
                db.AccessNotes.CountAsync(
                    n => n.Action == AccessAction.GrantedSalon && n.ClientId == _client.Id && n.SubjectId == _given.There.Id,
                    TestContext.Current.CancellationToken
                )
            )
        );
        Assert.Empty(await OpenAsync(clinic, clinic.Acting(_given.Desk, _given.Here)));
        await Refused.SayingAsync(
            "Somebody has answered this already.",
            () => AnswerAsync(clinic, clinic.Acting(_given.Desk, _given.Here), row.RequestId, yes)
        );
    }

    [Fact]
    public async Task Whoever_asks_cannot_answer_nor_see_who_it_is()
    {
        await using var clinic = await OpenClinicAsync();
        var row = Assert.Single(await OpenAsync(clinic, clinic.Acting(_given.Desk, _given.Here)));
        var asking = clinic.Acting(_given.DeskThere, _given.There);

        Assert.Empty(await OpenAsync(clinic, asking));
        await Refused.SayingAsync("This is not there any more.", () => AnswerAsync(clinic, asking, row.RequestId, true));
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here);
                g.Scene.Db.ClientRequests.Add(
                    new ClientRequest(Guid.CreateVersion7(), _client.Id, g.There.Id, g.DeskThere.Id, g.Scene.Now, "Stands here")
                );
            })
        );

    private static Task<IReadOnlyList<Slice.Row>> OpenAsync(TestClinic clinic, PersonActor by) =>
        clinic.UseAsync<Slice, IReadOnlyList<Slice.Row>>(by, s => s.OpenAsync(TestContext.Current.CancellationToken));

    private static Task<Slice.Outcome> AnswerAsync(TestClinic clinic, PersonActor by, Guid requestId, bool yes) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            by,
            s => s.SaveAsync(Guid.CreateVersion7(), new(requestId, yes), TestContext.Current.CancellationToken)
        );
}
