namespace HairClinic.Web.Features.Clients;

public sealed class TransferClientRules : AbstractValidator<TransferClient.Input>
{
    public TransferClientRules() => RuleFor(x => x.SalonId).NotNull().WithMessage("Choose the salon.");
}
