using HairClinic.Domain.Bonding;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Rows;

public sealed class ChoiceWordsTests
{
    // What is written to a sheet can be read from one.
    [Fact]
    public void Each_reason_why_a_bond_came_off_has_its_word_in_the_bonds_sheet()
    {
        var reasons = Enum.GetValues<RemovalReason>().Where(r => r != RemovalReason.TakenBack).ToList();

        var words = reasons.ConvertAll(r => ChoiceWords.ToWord<RemovalReason>(r)!);

        Assert.Equal(words.Order(), BondColumns.RemovedBecause.Choices.Select(c => c.Name).Order());
        Assert.Equal(reasons, words.Select(w => ChoiceWords.FromWord<RemovalReason>(w)!.Value));
    }
}
