using System.Reflection;

namespace HairClinic.Domain.Clients;

/// <summary>Skin and habits as they bear on a bond. What is not known is null.</summary>
public sealed record CareHabits
{
    /// <summary>The one table of what is asked of them: forms, lists and papers go by it.</summary>
    public static readonly IReadOnlyList<CareQuestionDefinition> All =
    [
        new(nameof(Skin), "Skin of the scalp", "skin"),
        new(nameof(Sweat), "Sweats", "sweat"),
        new(nameof(SwimsPerWeek), "Swims", "swims"),
        new(nameof(WashesPerWeek), "Washes", "washes"),
        new(nameof(HeatPerWeek), "Hot tools", "hot tools"),
    ];

    public SkinOiliness? Skin { get; set; }
    public Sweating? Sweat { get; set; }
    public decimal? SwimsPerWeek { get; set; }
    public decimal? WashesPerWeek { get; set; }

    /// <summary>Times a week that hot tools touch the hair.</summary>
    public decimal? HeatPerWeek { get; set; }

    /// <summary>What is known of them.</summary>
    public IEnumerable<(CareQuestionDefinition Question, object Answer)> KnownAnswers() =>
        All.Select(q => (q, q.AnswerOf(this))).Where(known => known.Item2 is not null)!;
}

/// <summary>One of the questions: a choice, or times a week.</summary>
/// <param name="property">The one that holds the answer.</param>
/// <param name="label">On a form or list, as the localiser's key.</param>
/// <param name="name">On paper, within a line.</param>
public sealed class CareQuestionDefinition(string property, string label, string name)
{
    /// <summary>Times a week lie between 0 and this.</summary>
    public const int MostPerWeek = 50;

    private readonly PropertyInfo _at = typeof(CareHabits).GetProperty(property)!;

    public string Field => property;

    public string Label => label;

    public string Name => name;

    /// <summary>What one chooses from; empty where times a week are asked.</summary>
    public IReadOnlyList<Enum> Choices =>
        Nullable.GetUnderlyingType(_at.PropertyType) is { IsEnum: true } type ? [.. Enum.GetValues(type).Cast<Enum>()] : [];

    public object? AnswerOf(CareHabits habits) => _at.GetValue(habits);

    public void SetAnswerIn(CareHabits habits, object? answer) => _at.SetValue(habits, answer);
}

public enum SkinOiliness
{
    Dry,
    Normal,
    Oily,
}

public enum Sweating
{
    Low,
    Normal,
    Heavy,
}
