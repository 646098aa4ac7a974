using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using NodaTime;

namespace HairClinic.Domain.Tests.Shelf;

public sealed class AppliedProductTests
{
    private static readonly LocalDate Today = new(2027, 2, 2);

    private readonly Product _adhesive = new(Guid.CreateVersion7(), "Adhesive A", ProductKind.Adhesive);

    [Fact]
    public void A_lot_may_be_used_up_to_and_on_its_last_day()
    {
        var lot = _adhesive.ReceiveLot(Guid.CreateVersion7(), "A-1", Today);

        Assert.Equal(lot.Id, _adhesive.CreateAppliedProduct(Today, lot.Id, 3).LotId);
        var refusal = Assert.Throws<Refusal>(() => _adhesive.CreateAppliedProduct(Today.PlusDays(1), lot.Id, 3));
        Assert.StartsWith("Lot A-1 of Adhesive A expired on", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_adhesive_with_an_open_lot_is_not_used_without_naming_it()
    {
        _adhesive.ReceiveLot(Guid.CreateVersion7(), "A-1", expiresOn: null);

        Refused.Saying(
            "Choose the lot of {0}, so that a bad one can be traced to every head it touched.",
            () => _adhesive.CreateAppliedProduct(Today, lotId: null, 3)
        );
    }

    [Fact]
    public void An_adhesive_whose_lots_nobody_keeps_may_be_used_without() =>
        Assert.Null(_adhesive.CreateAppliedProduct(Today, lotId: null, 3).LotId);

    [Fact]
    public void A_protector_may_be_used_without_its_lot()
    {
        var protector = new Product(Guid.CreateVersion7(), "Protector P", ProductKind.Protector);
        protector.ReceiveLot(Guid.CreateVersion7(), "P-1", expiresOn: null);

        Assert.Null(protector.CreateAppliedProduct(Today, lotId: null, 1).LotId);
    }

    [Fact]
    public void A_lot_used_up_or_of_another_product_is_refused()
    {
        var lot = _adhesive.ReceiveLot(Guid.CreateVersion7(), "A-1", expiresOn: null);
        lot.Finish();

        Refused.Saying("Lot {0} of {1} is marked as used up. Choose another.", () => _adhesive.CreateAppliedProduct(Today, lot.Id, 3));
        Refused.Saying("That lot is not one of {0}.", () => _adhesive.CreateAppliedProduct(Today, Guid.CreateVersion7(), 3));
    }
}
