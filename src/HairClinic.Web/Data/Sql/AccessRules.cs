using static HairClinic.Web.Data.Sql.Roles;

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
        new("practice_settings", RowScope.Practice, Everybody, Owner | Job, Manage, Job),
        new("salons", RowScope.Practice, Everybody, Manage, Manage, Job),
        new("salon_hours", RowScope.Practice, Everybody, Manage, Manage, Manage),
        new("salon_closures", RowScope.Practice, Everybody, Manage, Manage, Manage),
        new("service_kinds", RowScope.Practice, Everybody, Manage, Manage, Job),
        new("service_steps", RowScope.Practice, Everybody, Manage, Manage, Manage),
        new("base_materials", RowScope.Practice, Everybody, Manage, Manage, Job),
        new("unit_kinds", RowScope.Practice, Everybody, Manage, Manage, Job),
        new("hold_window_rules", RowScope.Practice, Everybody, Manage, Manage, Manage),
        new("wear_factors", RowScope.Practice, Staff, Manage, Manage, Job),
        // What the practice's own records tell, calculated each night.
        new("stored_fits", RowScope.Practice, Everybody, Job, Job, Job),
        new("stored_leads", RowScope.Practice, Staff, Job, Job, Job),
        new("load_forecasts", RowScope.Practice, Manage, Job, Job, Job),
        new("order_forecasts", RowScope.Practice, Manage, Job, Job, Job),
        new("stored_page_results", RowScope.OwnSalons, Manage, Manage, Job, Job),
        new("recalculations", RowScope.Practice, Manage, Manage, Manage, Job),
        new("reorder_plans", RowScope.Clients("reorder_plans"), Staff, Job, Job, Job),
        new("products", RowScope.Practice, Everybody, Manage, Manage, Job),
        new("product_lots", RowScope.Practice, Staff, Manage | Roles.Chair, Manage | Roles.Chair, Manage),
        new("workshops", RowScope.Practice, Staff, Manage, Manage, Job),
        new("workshop_closures", RowScope.Practice, Staff, Manage, Manage, Manage),
        new("chairs", RowScope.Practice, Staff, Manage, Manage, Job),
        new("people", RowScope.Practice, Staff, Manage, Manage, Job),
        new("person_salons", RowScope.Practice, Staff, Manage, Manage, Manage),
        new("person_skills", RowScope.Practice, Staff, Manage, Manage, Manage),
        new("person_absences", RowScope.Practice, Staff, Manage, Manage, Manage),
        new("work_spells", RowScope.Practice, Staff, Manage, Manage, Manage),
        // Clients and what belongs to them.
        new("clients", RowScope.ClientRow, Everybody, Desk, Desk, Job),
        new("client_grants", RowScope.Grants, Staff, Desk, Desk, Job) { Writes = RowScope.AtHome },
        new("client_requests", RowScope.Clients("client_requests"), Desk, Job, Desk, Job) { Writes = RowScope.AtHome },
        new("client_merges", RowScope.Clients("client_merges", "kept_id"), Desk, Desk, Desk, Job) { Writes = RowScope.BothAtHome },
        new("life_events", RowScope.Confided("life_events"), Everybody, Staff, Staff, Staff),
        new("care_facts", RowScope.Confided("care_facts"), Everybody, Staff, Staff, Job),
        new("contact_notes", RowScope.Clients("contact_notes"), Staff, Desk, Desk, Job),
        new("find_words", RowScope.FindWords, Staff, Desk, Desk, Desk),
        // Units, bonds, visits.
        new("hair_systems", RowScope.ClientsOrStock("hair_systems"), Everybody, Desk | Stylist, Staff, Job),
        new(
            "promise_revisions",
            RowScope.PartOf("promise_revisions", "hair_system_id", "hair_systems"),
            Everybody,
            Desk | Stylist,
            Desk | Stylist,
            Job
        ),
        new("unit_repairs", RowScope.PartOf("unit_repairs", "hair_system_id", "hair_systems"), Everybody, Staff, Staff, Job),
        new("bonds", RowScope.Clients("bonds"), Everybody, Roles.Chair | Manager, Everybody, Roles.Chair),
        new(
            "bond_products",
            RowScope.PartOf("bond_products", "bond_id", "bonds"),
            Everybody,
            Roles.Chair | Manager,
            Roles.Chair | Manager,
            Roles.Chair
        ),
        new("visits", RowScope.Visits, Everybody, Everybody, Everybody, Job) { Written = RowScope.WrittenVisits },
        new("visit_segments", RowScope.PartOf("visit_segments", "visit_id", "visits"), Everybody, Everybody, Everybody, Everybody),
        new("visit_records", RowScope.VisitRecords, Everybody, Roles.Chair | Manager, Staff, Roles.Chair),
        // What a client confided, and what was agreed about it.
        new("clearances", RowScope.Clients("clearances"), Everybody, Health, Health, Health),
        new("client_keys", RowScope.Confided("client_keys"), Health | Trainee | Roles.Client, Health, Manage, Job),
        new("health_answers", RowScope.Confided("health_answers"), Health | Roles.Client, Health, Manage, Manage),
        new("photos", RowScope.Photos, Health | Trainee | Roles.Client, Health, Health, Manage),
        new("sealed_drafts", RowScope.OwnPerson, Health, Health, Health, Health),
        new("consent_texts", RowScope.Practice, Everybody, Everybody, Nobody, Nobody),
        new("consents", RowScope.Confided("consents"), Everybody, Everybody, Nobody, Nobody),
        new("erasures", RowScope.Clients("erasures"), Manage, Manage, Nobody, Nobody) { Writes = RowScope.Kept },
        new("retention_rules", RowScope.Practice, Manage, Owner | Job, Owner | Job, Owner | Job),
        // Whoever opens something adds a line; owners read them all, clients those about themselves.
        new("access_heads", RowScope.Practice, Everybody, Everybody, Everybody, Nobody),
        new("access_notes", RowScope.ConfidedWriting, Everybody, Everybody, Nobody, Nobody) { Writes = RowScope.OwnWritingOrAboutOneself },
        // A client's own page.
        new("client_preferences", RowScope.Clients("client_preferences"), Everybody, Desk | Roles.Client, Desk | Roles.Client, Job),
        new("client_sign_ins", RowScope.Clients("client_sign_ins"), Roles.Client | Job, Job, Job, Job),
        new("guardians", RowScope.Confided("guardians"), Desk | Stylist | Roles.Client, Desk, Desk, Desk) { Writes = RowScope.AtHome },
        new(
            "calendar_feeds",
            RowScope.Clients("calendar_feeds"),
            Roles.Client | Job,
            Roles.Client | Job,
            Roles.Client | Job,
            Roles.Client | Job
        ),
        // Made and ended by the database itself; confirmed by whoever may read health and did not enter it.
        new("opening_addresses", RowScope.Clients("opening_addresses"), Staff, Nobody, Health, Job),
        new("own_texts", RowScope.Practice, Everybody, Manage, Manage, Manage),
        // Shared tablets; their PINs are nobody's to read.
        new("tablets", RowScope.Practice, Manage, Manage, Manage, Job),
        new("tablet_pins", RowScope.Practice, Job, Job, Job, Job),
        // What the program keeps for whoever wrote it.
        new("drafts", RowScope.OwnPerson, Staff, Staff, Staff, Staff),
        new("write_keys", RowScope.OwnWriting, Everybody, Everybody, Job, Job),
        new("work_items", RowScope.OwnWriting, Everybody, Everybody, Job, Job),
    ];
}
