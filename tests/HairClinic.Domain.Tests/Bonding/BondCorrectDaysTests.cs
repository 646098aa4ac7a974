using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Bonding;

public sealed class BondCorrectDaysTests
{
    private static readonly LocalDate On = new(2016, 1, 5);
    private static readonly LocalDate Off = new(2026, 2, 9);
    private static readonly LocalDate Today = new(2027, 2, 3);

    [Fact]
    public void A_year_typed_wrong_is_corrected_and_what_lies_outside_is_forgotten()
    {
        var bond = OfOldBook();
        bond.MarkSeenSound(On.PlusDays(40));
        bond.Remove(Off, RemovalReason.Scheduled);

        bond.CorrectDays(new LocalDate(2026, 1, 5), Off, null, [(On.PlusDays(-30), On)], Today);

        Assert.Equal(
            (new LocalDate(2026, 1, 5), (LocalDate?)Off, null, null),
            (bond.AppliedOn, bond.RemovedOn, bond.LastSoundOn, bond.Lift)
        );
        Assert.Equal(35, HoldObservation.From(bond, Today).Lower);
    }

    [Fact]
    public void The_day_it_lifted_is_corrected_with_it()
    {
        var bond = OfOldBook();
        bond.ReportLift(new Lift(Off, Off, LiftZone.Front, SpotFixed: false));
        bond.Remove(Off, RemovalReason.Lifted);
        var on = new LocalDate(2026, 1, 5);

        bond.CorrectDays(on, Off.PlusDays(-1), on.PlusDays(20), [], Today);
        Assert.Equal(new Lift(Off.PlusDays(-1), on.PlusDays(20), LiftZone.Front, false), bond.Lift);

        bond.CorrectDays(on, Off, null, [], Today);
        Assert.Equal((Off.PlusDays(-1), (LocalDate?)null), (bond.Lift!.ReportedOn, bond.Lift.LiftedOn));
    }

    [Fact]
    public void Days_that_cannot_be_are_refused_and_change_nothing()
    {
        var bond = OfOldBook();
        Refused.Saying(
            "The days of this bond are those of its visits: open the visit and undo its log.",
            () => bond.CorrectDays(On, Off, null, [], Today)
        );
        bond.Remove(Off, RemovalReason.Scheduled);

        Refused.Saying("{0} is in the future: choose today or earlier.", () => bond.CorrectDays(On, Today.PlusDays(1), null, [], Today));
        Refused.Saying(
            "A bond cannot be taken off before it was made, on {0}.",
            () => bond.CorrectDays(Off, Off.PlusDays(-1), null, [], Today)
        );
        Refused.Saying(
            "The day it lifted lies between the day it was made and the day it came off.",
            () => bond.CorrectDays(On, Off, On.PlusDays(-1), [], Today)
        );
        Refused.Saying(
            "Another bond of this client or unit begins on {0}: they would be on at once.",
            () => bond.CorrectDays(On, Off, null, [(Off.PlusDays(-10), null)], Today)
        );
        Assert.Equal((On, (LocalDate?)Off), (bond.AppliedOn, bond.RemovedOn));

        var made = OfOldBook();
        made.SetVisit(Guid.CreateVersion7());
        made.Remove(Off, RemovalReason.Scheduled);
        Refused.Saying(
            "The days of this bond are those of its visits: open the visit and undo its log.",
            () => made.CorrectDays(On, Off, null, [], Today)
        );
    }

    private static Bond OfOldBook() =>
        new(Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), On, null, Attachment.Liquid, null);
}
