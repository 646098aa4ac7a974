using HairClinic.Domain.Chairs;
using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>What a service consists of, and what was looked at. Common practice, no source.</summary>
public sealed class ServiceKindTests
{
    [Fact]
    public void Its_steps_are_counted_from_one_and_last_together_as_long_as_it_does()
    {
        var rebond = new ServiceKind(Guid.CreateVersion7(), " Rebond ", ServicePurpose.Rebond);
        Assert.Equal("Rebond", rebond.Name);

        rebond.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, 5), (Guid.CreateVersion7(), SegmentKind.HandsOn, 480)]);
        foreach (var minutes in new[] { 4, 481 })
            Refused.Saying(
                "A step lasts 5 to 480 minutes.",
                () => rebond.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, minutes)])
            );
        Refused.Saying("A service has at least one step.", () => rebond.SetSteps([]));
        Assert.Equal(485, rebond.Minutes);
        Assert.Equal([1, 2], rebond.Steps.Select(s => s.Position));

        rebond.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, 30)]);
        Assert.Equal(30, rebond.Minutes);
    }

    [Fact]
    public void What_needs_a_talk_first_is_not_offered_to_clients()
    {
        var offered = Enum.GetValues<ServicePurpose>().Where(p => new ServiceKind(Guid.CreateVersion7(), "S", p).OfferedToClients);

        Assert.Equal([ServicePurpose.Rebond, ServicePurpose.WashAndStyle, ServicePurpose.FixLift], offered.Order());
    }

    [Fact]
    public void A_price_has_its_currency_and_one_that_retires_is_retired()
    {
        var wash = new ServiceKind(Guid.CreateVersion7(), "Wash", ServicePurpose.WashAndStyle);

        wash.Edit(" Wash and style ", ServicePurpose.WashAndStyle, 4550, "EUR");
        wash.SetOfferedToClients(false);
        wash.Retire();

        Assert.Equal(("Wash and style", 4550, "EUR"), (wash.Name, wash.PriceMinor, wash.Currency));
        Assert.Equal((false, true), (wash.OfferedToClients, wash.Retired));
    }

    [Fact]
    public void A_grade_outside_its_scale_is_refused_whichever_it_is()
    {
        const string sentence = "Grades run from 0, as new, to 4, unfit.";
        foreach (var wrong in new[] { -1, 5 })
        {
            Refused.Saying(sentence, () => (InspectionGrades.AsNew with { Shedding = wrong }).EnsureValid());
            Refused.Saying(sentence, () => (InspectionGrades.AsNew with { Colour = wrong }).EnsureValid());
        }
        var worst = InspectionGrades.AsNew with { Knots = 4 };
        Assert.Equal(worst, worst.EnsureValid());
    }
}
