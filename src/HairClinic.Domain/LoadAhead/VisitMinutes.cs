namespace HairClinic.Domain.LoadAhead;

/// <summary>What a kind of visit takes of a salon.</summary>
/// <param name="Chair">Minutes in the chair, waits for a coat to dry included.</param>
/// <param name="HandsOn">Minutes of a stylist.</param>
public readonly record struct VisitMinutes(double Chair, double HandsOn);
