namespace HairClinic.Domain.Clients;

/// <summary>Why a salon (or a trainee) may open a client's record.</summary>
public enum GrantReason
{
    /// <summary>It is the client's home salon; without end.</summary>
    Home,

    /// <summary>A visit is or was booked there; kept by the database.</summary>
    Visit,

    /// <summary>The home salon allowed it, by name and date.</summary>
    Granted,
}
