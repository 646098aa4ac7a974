using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Clients;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.RecordSkinAndHabits;

namespace HairClinic.Web.Tests.Features.Clients.RecordSkinAndHabits;

public sealed class RecordSkinAndHabitsTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Fact]
    public async Task Facts_hold_as_of_today_and_earlier_ones_stay()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(
            clinic,
            new()
            {
                ClientId = _client.Id,
                Habits = new() { Skin = SkinOiliness.Dry },
            }
        );

        await SaveAsync(
            clinic,
            new()
            {
                ClientId = _client.Id,
                Habits = new() { Skin = SkinOiliness.Oily, SwimsPerWeek = 2 },
            }
        );

        var facts = await clinic.ReadAsync(db => db.CareFacts.OrderBy(f => f.Id).ToListAsync(TestContext.Current.CancellationToken));
        Assert.Equal([SkinOiliness.Dry, SkinOiliness.Oily], facts.Select(f => f.Habits.Skin!.Value));
        Assert.All(facts, f => Assert.Equal(_given.Today, f.AsOf));
        Assert.Equal(2, (await OpenAsync(clinic))!.Latest!.Habits.SwimsPerWeek);
    }

    [Fact]
    public void An_empty_form_asks_for_at_least_one_of_them() =>
        Assert.Contains(
            new RecordSkinAndHabitsRules().Validate(new Slice.Input()).Errors,
            e => e.ErrorMessage == "Note at least one of them."
        );

    [Fact]
    public async Task Nobody_of_another_salon_can_record_them()
    {
        await using var clinic = await OpenClinicAsync();

        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    clinic.Acting(_given.DeskThere, _given.There),
                    s =>
                        s.SaveAsync(
                            Guid.CreateVersion7(),
                            new()
                            {
                                ClientId = _client.Id,
                                Habits = new() { Skin = SkinOiliness.Dry },
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
}
