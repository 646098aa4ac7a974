using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;

namespace HairClinic.Domain.Tests.Clients;

public sealed class AddressConfirmationRightsTests
{
    private static readonly Guid Me = Guid.CreateVersion7();

    [Theory]
    [InlineData(StaffRole.Owner, AddressConfirmerEligibility.Free)]
    [InlineData(StaffRole.Manager, AddressConfirmerEligibility.Free)]
    [InlineData(StaffRole.Stylist, AddressConfirmerEligibility.Free)]
    [InlineData(StaffRole.FrontDesk, AddressConfirmerEligibility.NotTheirRole)]
    [InlineData(StaffRole.Trainee, AddressConfirmerEligibility.NotTheirRole)]
    public void What_somebody_else_entered_is_confirmed_by_whoever_may_read_health(StaffRole role, AddressConfirmerEligibility right)
    {
        Assert.Equal(right, AddressConfirmationRights.For(role, atHome: true, Me, enteredBy: Guid.CreateVersion7(), othersMay: true));
        // What no person entered, a job of the command line for instance, likewise.
        Assert.Equal(right, AddressConfirmationRights.For(role, atHome: true, Me, enteredBy: null, othersMay: true));
    }

    [Theory]
    [InlineData(StaffRole.Owner)]
    [InlineData(StaffRole.Manager)]
    [InlineData(StaffRole.Stylist)]
    public void Nobody_confirms_what_they_entered_while_somebody_else_could(StaffRole role) =>
        Assert.Equal(
            AddressConfirmerEligibility.EnteredByThem,
            AddressConfirmationRights.For(role, atHome: true, Me, enteredBy: Me, othersMay: true)
        );

    [Fact]
    public void Whoever_was_only_let_in_confirms_nothing() =>
        Assert.Equal(
            AddressConfirmerEligibility.NotAtHome,
            AddressConfirmationRights.For(StaffRole.Stylist, atHome: false, Me, enteredBy: Guid.CreateVersion7(), othersMay: true)
        );

    [Fact]
    public void Only_an_owner_alone_may_and_only_having_proved_anew_who_they_are()
    {
        Assert.Equal(
            AddressConfirmerEligibility.OnlyProvedAnew,
            AddressConfirmationRights.For(StaffRole.Owner, atHome: true, Me, enteredBy: Me, othersMay: false)
        );
        Assert.Equal(
            AddressConfirmerEligibility.EnteredByThem,
            AddressConfirmationRights.For(StaffRole.Manager, atHome: true, Me, enteredBy: Me, othersMay: false)
        );
    }
}
