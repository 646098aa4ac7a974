namespace HairClinic.Web.Features.Visits;

public sealed class MoveVisitRules : AbstractValidator<MoveVisit.Input>
{
    public MoveVisitRules() => Include(new PlacementInputRules());
}
