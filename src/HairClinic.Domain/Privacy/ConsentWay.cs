namespace HairClinic.Domain.Privacy;

/// <summary>How a consent was given or taken back.</summary>
public enum ConsentWay
{
    OnPaper,
    OnTablet,
    OnOwnPage,
}
