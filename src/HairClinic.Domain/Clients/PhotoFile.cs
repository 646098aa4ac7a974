namespace HairClinic.Domain.Clients;

/// <summary>A picture as it lies sealed on disk.</summary>
public sealed record PhotoFile(Guid Id, int Width, int Height, int Bytes);
