namespace HairClinic.Web.Features.Clients;

public sealed class RequestClientAccessRules : AbstractValidator<RequestClientAccess.Input>
{
    public RequestClientAccessRules()
    {
        RuleFor(x => x.CodeOrPhone).NotEmpty().WithMessage("Type their code, or their whole phone number.").MaximumLength(50);
        RuleFor(x => x.Because).NotEmpty().WithMessage("Say why, such as “stands here with a lifted front”.").MaximumLength(200);
    }
}
