using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>When a bond is due to be taken down and made anew.</summary>
/// <param name="Opens">The first day of the window, early if this client's target or an event asks for it.</param>
/// <param name="Target">The day aimed at before looking for an open one.</param>
/// <param name="Closes">The last day of the practice's window; the bond is overdue from the day after.</param>
/// <param name="DueOn">The day to book.</param>
/// <param name="Why">What led there.</param>
public readonly record struct DueWindow(LocalDate Opens, LocalDate Target, LocalDate Closes, LocalDate DueOn, DueReasons Why);
