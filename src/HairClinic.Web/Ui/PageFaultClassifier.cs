namespace HairClinic.Web.Ui;

/// <summary>Which faults a live page answers in words, because nothing of its own is wrong.</summary>
/// <param name="Of">What a fault is.</param>
public sealed record PageFaultClassifier(Func<Exception, PageFaultKind> Of);

public enum PageFaultKind
{
    /// <summary>Not one of these: it shows where it broke.</summary>
    None,

    /// <summary>Whoever acts is no longer who they were when the page opened.</summary>
    AccessEnded,

    /// <summary>The book cannot be reached.</summary>
    BookAway,
}
