using FluentValidation;
using HairClinic.Web.Features.Practices.Parts;

namespace HairClinic.Web.Features.Practices.EditWorkshop;

public sealed class EditWorkshopRules : AbstractValidator<EditWorkshop.Input>
{
    public EditWorkshopRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the workshop's name.")
            .MaximumLength(120)
            .WithMessage("A name has at most 120 letters.");
        RuleForEach(x => x.Closures).SetValidator(new DayRangeRules());
    }
}
