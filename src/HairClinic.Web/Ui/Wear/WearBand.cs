using NodaTime;

namespace HairClinic.Web.Ui.Wear;

/// <summary>The 10 % and the 90 % day of a predicted end.</summary>
public sealed record WearBand(LocalDate Early, LocalDate Late);
