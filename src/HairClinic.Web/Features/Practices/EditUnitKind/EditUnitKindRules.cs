using FluentValidation;

namespace HairClinic.Web.Features.Practices.EditUnitKind;

public sealed class EditUnitKindRules : AbstractValidator<EditUnitKind.Input>
{
    public EditUnitKindRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type what this sort of unit is called.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleFor(x => x.BaseMaterialId).NotEmpty().WithMessage("Choose the base it is made on.");
    }
}
