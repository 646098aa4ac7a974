using FluentValidation;
using HairClinic.Web.Features.Visits.Slots;

namespace HairClinic.Web.Features.Visits.MoveVisit;

public sealed class MoveVisitRules : AbstractValidator<MoveVisit.Input>
{
    public MoveVisitRules() => Include(new PlaceChoiceRules());
}
