using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Lasting;

/// <summary>Somebody has looked into an alarm: it was none, or the decline is over.</summary>
public sealed class CloseWatchAlarm(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: not there, or closed.</returns>
    public async Task<Screen?> OpenAsync(Guid alarmId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var alarm = await db.WatchAlarms.AsNoTracking().SingleOrDefaultAsync(a => a.Id == alarmId, cancellation);
        return alarm is { IsOpen: true }
            ? new Screen(alarm.CohortFrom, clock.Today(await ReaderZone.ReadAsync(db, current.Person, cancellation)), alarm.Version)
            : null;
    }

    /// <exception cref="Refusal">It is not there, closed already, or the day does not fit.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(CloseWatchAlarm), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (await db.WatchAlarms.SingleOrDefaultAsync(a => a.Id == input.AlarmId, cancellation) is not { } alarm)
            throw new Refusal("This alarm is not there any more.");
        WriteOnce.ExpectVersion(db, alarm, input.Version);
        var today = clock.Today(await ReaderZone.ReadAsync(db, current.Person, cancellation));
        if (input.WasWorse == true)
            alarm.EndCohort(input.Through!.Value, current.Person.PersonId, today);
        else
            alarm.Dismiss(current.Person.PersonId, today);
        return new Outcome(alarm.Id);
    }

    /// <param name="First">The first delivery that it names.</param>
    public sealed record Screen(LocalDate First, LocalDate Today, uint Version);

    public sealed record Input
    {
        public Guid AlarmId { get; set; }

        public uint Version { get; set; }

        public bool? WasWorse { get; set; }

        /// <summary>The last delivery, or bond, that was worse.</summary>
        public LocalDate? Through { get; set; }
    }

    public sealed record Outcome(Guid Id);
}

public sealed class CloseWatchAlarmRules : AbstractValidator<CloseWatchAlarm.Input>
{
    public CloseWatchAlarmRules()
    {
        RuleFor(x => x.WasWorse).NotNull().WithMessage("Say whether something was wrong.");
        RuleFor(x => x.Through).NotNull().When(x => x.WasWorse == true).WithMessage("Choose the last day that was worse.");
    }
}
