using System.Reflection;

namespace HairClinic.Domain.Replacement;

/// <summary>The client's next order depends on the entity: saving a change of it asks, in the same save, for that order to be planned again.</summary>
/// <param name="properties">Of a row that stays, only changes of these matter; all do where none is named.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ShapesNextOrderAttribute(params string[] properties) : Attribute
{
    public IReadOnlyList<string> Properties => properties;

    /// <summary>False: a row that is added or deleted changes nothing yet.</summary>
    public bool ByComingOrGoing { get; init; } = true;

    /// <param name="changed">Names of the properties that change; null for a row that is added or deleted.</param>
    public static bool IsChangedBy(Type entity, IEnumerable<string>? changed) =>
        entity.GetCustomAttribute<ShapesNextOrderAttribute>() is { } shapes
        && (changed is null ? shapes.ByComingOrGoing : shapes.Properties.Count == 0 || changed.Any(shapes.Properties.Contains));
}
