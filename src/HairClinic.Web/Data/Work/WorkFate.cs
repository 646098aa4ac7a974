namespace HairClinic.Web.Data.Work;

/// <summary>How work ended that was not simply done.</summary>
public enum WorkFate
{
    /// <summary>It was refused for good, or tried to the end: it was not done and is not tried again.</summary>
    GivenUp,

    /// <summary>A letter that was being handed over when the line broke: it may have gone, so it is not sent again.</summary>
    Unsure,
}
