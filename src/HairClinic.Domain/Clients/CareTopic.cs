namespace HairClinic.Domain.Clients;

/// <summary>What a client is told about wearing their unit between visits.</summary>
public enum CareTopic
{
    FirstDay,
    Washing,
    Sleeping,
    SportAndWater,
    Heat,
    Skin,
}
