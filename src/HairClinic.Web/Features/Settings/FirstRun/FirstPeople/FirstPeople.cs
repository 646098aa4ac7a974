using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Settings;

/// <summary>Who else works here, by name and role; the rest is told under Practice, People.</summary>
public sealed class FirstPeople(WriteOnce writes)
{
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(FirstPeople),
            input,
            async db =>
            {
                var salons = await db.Salons.Where(s => !s.Retired).Select(s => s.Id).ToListAsync(cancellation);
                var named = input.People.Where(p => !string.IsNullOrWhiteSpace(p.Name)).ToList();
                foreach (var line in named)
                {
                    var person = new Person(Guid.CreateVersion7(), line.Name, line.Role);
                    person.SetSalons(salons.Select(s => (Guid.CreateVersion7(), s)));
                    db.People.Add(person);
                }
                return new Outcome(named.Count);
            },
            cancellation
        );

    public sealed record Input
    {
        public List<Line> People { get; set; } = [];
    }

    /// <summary>Left empty, it is nobody.</summary>
    public sealed record Line
    {
        public string Name { get; set; } = "";
        public StaffRole Role { get; set; } = StaffRole.Stylist;
    }

    public sealed record Outcome(int Added);
}
