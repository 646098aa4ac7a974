using HairClinic.Domain.Practices;
using HairClinic.Web.Shell;

namespace HairClinic.Web.Tests.Security;

/// <summary>
/// Who may open what, kept beside the program and not read from it: a rule of the practice changes here first.
/// Owners reach the whole practice; managers, front desk and stylists the clients of their salons; trainees their own visits and the
/// clients of those; clients themselves; nobody another practice.
/// </summary>
public static class RouteRules
{
    public static readonly IReadOnlyDictionary<string, StaffRole[]> Roles = new Dictionary<string, StaffRole[]>
    {
        [Policies.Staff] = Enum.GetValues<StaffRole>(),
        [Policies.Desk] = [StaffRole.Owner, StaffRole.Manager, StaffRole.FrontDesk],
        [Policies.Book] = [StaffRole.Owner, StaffRole.Manager, StaffRole.FrontDesk, StaffRole.Stylist],
        [Policies.Chair] = [StaffRole.Owner, StaffRole.Stylist, StaffRole.Trainee],
        [Policies.Manage] = [StaffRole.Owner, StaffRole.Manager],
        [Policies.Owner] = [StaffRole.Owner],
        [Policies.Health] = [StaffRole.Owner, StaffRole.Manager, StaffRole.Stylist],
        [Policies.Photos] = [StaffRole.Owner, StaffRole.Manager, StaffRole.Stylist, StaffRole.Trainee],
        [Policies.Client] = [],
    };

    /// <summary>Pages without a rule of their own, and those open to all: they show nobody's data. Redirects count as open.</summary>
    public static readonly string[] ForEverybody =
    [
        "/",
        "/alive",
        "/ready",
        "/sign-in",
        "/sign-in-code",
        "/switch-person",
        "/set-password",
        "/refused",
        "/not-found",
        "/error",
        "/my-hair/ask-link",
        "/my-hair/open-link",
        "/my-hair/my-new-address",
        "/first-run/create-practice",
    ];

    /// <summary>Open in themselves, and yet with nothing behind them in a practice at work.</summary>
    public static readonly string[] NotFoundByAll = ["/my-hair/demo-letters", "/my-hair/calendar/{address}"];

    /// <summary>What each parameter of a route or a query means; one that is not here fails the test.</summary>
    public static Whose? Of(string route, string parameter) =>
        (route, parameter.ToLowerInvariant()) switch
        {
            ("/switch-person", "who" or "visit") => Whose.Nobodys,
            // They choose among what is the client's; another's chooses nothing.
            ("/clients/{ClientId:guid}/photos", "unit" or "visit") => Whose.Nobodys,
            (_, "clientid" or "client") or ("/due", "contact") => Whose.Client,
            (_, "visitid") or ("/my-hair/call-off-my-time" or "/my-hair/move-my-time", "visit") => Whose.Visit,
            (_, "salonid" or "salon") => Whose.Salon,
            (_, "personid" or "person") => Whose.Person,
            (_, "photoid") => Whose.Photo,
            (_, "unitid") or ("/orders/place-order", "unit") => Whose.Unit,
            (_, "orderid") => Whose.Order,
            ("/orders", "workshop") => Whose.Workshop,
            // It chooses among the unit's.
            ("/units/{UnitId:guid}/correct-bond-days", "bond") => Whose.Nobodys,
            ("/practice/edit-salon/{Id:guid}", "id") => Whose.Salon,
            ("/practice/edit-person/{Id:guid}", "id") => Whose.Person,
            ("/practice/edit-base-material/{Id:guid}", "id") => Whose.Base,
            ("/practice/edit-hold-window/{Id:guid}", "id") => Whose.HoldWindow,
            ("/practice/edit-workshop/{Id:guid}", "id") => Whose.Workshop,
            ("/practice/edit-service/{Id:guid}", "id") or (_, "service") => Whose.Service,
            ("/practice/edit-product/{Id:guid}", "id") => Whose.Product,
            ("/practice/edit-unit-kind/{Id:guid}", "id") => Whose.Kind,
            ("/practice/binder/export/{kind}", "kind") => Whose.Word,
            ("/find", "q") => Whose.Name,
            ("/what-lasts", "of" or "by") => Whose.Nobodys,
            (
                _,
                "token"
                    or "code"
                    or "for"
                    or "returnurl"
                    or "returnto"
                    or "date"
                    or "around"
                    or "chair"
                    or "start"
                    or "part"
                    or "after"
                    or "noted"
                    or "again"
                    or "at"
                    or "before"
                    or "deed"
                    or "what"
                    or "saved"
                    or "return"
                    or "address"
                    or "step"
                    or "back"
                    or "page"
            ) => Whose.Nobodys,
            _ => null,
        };

    /// <summary>
    /// Things a route may show to whoever has the role although another salon's: settings of the whole practice, its
    /// salons and people among them.
    /// </summary>
    public static readonly Whose[] OfThePractice =
    [
        Whose.Base,
        Whose.HoldWindow,
        Whose.Workshop,
        Whose.Service,
        Whose.Product,
        Whose.Kind,
        Whose.Salon,
        Whose.Person,
        Whose.Order,
    ];
}
