namespace HairClinic.Web.Features.Clients;

public sealed class NoteRepairRules : AbstractValidator<NoteRepair.Input>
{
    public NoteRepairRules()
    {
        RuleFor(x => x.UnitId).NotNull().WithMessage("Choose the unit.");
        RuleFor(x => x.Kind).NotNull().WithMessage("Choose what was mended.");
        RuleFor(x => x.On).NotNull().WithMessage("Choose the day.");
        RuleFor(x => x.Note).MaximumLength(500).WithMessage("A note has at most 500 letters.");
    }
}
