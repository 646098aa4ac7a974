namespace HairClinic.Web.Ui.Feedback;

/// <summary>Which of our buttons was tapped last on a live page, so that the answer to the tap stands beside it and not above the fold.</summary>
public sealed class LastTappedButton
{
    /// <summary>The button the finger is on; null after a tap on anything else.</summary>
    public BusyButton? On { get; private set; }

    /// <summary>A button that is no longer drawn: an answer that stood beside it has to stand elsewhere.</summary>
    public event Action<BusyButton>? Gone;

    public void Press(BusyButton button) => On = button;

    public void Clear() => On = null;

    public void NotifyRemoved(BusyButton button)
    {
        if (On == button)
            On = null;
        Gone?.Invoke(button);
    }
}
