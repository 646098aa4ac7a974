using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using BinderStep = HairClinic.Web.Features.Settings.BringBinder;
using ChairsStep = HairClinic.Web.Features.Settings.EditChairs;
using Defaults = HairClinic.Web.Features.Settings.KeepDefaults;
using PeopleStep = HairClinic.Web.Features.Settings.FirstPeople;
using SalonStep = HairClinic.Web.Features.Settings.EditSalon;

namespace HairClinic.Web.Tests.Features.Settings.FirstRun;

public sealed class SetupProgressReaderTests(PgServer server)
{
    private Person _owner = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_guide_goes_on_where_it_was_left_and_ends_for_good()
    {
        await using var clinic = await OpenAsync();
        Assert.Equal(GuideStep.FirstSalon, (await ReadAsync(clinic)).Next);

        var salon = await As<SalonStep, SalonStep.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Salon(), Cancel));
        Assert.Equal(
            (GuideStep.FirstChairs, salon.SalonId),
            ((await ReadAsync(clinic)).Next, (await ReadAsync(clinic)).FirstSalonId!.Value)
        );

        var chairs = (await As<ChairsStep, ChairsStep.Screen?>(clinic, s => s.OpenAsync(salon.SalonId, Cancel)))!.Input;
        chairs.Chairs.Add(new ChairsStep.ChairLine { Name = "Chair 1" });
        await As<ChairsStep, ChairsStep.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), chairs, Cancel));
        Assert.Equal(GuideStep.FirstPeople, (await ReadAsync(clinic)).Next);

        var people = new PeopleStep.Input { People = [new() { Name = "Sten Ito" }, new()] };
        await As<PeopleStep, PeopleStep.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), people, Cancel));
        Assert.Equal(GuideStep.KeepDefaults, (await ReadAsync(clinic)).Next);

        await As<Defaults, Defaults.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Defaults.SuggestTradeDefaults(), Cancel));
        Assert.Equal(GuideStep.BringBinder, (await ReadAsync(clinic)).Next);

        await As<BinderStep, BinderStep.Outcome>(clinic, s => s.FinishGuideAsync(Guid.CreateVersion7(), Cancel));
        var facts = await ReadAsync(clinic);
        Assert.True(facts.Finished);
        Assert.All(Enum.GetValues<GuideStep>(), step => Assert.False(facts.MayOpenStep(step)));
    }

    [Fact]
    public async Task The_owner_works_in_the_first_salon_and_does_what_is_offered()
    {
        await using var clinic = await OpenAsync();
        await As<SalonStep, SalonStep.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Salon(), Cancel));
        await As<Defaults, Defaults.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Defaults.SuggestTradeDefaults(), Cancel));

        var me = await clinic.ReadAsync(db => db.People.Include(p => p.Salons).Include(p => p.Skills).SingleAsync(Cancel));

        Assert.Single(me.Salons);
        Assert.Equal(Defaults.SuggestTradeDefaults().Services.Count, me.Skills.Count);
    }

    [Theory]
    [InlineData(false, 0, 1, 0, GuideStep.FirstSalon)]
    [InlineData(true, 0, 1, 0, GuideStep.FirstChairs)]
    [InlineData(true, 0, 3, 0, GuideStep.KeepDefaults)]
    [InlineData(true, 0, 1, 7, GuideStep.BringBinder)]
    public void A_step_that_was_skipped_is_not_asked_again(bool salon, int chairs, int people, int services, GuideStep next)
    {
        var facts = new SetupProgress(Finished: false, salon ? Guid.CreateVersion7() : null, chairs, people, services);

        Assert.Equal(next, facts.Next);
        Assert.True(facts.MayOpenStep(facts.Next));
        Assert.Equal(salon, facts.MayOpenStep(GuideStep.BringBinder));
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _owner = new Person(Guid.CreateVersion7(), "Ottilie Vane", StaffRole.Owner);
                scene.Db.People.Add(_owner);
                scene.Db.PracticeSettings.Add(new PracticeSettings(Guid.CreateVersion7(), "Practice on trial", "GB", "en-GB"));
            }
        );

    private static SalonStep.Input Salon() =>
        new()
        {
            Name = "Elm Row",
            Zone = "Europe/London",
            Currency = "GBP",
            Hours = WeekdayHoursInput.WeekFromSpells([(IsoDayOfWeek.Tuesday, new LocalTime(9, 0), new LocalTime(18, 0))]),
        };

    private static Task<SetupProgress> ReadAsync(TestClinic clinic) =>
        clinic.UseAsync<SetupProgressReader, SetupProgress>(clinic.Job, g => g.ReadAsync(Cancel));

    // The owner of a practice just begun has no salon yet.
    private Task<T> As<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull =>
        clinic.AsAsync(
            new PersonActor(clinic.PracticeId, _owner.Id, StaffRole.Owner, [], null),
            services => call((TSlice)services.GetService(typeof(TSlice))!)
        );
}
