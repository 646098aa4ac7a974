namespace HairClinic.Web.Shell.Limits;

/// <summary>A page or endpoint that may be asked only so often. On a page it is the sending of its form that counts, not looking at it.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class RateLimitedAttribute(LimitedAction limited) : Attribute
{
    public LimitedAction Limited => limited;

    /// <summary>The form field with the name or address that is tried or written to; it is limited too, whoever tries.</summary>
    public string? Field { get; init; }

    /// <summary>The cookie that says whose account is tried, where no field does.</summary>
    public string? Cookie { get; init; }
}
