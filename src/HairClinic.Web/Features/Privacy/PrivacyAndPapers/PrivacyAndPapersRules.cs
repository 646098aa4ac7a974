namespace HairClinic.Web.Features.Privacy;

public sealed class PrivacyAndPapersRules : AbstractValidator<PrivacyAndPapers.Input>
{
    public PrivacyAndPapersRules()
    {
        RuleFor(x => x.Subject).NotNull().IsInEnum().WithMessage("Choose what it is about.");
        RuleFor(x => x.Way).NotNull().WithMessage("Say how the client agreed or took it back.");
        RuleFor(x => x.Way).NotEqual(ConsentWay.OnOwnPage).WithMessage("On their own page only the client can do it.");
    }
}
