namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>One covariate: its value on each row.</summary>
public sealed record Covariate(string Name, double[] Values);
