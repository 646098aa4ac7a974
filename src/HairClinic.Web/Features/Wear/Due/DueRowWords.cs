using HairClinic.Web.Language;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Feedback;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Features.Wear;

/// <summary>What a row says in words: where the bond stands, the last contact, the booking.</summary>
public static class DueRowWords
{
    /// <summary>The state, its shape, and whether it wants someone now.</summary>
    public static (StateMark Mark, string Text, bool Wants) State(DueRow row, LocalDate today, int soonDays, IStringLocalizer words) =>
        row switch
        {
            { LiftedOn: { } lifted } => (StateMark.Lifted, words["Lifted {0}", Dates.Relative(lifted, today, words)], true),
            { LiftReportedOn: { } told } => (StateMark.Lifted, words["Lifted, told {0}", Dates.Relative(told, today, words)], true),
            _ when row.ClosesOn == today.PlusDays(-1) => (StateMark.Full, words["Overdue: 1 day"], true),
            _ when row.ClosesOn < today => (StateMark.Full, words["Overdue: {0} days", Period.DaysBetween(row.ClosesOn, today)], true),
            _ when row.OpensOn <= today => (StateMark.Half, words["Window open"], false),
            _ when row.OpensOn <= today.PlusDays(soonDays) => (
                StateMark.Open,
                words["Opens {0}", Dates.Relative(row.OpensOn, today, words)],
                false
            ),
            _ => (StateMark.Open, words["Holds"], false),
        };

    public static string Contact(LastContact contact, SalonToday salon, IStringLocalizer words)
    {
        var day = contact.At.InZone(salon.Zone).Date;
        string when = day == salon.Today ? Dates.Moment(contact.At, salon.Zone, salon.Today) : Dates.Relative(day, salon.Today, words);
        return contact switch
        {
            { Kind: ContactOutcome.PutOff, Until: { } until } => words[
                "Put off until {0}: {1}",
                Dates.Day(until, salon.Today),
                contact.Reason ?? ""
            ],
            _ => $"{words.Word(contact.Kind)}, {when}",
        };
    }

    /// <summary>The hour is that of the salon it is booked in.</summary>
    public static string Booking(DueRow row, DueBooking booking, IReadOnlyDictionary<Guid, SalonToday> salons, IStringLocalizer words)
    {
        var salon = salons[booking.SalonId];
        var moment = Dates.Moment(booking.At, salon.Zone, salon.Today);
        return booking.Day > row.ClosesOn && row.LiftReportedOn is null
            ? words["Booked {0}, after the window closes", moment]
            : words["Booked {0}", moment];
    }
}
