using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Tests.Visits;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Bonding;

/// <summary>What may be told of a bond: products and lots, lifts, sound days, its end.</summary>
public sealed class BondTests
{
    private static readonly LocalDate On = new(2027, 1, 5);
    private static readonly Guid Glue = Guid.CreateVersion7();

    private readonly Bond _bond = new(
        Guid.CreateVersion7(),
        Guid.CreateVersion7(),
        Guid.CreateVersion7(),
        On,
        null,
        Attachment.Liquid,
        null
    );

    [Fact]
    public void A_bond_is_not_removed_as_taken_back()
    {
        var thrown = Assert.Throws<ArgumentOutOfRangeException>(() => _bond.Remove(On, RemovalReason.TakenBack));
        Assert.StartsWith("A log is taken back by its visit.", thrown.Message, StringComparison.Ordinal);
        Assert.True(_bond.IsOpen);
    }

    [Fact]
    public void Products_keep_their_lots_and_two_lots_of_one_product_are_two()
    {
        var (one, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());

        _bond.SetProducts([Use(Glue, one, 3), Use(Glue, other, null)], waitsKept: false);

        Assert.Equal([(Glue, one, 3), (Glue, other, null)], _bond.Products.Select(p => (p.ProductId, p.LotId!.Value, p.Coats)));
        Assert.All(_bond.Products, p => Assert.Equal(_bond.Id, p.BondId));
        Assert.False(_bond.WaitsKept);
        _bond.SetProducts([Use(Glue, one, 1)], waitsKept: true);
        Assert.Single(_bond.Products);
    }

    [Fact]
    public void The_same_product_and_lot_twice_is_refused_and_what_stood_there_stays()
    {
        var lot = Guid.CreateVersion7();
        _bond.SetProducts([Use(Glue, lot, 2)], waitsKept: null);

        Assert.Equal(
            "The same product and lot is listed twice.",
            Assert.Throws<Refusal>(() => _bond.SetProducts([Use(Glue, lot, 1), Use(Glue, lot, 2)], waitsKept: null)).Message
        );
        Assert.Equal(2, Assert.Single(_bond.Products).Coats);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(12, true)]
    [InlineData(13, false)]
    public void Coats_lie_between_1_and_12(int coats, bool taken)
    {
        void Do() => _bond.SetProducts([Use(Glue, null, coats)], waitsKept: null);
        if (taken)
            Do();
        else
            Assert.Equal("Coats lie between 1 and 12.", Assert.Throws<Refusal>(Do).Message);
    }

    [Fact]
    public void It_falls_due_as_the_rule_says_with_its_reasons()
    {
        var window = Head.FourToEight(On);

        _bond.SetDueWindow(window);

        Assert.Equal(
            (window.Opens, window.Target, window.DueOn, window.Closes),
            (_bond.OpensOn, _bond.TargetOn, _bond.DueOn, _bond.ClosesOn)
        );
        Assert.Equal(window.Why.Explain(), _bond.DueReasons);
    }

    [Fact]
    public void The_last_sound_day_only_moves_on_and_nothing_seen_after_a_lift_counts()
    {
        _bond.MarkSeenSound(On.PlusDays(-1));
        Assert.Null(_bond.LastSoundOn);
        _bond.MarkSeenSound(On);
        Assert.Equal(On, _bond.LastSoundOn);
        _bond.MarkSeenSound(On.PlusDays(9));
        _bond.MarkSeenSound(On.PlusDays(4));
        Assert.Equal(On.PlusDays(9), _bond.LastSoundOn);
        _bond.ReportLift(new Lift(On.PlusDays(12), null, LiftZone.Front, SpotFixed: true));
        _bond.MarkSeenSound(On.PlusDays(20));
        Assert.Equal(On.PlusDays(9), _bond.LastSoundOn);
    }

    [Theory]
    [InlineData(-1, null, "A bond cannot lift before it was made")]
    [InlineData(5, -1, "A bond cannot lift before it was made")]
    [InlineData(5, 6, "It cannot have lifted after it was reported.")]
    [InlineData(12, 8, "It was seen sound on ")]
    public void A_lift_that_cannot_be_is_refused_in_words(int reported, int? lifted, string sentence)
    {
        _bond.MarkSeenSound(On.PlusDays(9));

        Assert.StartsWith(sentence, RefusalOf(reported, lifted), StringComparison.Ordinal);
        Assert.Null(_bond.Lift);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(9, 9)]
    [InlineData(12, 9)]
    [InlineData(12, 12)]
    [InlineData(12, null)]
    public void A_lift_on_the_last_sound_day_or_later_is_taken(int reported, int? lifted)
    {
        if (reported >= 9)
            _bond.MarkSeenSound(On.PlusDays(9));

        Report(reported, lifted);

        Assert.Equal(
            (On.PlusDays(reported), lifted is { } d ? On.PlusDays(d) : (LocalDate?)null),
            (_bond.Lift!.ReportedOn, _bond.Lift.LiftedOn)
        );
    }

