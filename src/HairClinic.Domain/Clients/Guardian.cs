namespace HairClinic.Domain.Clients;

/// <summary>Someone who looks after a client, a parent for instance, and may open the client's own page with their own e-mail.</summary>
public sealed class Guardian : PracticeOwned
{
    private Guardian() { }

    public Guardian(Guid id, Guid clientId, string name, string email, LocalDate? endsOn)
    {
        Id = id;
        ClientId = clientId;
        Edit(name, email, endsOn);
    }

    public Guid ClientId { get; private set; }
    public string Name { get; private set; } = "";

    /// <summary>In lower case, so that it is found by a plain comparison.</summary>
    public string Email { get; private set; } = "";

    /// <summary>The last day it holds, a child's coming of age for instance; null for as long as the row stands.</summary>
    public LocalDate? EndsOn { get; private set; }

    public void Edit(string name, string email, LocalDate? endsOn)
    {
        Name = name.Trim();
        Email = email.Trim().ToLowerInvariant();
        EndsOn = endsOn;
    }
}
