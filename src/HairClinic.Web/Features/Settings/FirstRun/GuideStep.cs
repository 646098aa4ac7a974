namespace HairClinic.Web.Features.Settings;

/// <summary>The steps of the first-run guide after the practice and its owner exist, in order.</summary>
public enum GuideStep
{
    FirstSalon,
    FirstChairs,
    FirstPeople,
    KeepDefaults,
    BringBinder,
}
