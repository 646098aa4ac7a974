using HairClinic.Domain.Bonding;
using HairClinic.Web.Features.Visits;
using Slice = HairClinic.Web.Features.Visits.LogRebond;

namespace HairClinic.Web.Tests.Features.Visits.LogRebond;

/// <summary>What the form alone can tell before anything is asked of the book.</summary>
public sealed class LogRebondRulesTests
{
    private const string Coats = "Coats lie between 1 and 12.";

    [Theory]
    [InlineData(0, Coats)]
    [InlineData(1, null)]
    [InlineData(12, null)]
    [InlineData(13, Coats)]
    [InlineData(null, null)]
    public void Coats_are_counted_from_one_to_twelve_or_not_at_all(int? coats, string? fault)
    {
        var input = Full();
        input.Products[0].Coats = coats;

        Assert.Equal(fault, Only(input));
    }

    public static TheoryData<string, Action<Slice.Input>> Faults =>
        new()
        {
            { "Choose the unit that went on.", i => i.UnitId = null },
            { "Add what bonded it, with its lot.", i => i.Products.Clear() },
            { "Choose a product, or remove the line.", i => i.Products[0].ProductId = Guid.Empty },
            { "The same product and lot is listed twice.", i => i.Products.Add(i.Products[0]) },
            { "Say whether each coat was left to dry: it is how the practice learns what holds.", i => i.WaitsKept = null },
            { "A note has at most 2,000 letters.", i => i.Note = new string('a', 2001) },
            { "Say whether an edge was up when the client came.", i => i.FoundLifted = null },
            { "Ask since when the edge has been up, or say that it is not known.", i => i.FoundLifted = true },
            { "If it came off because it lifted, say that an edge was up.", i => i.Because = RemovalReason.Lifted },
            { "Grades run from 0, as new, to 4, unfit.", i => i.Shedding = 5 },
            { "Grades run from 0, as new, to 4, unfit.", i => i.Knots = -1 },
            { "Grades run from 0, as new, to 4, unfit.", i => i.Base = 5 },
            { "Grades run from 0, as new, to 4, unfit.", i => i.Fit = 5 },
            { "Grades run from 0, as new, to 4, unfit.", i => i.Hair = 5 },
            { "Grades run from 0, as new, to 4, unfit.", i => i.Colour = 5 },
        };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_gap_is_told_in_its_own_words(string fault, Action<Slice.Input> spoil)
    {
        var input = Full();
        spoil(input);

        Assert.Equal(fault, Only(input));
    }

    [Fact]
    public void Clips_need_no_product_and_tape_no_word_on_waits()
    {
        var (clips, tape) = (Full(), Full());
        (clips.Attachment, clips.WaitsKept) = (Attachment.Clips, null);
        clips.Products.Clear();
        (tape.Attachment, tape.WaitsKept) = (Attachment.Tape, null);

        Assert.Null(Only(clips));
        Assert.Null(Only(tape));
    }

    [Fact]
    public void At_a_first_fitting_nothing_is_asked_of_a_bond_before()
    {
        var input = Full();
        (input.WornBondId, input.FoundLifted, input.Shedding) = (null, null, null);

        Assert.Null(Only(input));
    }

    [Fact]
    public void What_nobody_looked_at_is_no_fault()
    {
        var input = Full();
        input.SetGrades(Domain.Visits.InspectionGrades.NotLookedAt, copied: false);

        Assert.Null(Only(input));
    }

    [Fact]
    public void About_when_is_an_answer_about_the_day()
    {
        var input = Full();
        (input.FoundLifted, input.LiftedSince) = (true, Domain.Wear.SinceWhen.NotKnown);

        Assert.Null(Only(input));
    }

    private static string? Only(Slice.Input input) =>
        new LogRebondRules().Validate(input).Errors.Select(e => e.ErrorMessage).SingleOrDefault();

    private static Slice.Input Full() =>
        new()
        {
            WornBondId = Guid.CreateVersion7(),
            UnitId = Guid.CreateVersion7(),
            Attachment = Attachment.Liquid,
            FoundLifted = false,
            WaitsKept = true,
            Because = RemovalReason.Scheduled,
            Shedding = 0,
            Knots = 0,
            Base = 0,
            Fit = 0,
            Hair = 0,
            Colour = 0,
            Products =
            [
                new()
                {
                    ProductId = Guid.CreateVersion7(),
                    LotId = Guid.CreateVersion7(),
                    Coats = 3,
                },
            ],
        };
}
