namespace HairClinic.Domain.Clients;

/// <summary>One saved set of a client's health answers, sealed. Each save is a row of its own; earlier ones stay sealed.</summary>
public sealed class HealthAnswer : PracticeOwned
{
    /// <summary>What its bytes are sealed for.</summary>
    public const string Purpose = "health answers";

    private HealthAnswer() { }

    public HealthAnswer(Guid id, Guid clientId, LocalDate on, Guid? by, Instant at, byte[] closed) =>
        (Id, ClientId, AnsweredOn, AnsweredBy, SavedAt, Closed) = (id, clientId, on, by, at, closed);

    public Guid ClientId { get; private set; }
    public LocalDate AnsweredOn { get; private set; }
    public Guid? AnsweredBy { get; private set; }
    public Instant SavedAt { get; private set; }

    /// <summary>A <see cref="HealthHistory"/>, sealed with the client's key.</summary>
    public byte[] Closed { get; private set; } = [];
}
