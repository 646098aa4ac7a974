namespace HairClinic.Web.Features.Clients;

public sealed class ConfirmAddressRules : AbstractValidator<ConfirmAddress.Input>
{
    public ConfirmAddressRules() => RuleFor(x => x.AddressId).NotEmpty();
}
