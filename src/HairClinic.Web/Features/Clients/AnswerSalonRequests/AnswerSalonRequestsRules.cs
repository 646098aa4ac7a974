namespace HairClinic.Web.Features.Clients;

public sealed class AnswerSalonRequestsRules : AbstractValidator<AnswerSalonRequests.Input>
{
    public AnswerSalonRequestsRules() => RuleFor(x => x.RequestId).NotEmpty();
}
