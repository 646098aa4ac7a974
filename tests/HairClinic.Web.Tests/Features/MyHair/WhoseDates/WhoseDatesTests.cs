using HairClinic.Domain.Clients;
using HairClinic.Web.Accounts;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.WhoseDates;

namespace HairClinic.Web.Tests.Features.MyHair.WhoseDates;

public sealed class WhoseDatesTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task A_parent_turns_to_the_childs_page_and_to_nobody_elses()
    {
        await using var clinic = await OpenAsync(endsOn: null);
        var (parent, signIns) = await SignInAsync(clinic);

        var choices = await ChoicesAsync(clinic, parent);

        Assert.Equal([("Ada Fenwick", true), ("Bo Larch", false)], choices.Select(c => (c.Name, c.Shown)));
        var child = await clinic.UseAsync<Slice, ActiveClientSignIn?>(parent, slice => slice.SaveAsync(choices[1].Key, Cancel));
        Assert.Equal(_own.Other.Id, child!.Actor.ClientId);
        Assert.Equal(child, await signIns.CheckAsync(child.Actor, Cancel));
        Assert.Null(await clinic.UseAsync<Slice, ActiveClientSignIn?>(parent, slice => slice.SaveAsync("0123456789abcdef", Cancel)));
        Assert.Null(await clinic.UseAsync<Slice, ActiveClientSignIn?>(parent, slice => slice.SaveAsync(_own.Other.Id.ToString(), Cancel)));
    }

    [Fact]
    public async Task The_day_after_a_guardianship_ends_the_childs_page_is_closed_to_the_device_that_shows_it()
    {
        await using var clinic = await OpenAsync(new LocalDate(2027, 2, 3));
        var (parent, signIns) = await SignInAsync(clinic);
        var choices = await ChoicesAsync(clinic, parent);
        var child = await clinic.UseAsync<Slice, ActiveClientSignIn?>(parent, slice => slice.SaveAsync(choices[1].Key, Cancel));

        clinic.Clock.Advance(Duration.FromDays(1));

        Assert.Null(await signIns.CheckAsync(child!.Actor, Cancel));
    }

    [Fact]
    public async Task A_folded_records_sign_in_leads_to_the_record_that_was_kept_and_one_of_somebody_who_left_leads_nowhere()
    {
        // The same address is confirmed at both: of the child's record they are the guardian.
        await using var clinic = await OpenAsync(endsOn: null);
        var (parent, signIns) = await SignInAsync(clinic);
        await FoldAsync(clinic);

        Assert.Equal(
            new ActiveClientSignIn(parent with { ClientId = _own.Other.Id }, false, true),
            await signIns.CheckAsync(parent, Cancel)
        );

        await clinic.ReadAsync(async db =>
        {
            (await db.Clients.SingleAsync(c => c.Id == _own.Other.Id, Cancel)).Leave(new LocalDate(2027, 2, 3));
            return await db.SaveChangesAsync(Cancel);
        });
        Assert.Null(await signIns.CheckAsync(parent, Cancel));
    }

    [Fact]
    public async Task A_folded_records_sign_in_ends_where_the_kept_record_has_another_address()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                _own.Lay(scene);
                _own.Other.SetContact(null, $"kept-{_own.Address}");
            }
        );
        var (somebody, signIns) = await SignInAsync(clinic);

        await FoldAsync(clinic);

        Assert.Null(await signIns.CheckAsync(somebody, Cancel));
        Assert.Null(await signIns.OpenAsync(clinic.PracticeId, _own.Other.Id, _own.Address, invitation: false, Cancel));
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<TestClinic> OpenAsync(LocalDate? endsOn) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _own.Lay(scene);
                scene.Db.Guardians.Add(
                    new Guardian(Guid.CreateVersion7(), _own.Other.Id, "Ada Fenwick", _own.Address.ToUpperInvariant(), endsOn)
                );
            }
        );

    private async Task<(ClientActor, ClientSessionStore)> SignInAsync(TestClinic clinic)
    {
        var signIns = await clinic.AsAsync(clinic.Job, s => Task.FromResult(s.GetRequiredService<ClientSessionStore>()));
        var opened = await signIns.OpenAsync(clinic.PracticeId, _own.Client.Id, _own.Address, invitation: false, Cancel);
        return (opened!.Actor, signIns);
    }

    private Task<int> FoldAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var folded = await db.Clients.SingleAsync(c => c.Id == _own.Client.Id, Cancel);
            folded.MergeInto(await db.Clients.SingleAsync(c => c.Id == _own.Other.Id, Cancel));
            return await db.SaveChangesAsync(Cancel);
        });

    private static Task<IReadOnlyList<Slice.Choice>> ChoicesAsync(TestClinic clinic, ClientActor actor) =>
        clinic.UseAsync<Slice, IReadOnlyList<Slice.Choice>>(actor, slice => slice.OpenAsync(Cancel));
}
