namespace HairClinic.Domain.Chairs;

/// <summary>A chair (or private room with one chair) of a salon. One head at a time: the database enforces it.</summary>
public sealed class Chair : PracticeOwned
{
    private Chair() { }

    public Chair(Guid id, Guid salonId, string name, int position)
    {
        Id = id;
        SalonId = salonId;
        Edit(name, position);
    }

    public Guid SalonId { get; private set; }
    public string Name { get; private set; } = "";
    public int Position { get; private set; }
    public bool Retired { get; private set; }

    public void Edit(string name, int position)
    {
        Name = name.Trim();
        Position = position;
    }

    public void Retire() => Retired = true;
}
