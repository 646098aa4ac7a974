namespace HairClinic.Web.Features.Settings;

public sealed class MakeTabletRules : AbstractValidator<MakeTablet.Input>
{
    /// <summary>Minutes without a touch before it locks: common practice, no source.</summary>
    public const int UsualMinutes = 3;

    public static readonly IReadOnlyList<int> Minutes = [1, 2, UsualMinutes, 5, 10, 15];

    public MakeTabletRules()
    {
        RuleFor(x => x.Name).NotEmpty().WithMessage("Say where it stands.").MaximumLength(60).WithMessage("A name has at most 60 letters.");
        RuleFor(x => x.LockAfterMinutes).Must(Minutes.Contains).WithMessage("Choose one of the listed times.");
    }
}
