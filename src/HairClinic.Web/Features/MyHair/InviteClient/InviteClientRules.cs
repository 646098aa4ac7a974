using FluentValidation;

namespace HairClinic.Web.Features.MyHair.InviteClient;

public sealed class InviteClientRules : AbstractValidator<InviteClient.Input>
{
    public InviteClientRules() => RuleFor(x => x.ClientId).NotEmpty();
}
