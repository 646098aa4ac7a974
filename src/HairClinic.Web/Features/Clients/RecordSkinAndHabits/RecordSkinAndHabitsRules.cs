namespace HairClinic.Web.Features.Clients;

public sealed class RecordSkinAndHabitsRules : AbstractValidator<RecordSkinAndHabits.Input>
{
    public RecordSkinAndHabitsRules()
    {
        foreach (var question in CareHabits.All.Where(q => q.Choices.Count == 0))
            RuleFor(x => (decimal?)question.AnswerOf(x.Habits))
                .InclusiveBetween(0, CareQuestionDefinition.MostPerWeek)
                .WithMessage("Times a week lie between 0 and 50.")
                .OverridePropertyName(question.Field);
        RuleFor(x => x)
            .Must(x => x.Habits.KnownAnswers().Any())
            .WithMessage("Note at least one of them.")
            .OverridePropertyName(CareHabits.All[0].Field);
    }
}
