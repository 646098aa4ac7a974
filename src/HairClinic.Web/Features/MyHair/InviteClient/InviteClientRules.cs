using FluentValidation;

namespace HairClinic.Web.Features.MyHair;

public sealed class InviteClientRules : AbstractValidator<InviteClient.Input>
{
    public InviteClientRules() => RuleFor(x => x.ClientId).NotEmpty();
}
