namespace HairClinic.Web.Features.Settings;

public sealed class EditChairsRules : AbstractValidator<EditChairs.Input>
{
    public EditChairsRules()
    {
        RuleForEach(x => x.Chairs)
            .ChildRules(chair =>
                chair
                    .RuleFor(c => c.Name)
                    .NotEmpty()
                    .WithMessage("Give the chair a name.")
                    .MaximumLength(40)
                    .WithMessage("A name has at most 40 letters.")
            );
        RuleFor(x => x.Chairs)
            .Must(chairs => chairs.Select(c => c.Name.Trim()).Distinct(StringComparer.OrdinalIgnoreCase).Count() == chairs.Count)
            .WithMessage("Two chairs have the same name.");
    }
}