    [Fact]
    public void Once_it_is_off_it_cannot_lift_later_but_may_be_told_to_have_lifted_before()
    {
        _bond.Remove(On.PlusDays(20), RemovalReason.Scheduled);

        Assert.StartsWith("This bond was taken off on ", RefusalOf(21, null), StringComparison.Ordinal);
        Report(20, 19);
        Assert.NotNull(_bond.Lift);
    }

    [Fact]
    public void Only_the_first_lift_ends_the_hold_and_a_later_telling_may_name_the_day_it_left_open()
    {
        Report(12, null);

        Report(20, 15);
        Assert.Null(_bond.Lift!.LiftedOn);
        _bond.ReportLift(new Lift(On.PlusDays(21), On.PlusDays(12), LiftZone.Temples, SpotFixed: true));
        Assert.Equal(new Lift(On.PlusDays(12), On.PlusDays(12), LiftZone.Temples, SpotFixed: false), _bond.Lift);
        Report(22, 3);
        Assert.Equal(On.PlusDays(12), _bond.Lift.LiftedOn);
    }

    [Fact]
    public void While_it_is_on_the_head_and_silent_it_is_known_to_hold_until_its_window_closes_or_it_was_seen_sound_later()
    {
        _bond.SetDueWindow(Head.FourToEight(On));
        Assert.Equal(On.PlusWeeks(8), _bond.KnownUntil);
        _bond.MarkSeenSound(On.PlusDays(3));
        Assert.Equal(On.PlusWeeks(8), _bond.KnownUntil);
        _bond.MarkSeenSound(On.PlusWeeks(9));
        Assert.Equal(On.PlusWeeks(9), _bond.KnownUntil);

        _bond.ReportLift(new Lift(On.PlusWeeks(10), null, null, SpotFixed: false));
        Assert.Equal(LocalDate.MaxIsoValue, _bond.KnownUntil);
    }

    [Fact]
    public void Once_it_is_off_all_is_known()
    {
        _bond.SetDueWindow(Head.FourToEight(On));
        _bond.Remove(On.PlusDays(30), RemovalReason.Scheduled);

        Assert.Equal(LocalDate.MaxIsoValue, _bond.KnownUntil);
    }

    [Fact]
    public void The_zone_that_was_told_first_stays()
    {
        _bond.ReportLift(new Lift(On.PlusDays(12), null, LiftZone.Front, SpotFixed: false));

        _bond.ReportLift(new Lift(On.PlusDays(13), On.PlusDays(11), LiftZone.Sides, SpotFixed: false));

        Assert.Equal((LiftZone.Front, On.PlusDays(11)), (_bond.Lift!.Zone!.Value, _bond.Lift.LiftedOn!.Value));
    }

    [Fact]
    public void It_comes_off_once_and_not_before_it_was_made()
    {
        Assert.StartsWith(
            "A bond cannot be taken off before it was made",
            Assert.Throws<Refusal>(() => _bond.Remove(On.PlusDays(-1), RemovalReason.Scheduled)).Message,
            StringComparison.Ordinal
        );
        Assert.True(_bond.IsOpen);

        _bond.Remove(On, RemovalReason.Reaction);

        Assert.Equal((false, On, RemovalReason.Reaction), (_bond.IsOpen, _bond.RemovedOn!.Value, _bond.RemovedBecause!.Value));
        Assert.EndsWith(
            "already.",
            Assert.Throws<Refusal>(() => _bond.Remove(On.PlusDays(3), RemovalReason.Scheduled)).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(On, _bond.RemovedOn);
    }

    private void Report(int reported, int? lifted) =>
        _bond.ReportLift(new Lift(On.PlusDays(reported), lifted is { } day ? On.PlusDays(day) : null, null, SpotFixed: false));

    private string RefusalOf(int reported, int? lifted) => Assert.Throws<Refusal>(() => Report(reported, lifted)).Message;

    private static (Guid, AppliedProduct) Use(Guid product, Guid? lot, int? coats) =>
        (Guid.CreateVersion7(), new AppliedProduct(product, lot, coats));
}
