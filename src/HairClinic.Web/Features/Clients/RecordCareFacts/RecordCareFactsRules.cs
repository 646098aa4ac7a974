using FluentValidation;

namespace HairClinic.Web.Features.Clients;

public sealed class RecordCareFactsRules : AbstractValidator<RecordCareFacts.Input>
{
    public RecordCareFactsRules()
    {
        RuleFor(x => x.SwimsPerWeek).InclusiveBetween(0, 50).WithMessage("Times a week lie between 0 and 50.");
        RuleFor(x => x.WashesPerWeek).InclusiveBetween(0, 50).WithMessage("Times a week lie between 0 and 50.");
        RuleFor(x => x.HeatPerWeek).InclusiveBetween(0, 50).WithMessage("Times a week lie between 0 and 50.");
        RuleFor(x => x)
            .Must(x => x is not { Skin: null, Sweat: null, SwimsPerWeek: null, WashesPerWeek: null, HeatPerWeek: null })
            .WithMessage("Note at least one of them.")
            .OverridePropertyName(nameof(RecordCareFacts.Input.Skin));
    }
}
