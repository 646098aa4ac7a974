using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>“My bond has lifted”, told by the client: when and where, what to do until they come, and the next free times at once.</summary>
public sealed class MyBondHasLifted(ClinicDbFactory databases, WriteOnce writes, SelfBookingSlots slots, CurrentActor current, IClock clock)
{
    private const int Offered = 4;

    /// <returns>Null when the client is no longer there.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        if (await slots.LoadBookingFactsAsync(cancellation) is not { } book)
            return null;
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        var worn = await db
            .Bonds.AsNoTracking()
            .Where(b => b.ClientId == client && b.RemovedOn == null)
            .Select(b => new Worn(b.AppliedOn, b.Lift))
            .SingleOrDefaultAsync(cancellation);
        var now = clock.GetCurrentInstant();
        var today = book.Salon.DayOf(now);
        var fix = book.Services.FirstOrDefault(s => s.Purpose == ServicePurpose.FixLift);
        var free = worn?.Lift is null || fix is null ? [] : await slots.FindAsync(book.CriteriaFor(fix), today, now, cancellation);
        return new Screen(today, worn, fix?.Id, [.. free.Take(Offered)], book.Salon.Name, book.Salon.Phone);
    }

    /// <exception cref="Refusal">Nothing is bonded any more, a lift is noted already, or the day cannot be.</exception>
    public Task<Outcome> SaveAsync(Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            input.Key,
            nameof(MyBondHasLifted),
            input,
            async db =>
            {
                var client = current.Client.ClientId;
                var found = await (
                    from bond in db.Bonds
                    join own in db.Clients on bond.ClientId equals own.Id
                    join salon in db.Salons on own.HomeSalonId equals salon.Id
                    where bond.ClientId == client && bond.RemovedOn == null
                    select new { Bond = bond, salon.Zone }
                ).SingleOrDefaultAsync(cancellation);
                if (found is null)
                    throw new Refusal("Nothing is bonded at the moment. If that is not so, please ring us.");
                return new Outcome(
                    LiftReporter.Report(
                        found.Bond,
                        found.Zone,
                        clock.GetCurrentInstant(),
                        input.LiftedOn,
                        input.LiftedSince,
                        input.Zone,
                        spotFixed: false
                    )
                );
            },
            cancellation
        );

    /// <param name="Fix">The service to book; null where clients cannot book it themselves.</param>
    /// <param name="Slots">The next free times, once the lift is noted.</param>
    public sealed record Screen(LocalDate Today, Worn? Worn, Guid? Fix, IReadOnlyList<FreeStart> Slots, string Salon, string? Phone);

    public sealed record Worn(LocalDate AppliedOn, Lift? Lift);

    public sealed record Input
    {
        public Guid Key { get; set; }
        public LocalDate? LiftedOn { get; set; }

        /// <summary>Or about when.</summary>
        public SinceWhen? LiftedSince { get; set; }

        public LiftZone? Zone { get; set; }
    }

    public sealed record Outcome(Lift Lift);
}

public sealed class MyBondHasLiftedRules : AbstractValidator<MyBondHasLifted.Input>
{
    public MyBondHasLiftedRules()
    {
        RuleFor(x => x.Key).NotEmpty().WithMessage("Open this page anew and choose again.");
        RuleFor(x => x.LiftedOn).NotNull().When(x => x.LiftedSince is null).WithMessage("Choose since when, or that you do not know.");
    }
}
