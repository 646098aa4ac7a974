using FluentValidation;

namespace HairClinic.Web.Features.Clients.ConfirmAddress;

public sealed class ConfirmAddressRules : AbstractValidator<ConfirmAddress.Input>
{
    public ConfirmAddressRules() => RuleFor(x => x.AddressId).NotEmpty();
}
