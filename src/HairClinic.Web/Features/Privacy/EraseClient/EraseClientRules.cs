namespace HairClinic.Web.Features.Privacy;

public sealed class EraseClientRules : AbstractValidator<EraseClient.Input>
{
    public EraseClientRules()
    {
        RuleFor(x => x.Code).NotEmpty().WithMessage("Type the client's code.");
        RuleFor(x => x.Expected).NotNull().WithMessage("Look at what goes first.");
    }
}
