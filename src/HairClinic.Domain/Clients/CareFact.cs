using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.Clients;

/// <summary>Habits and skin, as of a day. Apart from health answers: any of the staff may read it.</summary>
[ShapesNextOrder]
public sealed class CareFact : PracticeOwned
{
    private CareFact() { }

    /// <exception cref="Refusal">Nobody does something so often.</exception>
    public CareFact(Guid id, Guid clientId, LocalDate asOf, CareHabits habits)
    {
        if (habits.KnownAnswers().Any(known => known.Answer is decimal and (< 0 or > CareQuestionDefinition.MostPerWeek)))
            throw new Refusal("Times per week lie between 0 and 50.");
        (Id, ClientId, AsOf, Habits) = (id, clientId, asOf, habits with { });
    }

    public Guid ClientId { get; private set; }
    public LocalDate AsOf { get; private set; }
    public CareHabits Habits { get; private set; } = new();
}
