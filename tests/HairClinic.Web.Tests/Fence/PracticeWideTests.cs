using HairClinic.Web.Data;
using HairClinic.Web.Tests.Layout;

namespace HairClinic.Web.Tests.Fence;

public sealed class PracticeWideTests
{
    /// <summary>
    /// Who may look past what the actor may see. The list is closed: a new one needs a decision in DEVELOPERS.md. What erases and takes
    /// out looks further to count (drafts, letters, kept answers of others), and only on clients of the actor's own salons.
    /// </summary>
    private static readonly string[] Allowed =
    [
        "src/HairClinic.Web/Features/MyHair/MyConsents/MyConsents.cs",
        "src/HairClinic.Web/Features/MyHair/SelfBookingSlots.cs",
        "src/HairClinic.Web/Features/MyHair/TakeMyData/TakeMyData.cs",
        "src/HairClinic.Web/Features/MyHair/WhoSawMine/WhoSawMine.cs",
        "src/HairClinic.Web/Features/Privacy/ApplyRetention/ApplyRetention.cs",
        "src/HairClinic.Web/Features/Privacy/EditRetention/EditRetention.cs",
        "src/HairClinic.Web/Features/Privacy/EraseClient/EraseClient.cs",
        "src/HairClinic.Web/Features/Privacy/TakeOut/TakeOut.cs",
        "src/HairClinic.Web/Features/Settings/KeepSpares/KeepSpares.cs",
        "src/HairClinic.Web/Features/Settings/ThrowDemoAway/ThrowDemoAway.cs",
        "src/HairClinic.Web/Features/Visits/Day/Day.cs",
        "src/HairClinic.Web/Features/Visits/Slots/SlotSearch.cs",
        "src/HairClinic.Web/Features/Wear/OfferSlots/OfferSlots.cs",
    ];

    [Fact]
    public void Only_these_look_past_the_actor()
    {
        var callers =
            from file in SourceTree.Files(SourceTree.Web, ".cs", ".razor")
            where Path.GetFileName(file) != $"{nameof(ClinicDbFactory)}.cs"
            where File.ReadAllText(file).Contains(nameof(ClinicDbFactory.OpenPracticeWide), StringComparison.Ordinal)
            select SourceTree.Named(file);

        Assert.Equal(Allowed, callers.Order(StringComparer.Ordinal));
    }
}
