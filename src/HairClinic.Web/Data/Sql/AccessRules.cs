using static HairClinic.Web.Data.Sql.AllowedRoles;
using static HairClinic.Web.Data.Sql.RowConditions;

namespace HairClinic.Web.Data.Sql;

/// <summary>
/// Every fenced table and who may do what with its rows. A table without a rule is refused when the schema is brought up to date;
/// tests/HairClinic.Web.Tests/Fence holds the same as a table to check against.
/// </summary>
public static class AccessRules
{
    public static readonly IReadOnlyList<AccessRule> All =
    [
        // How the practice works: everybody reads what their screens need, owner and manager write.
        new("practice_settings", Practice, Everybody, Owner | Job, Manage, Job),
        new("salons", Practice, Everybody, Manage, Manage, Job),
        new("salon_hours", Practice, Everybody, Manage, Manage, Manage),
        new("salon_closures", Practice, Everybody, Manage, Manage, Manage),
        new("service_kinds", Practice, Everybody, Manage, Manage, Job),
        new("service_steps", Practice, Everybody, Manage, Manage, Manage),
        new("base_materials", Practice, Everybody, Manage, Manage, Job),
        new("unit_kinds", Practice, Everybody, Manage, Manage, Job),
        new("hold_window_rules", Practice, Everybody, Manage, Manage, Manage),
        new("wear_factors", Practice, Staff, Manage, Manage, Job),
        // What the practice's own records tell, calculated each night.
        new("stored_fits", Practice, Everybody, Job, Job, Job),
        new("stored_leads", Practice, Staff, Job, Job, Job),
        new("stored_watches", Practice, Manage, Job, Job, Job),
        new("watch_alarms", Practice, Everybody, Job, Manage, Job),
        new("stored_preparations", Practice, Staff, Job, Job, Job),
        new("load_forecasts", Practice, Manage, Job, Job, Job),
        new("order_forecasts", Practice, Manage, Job, Job, Job),
        new("stored_page_results", OwnSalons, Manage, Manage, Job, Job),
        new("recalculations", Practice, Manage, Manage, Manage, Job),
        new("reorder_plans", OfClients("reorder_plans"), Staff, Job, Job, Job),
        new("products", Practice, Everybody, Manage, Manage, Job),
        new("product_lots", Practice, Staff, Manage | AllowedRoles.Chair, Manage | AllowedRoles.Chair, Manage),
        new("workshops", Practice, Staff, Manage, Manage, Job),
        new("workshop_closures", Practice, Staff, Manage, Manage, Manage),
        new("chairs", Practice, Staff, Manage, Manage, Job),
        new("people", Practice, Staff, Manage, Manage, Job),
        new("person_salons", Practice, Staff, Manage, Manage, Manage),
        new("person_skills", Practice, Staff, Manage, Manage, Manage),
        new("person_absences", Practice, Staff, Manage, Manage, Manage),
        new("work_spells", Practice, Staff, Manage, Manage, Manage),
        // Clients and what belongs to them.
        new("clients", ClientRow, Everybody, Desk, Desk, Job),
        new("client_grants", Grants, Staff, Desk, Desk, Job) { Writes = AtHome },
        new("client_requests", OfClients("client_requests"), Desk, Job, Desk, Job) { Writes = AtHome },
        new("client_merges", OfClients("client_merges", "kept_id"), Desk, Desk, Desk, Job) { Writes = BothAtHome },
        new("life_events", ConfidentialOfClients("life_events"), Everybody, Staff, Staff, Staff),
        new("care_facts", ConfidentialOfClients("care_facts"), Everybody, Staff, Staff, Job),
        new("contact_notes", OfClients("contact_notes"), Staff, Desk, Desk, Job),
        new("find_words", FindWords, Staff, Desk, Desk, Desk),
        // Units, bonds, visits.
        new("hair_systems", OfClientsOrStock("hair_systems"), Everybody, Desk | Stylist, Staff, Job),
        new("promise_revisions", OfUnits("promise_revisions"), Everybody, Desk | Stylist, Desk | Stylist, Desk | Stylist),
        new("unit_repairs", OfUnits("unit_repairs"), Everybody, Staff, Staff, Desk | Stylist),
        new("unit_arrivals", OfUnits("unit_arrivals"), Staff, Desk | Stylist, Desk | Stylist, Desk | Stylist),
        new("unit_steps", OfUnits("unit_steps"), Staff, Desk | Stylist, Desk | Stylist, Job),
        new("unit_questions", OfUnits("unit_questions"), Staff, Desk | Stylist, Desk | Stylist, Job),
        new("date_checks", RowConditions.DateChecks, Staff, Desk | Stylist, Desk | Stylist, Desk | Stylist),
        new("unit_loans", ConfidentialOfClients("unit_loans"), Everybody, Staff, Staff, Staff),
        // An order says nothing of clients: its lines are units, each within its client's fence.
        new("workshop_orders", Practice, Staff, Desk | Stylist, Desk | Stylist, Job),
        new("order_promises", Practice, Staff, Desk | Stylist, Desk | Stylist, Job),
        new("bonds", OfClients("bonds"), Everybody, AllowedRoles.Chair | Manager, Everybody, AllowedRoles.Chair),
        new(
            "bond_products",
            PartOf("bond_products", "bond_id", "bonds"),
            Everybody,
            AllowedRoles.Chair | Manager,
            AllowedRoles.Chair | Manager,
            AllowedRoles.Chair
        ),
        new("visits", Visits, Everybody, Everybody, Everybody, Job) { Written = WrittenVisits },
        new("visit_segments", PartOf("visit_segments", "visit_id", "visits"), Everybody, Everybody, Everybody, Everybody),
        new("visit_records", VisitRecords, Everybody, AllowedRoles.Chair | Manager, Staff, AllowedRoles.Chair),
        new(
            "take_down_products",
            PartOf("take_down_products", "visit_record_id", "visit_records"),
            Everybody,
            AllowedRoles.Chair | Manager,
            AllowedRoles.Chair | Manager,
            AllowedRoles.Chair
        ),
        // What a client confided, and what was agreed about it.
        new("clearances", OfClients("clearances"), Everybody, Health, Health, Health),
        new("client_keys", ConfidentialOfClients("client_keys"), Health | Trainee | AllowedRoles.Client, Health, Manage, Job),
        new("health_answers", ConfidentialOfClients("health_answers"), Health | AllowedRoles.Client, Health, Manage, Manage),
        new("photos", RowConditions.Photos, Health | Trainee | AllowedRoles.Client, Health, Health, Manage),
        new("sealed_drafts", OwnPerson, Health, Health, Health, Health),
        new("consent_texts", Practice, Everybody, Everybody, Nobody, Nobody),
        new("consents", ConfidentialOfClients("consents"), Everybody, Everybody, Nobody, Nobody),
        new("erasures", OfClients("erasures"), Manage, Manage, Nobody, Nobody) { Writes = Kept },
        new("retention_rules", Practice, Manage, Owner | Job, Owner | Job, Owner | Job),
        // Whoever opens something adds a line; owners read them all, clients those about themselves.
        new("access_heads", Practice, Everybody, Everybody, Everybody, Nobody),
        new("access_notes", ConfidedWriting, Everybody, Everybody, Nobody, Nobody) { Writes = OwnWritingOrAboutOneself },
        // A client's own page.
        new("client_preferences", OfClients("client_preferences"), Everybody, Desk | AllowedRoles.Client, Desk | AllowedRoles.Client, Job),
        new("client_sign_ins", OfClients("client_sign_ins"), AllowedRoles.Client | Job, Job, Job, Job),
        new("guardians", ConfidentialOfClients("guardians"), Desk | Stylist | AllowedRoles.Client, Desk, Desk, Desk) { Writes = AtHome },
        new(
            "calendar_feeds",
            OfClients("calendar_feeds"),
            AllowedRoles.Client | Job,
            AllowedRoles.Client | Job,
            AllowedRoles.Client | Job,
            AllowedRoles.Client | Job
        ),
        // Made and ended by the database itself; confirmed by whoever may read health and did not enter it.
        new("opening_addresses", OfClients("opening_addresses"), Staff, Nobody, Health, Job),
        new("own_texts", Practice, Everybody, Manage, Manage, Manage),
        // Shared tablets; their PINs are nobody's to read.
        new("tablets", Practice, Manage, Manage, Manage, Job),
        new("tablet_pins", Practice, Job, Job, Job, Job),
        // What the program keeps for whoever wrote it.
        new("drafts", OwnPerson, Staff, Staff, Staff, Staff),
        new("write_keys", OwnWriting, Everybody, Everybody, Job, Job),
        new("work_items", OwnWriting, Everybody, Everybody, Job, Job),
    ];

    private static string OfUnits(string table) => PartOf(table, "hair_system_id", "hair_systems");
}
