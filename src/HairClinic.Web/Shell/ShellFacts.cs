namespace HairClinic.Web.Shell;

/// <summary>What the frame around every page shows; cascaded by whoever decides who is acting, absent before anyone is.</summary>
public sealed record ShellFacts(string PersonName, IReadOnlyList<SalonOption> Salons, Guid? Salon)
{
    /// <summary>A screen left alone covers names and photos after this long; 0 never does.</summary>
    public int CoverAfterMinutes { get; init; } = 5;

    /// <summary>At a shared tablet: minutes without a touch after which it locks.</summary>
    public int? LockAfterMinutes { get; init; }
}
