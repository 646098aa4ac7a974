using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Tests.Visits;

public sealed class RestoreRecordTests
{
    private readonly Head head = new();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    [InlineData(null)]
    public void What_an_old_book_saw_stands_and_neither_bond_nor_unit_is_touched(bool? waitsKept)
    {
        var found = Head.Lifted(head.Today.PlusDays(-1));

        head.Visit.RestoreRecord(Guid.CreateVersion7(), head.Worn.Id, found, waitsKept, head.Now, Head.Stylist);

        var record = head.Visit.Record!;
        Assert.Equal((head.Worn.Id, found.Grades, true), (record.RemovedUnitId, record.Grades, record.FoundLifted));
        Assert.Equal((found.LiftedOn, found.LiftZone, waitsKept), (record.LiftedOn, record.LiftZone, record.WaitsKept));
        Assert.Equal((head.Now, Head.Stylist), (record.RecordedAt, record.RecordedBy));
        Assert.True(head.Bond.IsOpen);
        Assert.Null(head.Bond.Lift);
    }

    [Fact]
    public void A_visit_that_is_logged_keeps_its_record()
    {
        head.Rebond();
        var record = head.Visit.Record;

        Refused.Saying(
            "This visit is logged already.",
            () => head.Visit.RestoreRecord(Guid.CreateVersion7(), head.Worn.Id, Head.Sound(), null, head.Now, Head.Stylist)
        );
        Assert.Same(record, head.Visit.Record);
    }
}
