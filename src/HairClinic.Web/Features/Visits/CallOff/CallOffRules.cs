namespace HairClinic.Web.Features.Visits;

public sealed class CallOffRules : AbstractValidator<CallOff.Input>
{
    public CallOffRules()
    {
        RuleFor(x => x.By).NotNull().WithMessage("Say who calls it off.");
        RuleFor(x => x.Reason).NotEmpty().When(x => x.By == CalledOffBy.Salon).WithMessage("Write why: the client will ask.");
        RuleFor(x => x.Reason).MaximumLength(300).WithMessage("A reason has at most 300 letters.");
    }
}
