namespace HairClinic.Web.Ui.Feedback;

/// <summary>The shape in front of a state's word: states differ by shape and word, never by colour alone.</summary>
public enum StateMark
{
    None,

    /// <summary>A ring: nothing to do yet.</summary>
    Open,

    /// <summary>Half filled: under way, or the window is open.</summary>
    Half,

    /// <summary>Filled: it wants someone now.</summary>
    Full,

    /// <summary>An edge that curls up: lifted.</summary>
    Lifted,

    /// <summary>A tick: done.</summary>
    Done,

    /// <summary>A bar across: stopped, refused, off.</summary>
    Barred,
}
