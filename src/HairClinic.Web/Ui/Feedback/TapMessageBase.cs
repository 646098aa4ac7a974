using Microsoft.AspNetCore.Components;

namespace HairClinic.Web.Ui.Feedback;

/// <summary>
/// An answer to a tap: it is shown by the button that was tapped, where there is one, else in its own place, and the page is brought to it.
/// </summary>
public abstract class TapMessageBase : LiveComponent, IDisposable
{
    private object? _known;

    [CascadingParameter]
    private LastTappedButton? TappedButton { get; set; }

    /// <summary>The button it stands at; null where it stands in its own place.</summary>
    protected BusyButton? At { get; private set; }

    /// <summary>It has just come up, and nobody has been brought to it yet.</summary>
    protected bool IsFresh { get; set; }

    /// <summary>What it is about: another is another answer, though it may say the same. Null: there is none.</summary>
    protected abstract object? Cause { get; }

    /// <summary>Whether the page goes to the button: not where it goes to a field.</summary>
    protected virtual bool IsTheEnd => true;

    /// <summary>In words, for whoever looks at the button.</summary>
    protected abstract string Say();

    protected override void OnInitialized()
    {
        if (TappedButton is not null)
            TappedButton.Gone += StandElsewhere;
    }

    protected override void OnParametersSet()
    {
        if (ReferenceEquals(Cause, _known))
            return;
        _known = Cause;
        At?.Answer(this, null);
        At = _known is null ? null : TappedButton?.On;
        At?.Answer(this, Say(), enter: IsTheEnd);
        IsFresh = _known is not null;
    }

    private void StandElsewhere(BusyButton button)
    {
        if (At != button)
            return;
        At = null;
        StateHasChanged();
    }

    public void Dispose()
    {
        At?.Answer(this, null);
        if (TappedButton is not null)
            TappedButton.Gone -= StandElsewhere;
        GC.SuppressFinalize(this);
    }
}
