using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Practices.Parts;
using NodaTime;

namespace HairClinic.Web.Features.Practices.EditPerson;

public sealed partial class EditPerson
{
    public sealed record Input : IEditable
    {
        public Guid? Id { get; set; }

        public uint Version { get; set; }

        public bool Retire { get; set; }

        public string Name { get; set; } = "";

        public StaffRole Role { get; set; } = StaffRole.Stylist;

        public List<Guid> Salons { get; set; } = [];

        /// <summary>Services they may do alone.</summary>
        public List<Guid> Skills { get; set; } = [];

        public List<SalonWeek> Work { get; set; } = [];

        public List<DayRange> Absences { get; set; } = [];

        public static Input Of(Person person) =>
            new()
            {
                Id = person.Id,
                Version = person.Version,
                Name = person.Name,
                Role = person.Role,
                Salons = [.. person.Salons.Select(s => s.SalonId).Order()],
                Skills = [.. person.Skills.Select(s => s.ServiceKindId).Order()],
                Work =
                [
                    .. person
                        .WorkSpells.GroupBy(w => w.SalonId)
                        .Select(g => new SalonWeek { SalonId = g.Key, Days = DayHours.Week(g.Select(w => (w.Day, w.From, w.To))) }),
                ],
                Absences = [.. EditPerson.Absences(person).OrderBy(a => a.From)],
            };

        public IEnumerable<SaidLine> Said() =>
            [
                new("Name", Name),
                new("Role", Role.ToString()),
                new("Number of salons", $"{Salons.Count}"),
                new("Number of services", $"{Skills.Count}"),
                new("Working hours", string.Join("; ", Work.Select(w => DayHours.Say(w.Days)).Where(w => w.Length > 0))),
                new("Away", DayRange.Say(Absences)),
            ];
    }

    /// <summary>A person's hours in one salon; an empty week means whenever it is open.</summary>
    public sealed record SalonWeek
    {
        public Guid SalonId { get; set; }

        public List<DayHours> Days { get; set; } = DayHours.EmptyWeek();

        public IEnumerable<(Guid SalonId, IsoDayOfWeek Day, LocalTime From, LocalTime To)> Spells() =>
            Days.SelectMany(d => d.Spells().Select(s => (SalonId, d.Day, s.From, s.To)));
    }
}
