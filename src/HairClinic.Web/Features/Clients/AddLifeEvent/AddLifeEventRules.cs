namespace HairClinic.Web.Features.Clients;

public sealed class AddLifeEventRules : AbstractValidator<AddLifeEvent.Input>
{
    public AddLifeEventRules()
    {
        RuleFor(x => x.Kind).NotNull().WithMessage("Choose what it is.");
        RuleFor(x => x.From).NotNull().WithMessage("Choose the day it begins.");
        RuleFor(x => x.To).Must((x, to) => to is null || x.From is null || to >= x.From).WithMessage("It ends before it begins.");
    }
}
