using FluentValidation;
using HairClinic.Domain.Wear;

namespace HairClinic.Web.Features.Clients.EditClient;

public sealed class EditClientRules : AbstractValidator<EditClient.Input>
{
    public EditClientRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the client's name.")
            .MaximumLength(200)
            .WithMessage("A name has at most 200 letters.");
        RuleFor(x => x.CalledAs).MaximumLength(200).WithMessage("A name has at most 200 letters.");
        RuleFor(x => x.Code)
            .NotEmpty()
            .WithMessage("Type a code: it stands on labels instead of the name.")
            .MaximumLength(40)
            .WithMessage("A code has at most 40 letters.");
        RuleFor(x => x.HomeSalonId).NotEmpty().WithMessage("Choose the salon they mostly come to.");
        RuleFor(x => x.Email)
            .EmailAddress()
            .When(x => !string.IsNullOrWhiteSpace(x.Email))
            .WithMessage("This does not look like an e-mail address.");
        RuleFor(x => x.WashEveryDays)
            .InclusiveBetween(1, WashRhythm.LongestDays)
            .WithMessage("A wash-and-style rhythm lies between 1 and 56 days.");
        RuleFor(x => x.Note).MaximumLength(2000).WithMessage("A note has at most 2,000 letters.");
    }
}
