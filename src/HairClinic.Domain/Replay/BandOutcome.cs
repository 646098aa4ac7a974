using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replay;

/// <summary>Where what came lies in what was predicted: as the predicted chance to have ended by then, 0 to 1.</summary>
/// <param name="Lower">It had not ended by here.</param>
/// <param name="Upper">It had ended by here; 1 where it has not ended.</param>
/// <param name="Client">Who: the bonds and units of one client are not independent. Any number, the same for the same client.</param>
public readonly record struct BandOutcome(double Lower, double Upper, int Client)
{
    /// <summary>The band holds four in five: one in ten is to end before it, one in ten after.</summary>
    public const double From = 0.1;

    public const double To = 0.9;

    public BandPlace Place =>
        Upper <= From && Lower < From ? BandPlace.Before
        : Lower >= To ? BandPlace.After
        : Lower >= From && Upper <= To ? BandPlace.Inside
        : BandPlace.NotKnown;

    /// <summary>It has not ended, or nobody knows when after some day.</summary>
    public bool IsOpen => Upper >= 1;

    /// <param name="said">As it was predicted when the bond was made, or the unit first worn.</param>
    /// <param name="came">As the records have it now, in the same days.</param>
    public static BandOutcome FromSpell(LifePrediction said, Spell came, int client) =>
        new(Ended(said, came.Lower), double.IsFinite(came.Upper) ? Ended(said, came.Upper) : 1, client);

    private static double Ended(LifePrediction said, double days) => days > 0 ? 1 - said.Survival(days) : 0;
}

/// <summary>Where an end lies beside the band that was predicted.</summary>
public enum BandPlace
{
    Before,
    Inside,
    After,

    /// <summary>It goes on, or was taken down sound, before that shows; or its end is known only roughly.</summary>
    NotKnown,
}
