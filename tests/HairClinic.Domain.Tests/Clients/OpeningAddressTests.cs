using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Clients;

public sealed class OpeningAddressTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 0);
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly Guid Stylist = Guid.CreateVersion7();

    [Fact]
    public void A_new_address_opens_dates_only_and_everything_once_it_is_confirmed()
    {
        var address = Entered();
        Assert.Equal(ClientPageAccessLevel.DatesOnly, address.Opens);

        address.Confirm(Stylist, AddressConfirmerEligibility.Free, Now);

        Assert.Equal(ClientPageAccessLevel.Everything, address.Opens);
        Assert.Equal((Now, Stylist, AddressConfirmationWay.InPerson), (address.ConfirmedAt, address.ConfirmedBy, address.ConfirmedHow));
    }

    [Fact]
    public void Denied_it_opens_nothing_even_if_it_was_confirmed_until_somebody_confirms_it_anew()
    {
        var address = Entered();
        address.Confirm(Stylist, AddressConfirmerEligibility.Free, Now);

        address.Deny(Now);
        Assert.Equal(ClientPageAccessLevel.Nothing, address.Opens);

        address.Confirm(Stylist, AddressConfirmerEligibility.Free, Now);
        Assert.Equal(ClientPageAccessLevel.Everything, address.Opens);
    }

    [Fact]
    public void The_link_is_used_up_by_either_answer()
    {
        var (agreed, denied) = (Entered(), Entered());
        agreed.IssueLink([1], Now);
        denied.IssueLink([2], Now);
        Assert.Equal(Now + Duration.FromDays(7), agreed.LinkExpiresAt);

        agreed.ConfirmFromOldAddress(Now);
        denied.Deny(Now);

        Assert.Equal(AddressConfirmationWay.OldAddress, agreed.ConfirmedHow);
        Assert.All([agreed, denied], a => Assert.Null(a.LinkHash));
    }

    [Theory]
    [InlineData(AddressConfirmerEligibility.NotTheirRole, "An owner, a manager or a stylist confirms an address, having asked the client.")]
    [InlineData(
        AddressConfirmerEligibility.EnteredByThem,
        "You entered this address yourself. Somebody else has to ask the client and confirm it."
    )]
    public void Whoever_may_not_is_refused(AddressConfirmerEligibility right, string sentence)
    {
        var address = Entered();

        Refused.Saying(sentence, () => address.Confirm(Stylist, right, Now));

        Assert.Equal(ClientPageAccessLevel.DatesOnly, address.Opens);
    }

    [Fact]
    public void An_owner_alone_is_noted_as_such()
    {
        var address = Entered();

        address.Confirm(Stylist, AddressConfirmerEligibility.OnlyProvedAnew, Now);

        Assert.Equal(AddressConfirmationWay.OwnerAlone, address.ConfirmedHow);
    }

    [Fact]
    public void An_ended_address_opens_nothing_and_is_confirmed_by_nobody()
    {
        var address = Entered();
        typeof(OpeningAddress).GetProperty(nameof(OpeningAddress.EndedAt))!.SetValue(address, Now);

        Assert.Equal(ClientPageAccessLevel.Nothing, address.Opens);
        Refused.Saying("This address was changed meanwhile.", () => address.Confirm(Stylist, AddressConfirmerEligibility.Free, Now));
    }

    [Fact]
    public void A_guardians_last_day_counts_and_the_day_after_does_not()
    {
        var address = Entered();

        Assert.Equal(ClientPageAccessLevel.DatesOnly, address.AccessOn(Today, guardianUntil: Today));
        Assert.Equal(ClientPageAccessLevel.Nothing, address.AccessOn(Today.PlusDays(1), guardianUntil: Today));
        Assert.Equal(ClientPageAccessLevel.DatesOnly, address.AccessOn(Today, guardianUntil: null));
    }

    [Theory]
    [InlineData("ada.fenwick@example.test", "a•••@example.test")]
    [InlineData("a@example.test", "a•••@example.test")]
    [InlineData("nonsense", "•••")]
    public void Its_owner_knows_it_again_and_nobody_else_can_write_to_it(string email, string shown) =>
        Assert.Equal(shown, Entered(email).Masked);

    // Rows are made by the database: there is no other way for the program to make one.
    private static OpeningAddress Entered(string email = "ada@example.test")
    {
        var address = (OpeningAddress)Activator.CreateInstance(typeof(OpeningAddress), nonPublic: true)!;
        typeof(OpeningAddress).GetProperty(nameof(OpeningAddress.Email))!.SetValue(address, email);
        return address;
    }
}
