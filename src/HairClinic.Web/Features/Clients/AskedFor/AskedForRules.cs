namespace HairClinic.Web.Features.Clients;

public sealed class AskedForRules : AbstractValidator<AskedFor.Input>
{
    public AskedForRules() => RuleFor(x => x.RequestId).NotEmpty();
}
