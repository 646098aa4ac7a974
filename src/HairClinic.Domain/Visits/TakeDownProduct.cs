namespace HairClinic.Domain.Visits;

/// <summary>A remover or cleaner a bond was taken down with, and its lot, so that a reaction or a bad lot can be traced.</summary>
public sealed class TakeDownProduct : PracticeOwned
{
    private TakeDownProduct() { }

    internal TakeDownProduct(Guid id, Guid visitRecordId, Guid productId, Guid? lotId) =>
        (Id, VisitRecordId, ProductId, LotId) = (id, visitRecordId, productId, lotId);

    public Guid VisitRecordId { get; private set; }
    public Guid ProductId { get; private set; }
    public Guid? LotId { get; private set; }
}
