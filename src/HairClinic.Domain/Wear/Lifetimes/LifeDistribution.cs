namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The noise of ln T around its centre.</summary>
public enum LifeDistribution
{
    /// <summary>Smallest extreme value: T is Weibull with shape 1/σ.</summary>
    Weibull,

    /// <summary>Normal: T is log-normal.</summary>
    LogNormal,
}
