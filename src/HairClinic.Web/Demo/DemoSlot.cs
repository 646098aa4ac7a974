using NodaTime;

namespace HairClinic.Web.Demo;

public sealed record DemoSlot(LocalDate Day, LocalTime Start, int Minutes, string Chair, string Stylist)
{
    public LocalTime End => Start.PlusMinutes(Minutes);
}
