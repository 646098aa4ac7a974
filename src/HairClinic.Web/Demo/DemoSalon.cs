using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Web.Demo;

/// <summary>A salon of the demo; its number is of those kept for drama (Ofcom) and fiction (NANPA 555-01). It rests on one weekday, chosen so that the day the demo begins is a working one.</summary>
public sealed record DemoSalon(string Name, string Zone, string Currency, int Chairs, int Clients, int RestsAfterDays, string Phone)
{
    public static readonly LocalTime Opens = new(9, 0);
    public static readonly LocalTime Closes = new(18, 0);

    public IsoDayOfWeek RestDay(LocalDate today) => today.PlusDays(RestsAfterDays).DayOfWeek;

    public IReadOnlyList<DemoPerson> Stylists =>
        [.. DemoPractice.People.Where(p => p.Role == StaffRole.Stylist && p.Salons.Contains(this))];
}
