namespace HairClinic.Web.Features.Settings;

/// <summary>How far the first-run guide has come, told by what exists: it can be left and gone on with at any time.</summary>
public sealed record SetupProgress(bool Finished, Guid? FirstSalonId, int Chairs, int People, int Services)
{
    /// <summary>The step after the last one that has left something behind; a step skipped is not asked again.</summary>
    public GuideStep Next =>
        Services > 0 ? GuideStep.BringBinder
        : People > 1 ? GuideStep.KeepDefaults
        : Chairs > 0 ? GuideStep.FirstPeople
        : FirstSalonId is not null ? GuideStep.FirstChairs
        : GuideStep.FirstSalon;

    /// <summary>Everything after the first salon needs it; finished means none of it.</summary>
    public bool MayOpenStep(GuideStep step) => !Finished && (step == GuideStep.FirstSalon || FirstSalonId is not null);

    public static string PathOf(GuideStep step) =>
        step switch
        {
            GuideStep.FirstSalon => "/first-run/first-salon",
            GuideStep.FirstChairs => "/first-run/first-chairs",
            GuideStep.FirstPeople => "/first-run/first-people",
            GuideStep.KeepDefaults => "/first-run/keep-defaults",
            _ => "/first-run/bring-binder",
        };
}

/// <summary>The steps of the first-run guide after the practice and its owner exist, in order.</summary>
public enum GuideStep
{
    FirstSalon,
    FirstChairs,
    FirstPeople,
    KeepDefaults,
    BringBinder,
}
