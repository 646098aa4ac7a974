namespace HairClinic.Domain.HairSystems;

/// <summary>What a base is made of, with the practice's own expectation of how long it lasts in wear.</summary>
public sealed class BaseMaterial : PracticeOwned
{
    private BaseMaterial() { }

    public BaseMaterial(Guid id, string name, int lifeFromDays, int lifeToDays)
    {
        Id = id;
        Edit(name, lifeFromDays, lifeToDays);
    }

    public string Name { get; private set; } = "";

    /// <summary>Worn days by which one unit in ten is worn out; the practice's row, common practice until its own records say better.</summary>
    public int LifeFromDays { get; private set; }

    /// <summary>Worn days by which nine units in ten are worn out.</summary>
    public int LifeToDays { get; private set; }

    public bool Retired { get; private set; }

    /// <exception cref="Refusal">The shorter life is not shorter, or not a life.</exception>
    public void Edit(string name, int lifeFromDays, int lifeToDays)
    {
        if (lifeFromDays < 1 || lifeToDays <= lifeFromDays)
            throw new Refusal("A base's life runs from at least one day to a longer one.");
        Name = name.Trim();
        LifeFromDays = lifeFromDays;
        LifeToDays = lifeToDays;
    }

    public void Retire() => Retired = true;
}
