using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Tests.Visits;

public sealed class RestoreRecordTests
{
    private readonly Head _head = new();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    [InlineData(null)]
    public void What_an_old_book_saw_stands_and_neither_bond_nor_unit_is_touched(bool? waitsKept)
    {
        var found = Head.Lifted(_head.Today.PlusDays(-1));

        _head.Visit.ImportRecord(Guid.CreateVersion7(), _head.Worn.Id, found, waitsKept, _head.Now, Head.Stylist);

        var record = _head.Visit.Record!;
        Assert.Equal((_head.Worn.Id, found.Grades, true), (record.RemovedUnitId, record.Grades, record.FoundLifted));
        Assert.Equal((found.LiftedOn, found.LiftZone, waitsKept), (record.LiftedOn, record.LiftZone, record.WaitsKept));
        Assert.Equal((_head.Now, Head.Stylist), (record.RecordedAt, record.RecordedBy));
        Assert.True(_head.Bond.IsOpen);
        Assert.Null(_head.Bond.Lift);
    }

    [Fact]
    public void A_visit_that_is_logged_keeps_its_record()
    {
        _head.Rebond();
        var record = _head.Visit.Record;

        Refused.Saying(
            "This visit is logged already.",
            () => _head.Visit.ImportRecord(Guid.CreateVersion7(), _head.Worn.Id, Head.Sound(), null, _head.Now, Head.Stylist)
        );
        Assert.Same(record, _head.Visit.Record);
    }
}
