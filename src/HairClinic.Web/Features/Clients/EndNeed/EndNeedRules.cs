namespace HairClinic.Web.Features.Clients;

public sealed class EndNeedRules : AbstractValidator<EndNeed.Input>
{
    public EndNeedRules()
    {
        RuleFor(x => x.Because).NotNull().WithMessage("Choose why.");
        RuleFor(x => x.On).NotNull().WithMessage("Choose the day.");
        RuleForEach(x => x.Units).ChildRules(unit => unit.RuleFor(u => u.After).NotNull().WithMessage("Say what becomes of each unit."));
    }
}

public sealed class ReturnRules : AbstractValidator<EndNeed.Back>
{
    public ReturnRules() => RuleFor(x => x.ClientId).NotEmpty();
}
