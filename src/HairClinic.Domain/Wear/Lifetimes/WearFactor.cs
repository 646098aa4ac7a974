namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// The practice's row for something that shortens or lengthens hold or life: it multiplies the expected time. It is where the
/// fit starts from; the practice's own records move it.
/// </summary>
public sealed class WearFactor : PracticeOwned
{
    private WearFactor() { }

    public WearFactor(Guid id, WearQuantity quantity, WearHabit habit, double factor)
    {
        (Id, Quantity, Habit) = (id, quantity, habit);
        Edit(factor);
    }

    public WearQuantity Quantity { get; private set; }

    public WearHabit Habit { get; private set; }

    public double Factor { get; private set; }

    /// <exception cref="Refusal">Outside 0.2–2.</exception>
    public void Edit(double factor) =>
        Factor = factor is >= 0.2 and <= 2 ? factor : throw new Refusal("A factor lies between 0.2 and 2; 1 changes nothing.");
}
