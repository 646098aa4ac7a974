namespace HairClinic.Web.Features.Clients;

public sealed class AddClientRules : AbstractValidator<AddClient.Input>
{
    public AddClientRules()
    {
        RuleFor(x => x.Name)
            .NotEmpty()
            .WithMessage("Type the client's name.")
            .MaximumLength(200)
            .WithMessage("A name has at most 200 letters.");
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
    }
}
