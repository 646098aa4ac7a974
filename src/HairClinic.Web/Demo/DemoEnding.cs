namespace HairClinic.Web.Demo;

/// <summary>How an invented client's two years stand today.</summary>
public enum DemoEnding
{
    ComesOn,
    LetsItSlip,
    HasLifted,
    Left,
}
