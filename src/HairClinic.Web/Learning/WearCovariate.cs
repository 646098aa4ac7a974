namespace HairClinic.Web.Learning;

/// <summary>One covariate of a spell by its stable name, as fits store it, and its value; what is not there is 0.</summary>
public readonly record struct WearCovariate(string Name, double Value)
{
    public const string AdhesivePrefix = "adhesive:";
    public const string BasePrefix = "base:";
    public const string WorkshopPrefix = "workshop:";

    public static WearCovariate Adhesive(Guid id) => new(AdhesivePrefix + id, 1);

    public static WearCovariate Base(Guid id) => new(BasePrefix + id, 1);

    public static WearCovariate Workshop(Guid id) => new(WorkshopPrefix + id, 1);

    public static WearCovariate For(WearHabit habit, double value = 1) => new(habit.ToString(), value);

    /// <summary>The habit a column stands for; null for adhesives, bases and workshops.</summary>
    public static WearHabit? HabitOf(string name) => Enum.TryParse<WearHabit>(name, out var habit) ? habit : null;
}
