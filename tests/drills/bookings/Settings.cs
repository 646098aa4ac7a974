namespace HairClinic.BookingDrill;

/// <param name="Kills">How often something is killed amid the writing; 0 for a load alone.</param>
internal sealed record Settings(int Writers, int Seconds, int Kills, int Port);
