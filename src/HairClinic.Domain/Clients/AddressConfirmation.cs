namespace HairClinic.Domain.Clients;

/// <summary>How it became known that an address is the client's, or of whom they let look after them.</summary>
public enum AddressConfirmation
{
    /// <summary>It stood in the book before addresses were confirmed at all.</summary>
    Before,

    /// <summary>Whoever reads at the client's last confirmed address said so.</summary>
    OldAddress,

    /// <summary>Somebody who may read health and had not entered it asked the client.</summary>
    InPerson,

    /// <summary>The owner had entered it and nobody else here could confirm it; they proved anew who they are.</summary>
    OwnerAlone,
}
