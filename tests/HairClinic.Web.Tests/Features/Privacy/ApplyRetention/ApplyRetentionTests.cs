using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Privacy.ApplyRetention;

namespace HairClinic.Web.Tests.Features.Privacy.ApplyRetention;

public sealed class ApplyRetentionTests(PgServer server)
{
    private readonly PrivacyScene _scene = new();

    private static CancellationToken Cancel => PrivacyScene.Cancel;

    [Fact]
    public async Task Who_left_long_ago_is_listed_by_code_and_erased_when_confirmed()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await LeaveAsync(clinic);
        clinic.Clock.AdvanceDays(7 * 365);
        var screen = await OpenAsync(clinic);
        Assert.Equal(["Q-7719"], screen.Over.Codes);

        await SaveAsync(clinic, new(RetentionSubject.ClientsWhoLeft, screen.Over.Rows, screen.Over.Codes));

        Assert.Equal(
            "Erased client",
            await clinic.ReadAsync(db => db.Clients.Where(c => c.Id == _scene.Client.Id).Select(c => c.Name).SingleAsync(Cancel))
        );
        Assert.Empty((await OpenAsync(clinic)).Over.Codes);
    }

    [Fact]
    public async Task Nobody_is_erased_who_was_not_on_the_list()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await LeaveAsync(clinic);
        clinic.Clock.AdvanceDays(7 * 365);

        await Refused.SayingAsync(
            "More is past its time than was shown. Nothing was taken out; look at it again.",
            () => SaveAsync(clinic, new(RetentionSubject.ClientsWhoLeft, 1, ["Q-1"]))
        );

        Assert.Equal(
            _scene.Client.Name,
            await clinic.ReadAsync(db => db.Clients.Where(c => c.Id == _scene.Client.Id).Select(c => c.Name).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task A_manager_of_another_salon_sees_and_erases_nobody_of_this_one()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await LeaveAsync(clinic);
        clinic.Clock.AdvanceDays(7 * 365);
        var person = await clinic.ReadAsync(db => db.People.SingleAsync(p => p.Name == "Manager there", Cancel));
        var there = clinic.Acting(person, _scene.Given.There);
        foreach (var subject in new[] { RetentionSubject.ClientsWhoLeft, RetentionSubject.ContactNotes })
        {
            var seen = await clinic.UseAsync<Slice, Slice.Screen>(there, s => s.OpenAsync(subject, Cancel));
            Assert.Equal((0, 0), (seen.Over.Rows, seen.Over.Codes.Count));
        }

        var outcome = await clinic.UseAsync<Slice, Slice.Outcome>(
            there,
            s => s.SaveAsync(new(RetentionSubject.ClientsWhoLeft, 1, ["Q-7719"]), Cancel)
        );

        Assert.Equal(0, outcome.Rows);
        var here = clinic.Acting(_scene.Given.Of(StaffRole.Manager), _scene.Given.Here);
        Assert.Equal(
            ["Q-7719"],
            (await clinic.UseAsync<Slice, Slice.Screen>(here, s => s.OpenAsync(RetentionSubject.ClientsWhoLeft, Cancel))).Over.Codes
        );
        Assert.Equal(
            1,
            (
                await clinic.UseAsync<Slice, Slice.Outcome>(
                    here,
                    s => s.SaveAsync(new(RetentionSubject.ClientsWhoLeft, 1, ["Q-7719"]), Cancel)
                )
            ).Rows
        );
    }

    private Task<int> LeaveAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            (await db.Clients.SingleAsync(c => c.Id == _scene.Client.Id, Cancel)).Leave(_scene.Given.Today);
            return await db.SaveChangesAsync(Cancel);
        });

    private Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen>(_scene.AsOwner(clinic), s => s.OpenAsync(RetentionSubject.ClientsWhoLeft, Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(_scene.AsOwner(clinic), s => s.SaveAsync(input, Cancel));
}
