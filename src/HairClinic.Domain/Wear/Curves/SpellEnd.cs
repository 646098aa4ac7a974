namespace HairClinic.Domain.Wear.Curves;

/// <summary>What is known of a spell's end.</summary>
public enum SpellEnd
{
    /// <summary>It ended at a known time.</summary>
    At,

    /// <summary>It was still going on then (right-censored).</summary>
    After,

    /// <summary>It had ended by then (left-censored).</summary>
    By,

    /// <summary>It ended after one time and no later than another (interval-censored).</summary>
    Between,
}
