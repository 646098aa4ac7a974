using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

public sealed partial class EditPerson
{
    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Role")]
        public StaffRole Role { get; set; } = StaffRole.Stylist;

        [Field("Works in")]
        public List<Guid> Salons { get; set; } = [];

        /// <summary>Services they may do alone.</summary>
        [Field("May do alone")]
        public List<Guid> Skills { get; set; } = [];

        [Field("Hours in {0}")]
        public List<SalonWeek> Work { get; set; } = [];

        [Field("Away")]
        public List<DaysOffInput> Absences { get; set; } = [];

        public static Input From(Person person) =>
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
                        .Select(g => new SalonWeek
                        {
                            SalonId = g.Key,
                            Days = WeekdayHoursInput.WeekFromSpells(g.Select(w => (w.Day, w.From, w.To))),
                        }),
                ],
                Absences = [.. person.Absences.Select(DaysOffInput.FromRow).OrderBy(a => a.From)],
            };
    }

    /// <summary>A person's hours in one salon; an empty week means whenever it is open.</summary>
    public sealed record SalonWeek : IFormRow
    {
        public Guid SalonId { get; set; }

        [Field("Hours in {0}")]
        public List<WeekdayHoursInput> Days { get; set; } = WeekdayHoursInput.EmptyWeek();

        public IEnumerable<(Guid SalonId, IsoDayOfWeek Day, LocalTime From, LocalTime To)> Spells() =>
            Days.SelectMany(d => d.Spells().Select(s => (SalonId, d.Day, s.From, s.To)));

        object IFormRow.Key => SalonId;

        string IFormRow.Describe(FieldFormatter words) => words.Format(Days);
    }
}
