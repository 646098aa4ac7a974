namespace HairClinic.Web.Demo;

/// <summary>How an invented client's two years stand today.</summary>
public enum DemoEnding
{
    ComesOn,

    /// <summary>Comes when the window has closed, weeks later, or when an edge is up.</summary>
    LetsItSlip,
    Left,
}
