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
        new("practice_settings", Reach.Practice, Everybody, Owner | Job, Manage, Job),
        new("salons", Reach.Practice, Everybody, Manage, Manage, Job),
        new("salon_hours", Reach.Practice, Everybody, Manage, Manage, Manage),
        new("salon_closures", Reach.Practice, Everybody, Manage, Manage, Manage),
        new("service_kinds", Reach.Practice, Everybody, Manage, Manage, Job),
        new("service_steps", Reach.Practice, Everybody, Manage, Manage, Manage),
        new("base_materials", Reach.Practice, Everybody, Manage, Manage, Job),
        new("unit_kinds", Reach.Practice, Everybody, Manage, Manage, Job),
        new("hold_window_rules", Reach.Practice, Everybody, Manage, Manage, Manage),
        new("wear_factors", Reach.Practice, Staff, Manage, Manage, Job),
        // What the practice's own records tell, calculated each night.
        new("stored_fits", Reach.Practice, Everybody, Job, Job, Job),
        new("stored_leads", Reach.Practice, Staff, Job, Job, Job),
        new("load_forecasts", Reach.Practice, Manage, Job, Job, Job),
        new("order_forecasts", Reach.Practice, Manage, Job, Job, Job),
        new("kept_answers", Reach.OwnSalons, Manage, Manage, Job, Job),
        new("recalculations", Reach.Practice, Manage, Manage, Manage, Job),
        new("reorder_plans", Reach.Clients("reorder_plans"), Staff, Job, Job, Job),
        new("products", Reach.Practice, Everybody, Manage, Manage, Job),
        new("product_lots", Reach.Practice, Staff, Manage | Roles.Chair, Manage | Roles.Chair, Manage),
        new("workshops", Reach.Practice, Staff, Manage, Manage, Job),
        new("workshop_closures", Reach.Practice, Staff, Manage, Manage, Manage),
        new("chairs", Reach.Practice, Staff, Manage, Manage, Job),
        new("people", Reach.Practice, Staff, Manage, Manage, Job),
        new("person_salons", Reach.Practice, Staff, Manage, Manage, Manage),
        new("person_skills", Reach.Practice, Staff, Manage, Manage, Manage),
        new("person_absences", Reach.Practice, Staff, Manage, Manage, Manage),
        new("work_spells", Reach.Practice, Staff, Manage, Manage, Manage),
        // Clients and what belongs to them.
        new("clients", Reach.ClientRow, Everybody, Desk, Desk, Job),
        new("client_grants", Reach.Grants, Staff, Desk, Desk, Job) { Writes = Reach.AtHome },
        new("client_requests", Reach.Clients("client_requests"), Desk, Job, Desk, Job) { Writes = Reach.AtHome },
        new("client_merges", Reach.Clients("client_merges", "kept_id"), Desk, Desk, Desk, Job) { Writes = Reach.BothAtHome },
        new("life_events", Reach.Confided("life_events"), Everybody, Staff, Staff, Staff),
        new("care_facts", Reach.Confided("care_facts"), Everybody, Staff, Staff, Job),
        new("contact_notes", Reach.Clients("contact_notes"), Staff, Desk, Desk, Job),
        new("find_words", Reach.FindWords, Staff, Desk, Desk, Desk),
        // Units, bonds, visits.
        new("hair_systems", Reach.ClientsOrStock("hair_systems"), Everybody, Desk | Stylist, Staff, Job),
        new(
            "promise_revisions",
            Reach.PartOf("promise_revisions", "hair_system_id", "hair_systems"),
            Everybody,
            Desk | Stylist,
            Desk | Stylist,
            Job
        ),
        new("unit_repairs", Reach.PartOf("unit_repairs", "hair_system_id", "hair_systems"), Everybody, Staff, Staff, Job),
        new("bonds", Reach.Clients("bonds"), Everybody, Roles.Chair | Manager, Everybody, Roles.Chair),
        new(
            "bond_products",
            Reach.PartOf("bond_products", "bond_id", "bonds"),
            Everybody,
            Roles.Chair | Manager,
            Roles.Chair | Manager,
            Roles.Chair
        ),
        new("visits", Reach.Visits, Everybody, Everybody, Everybody, Job) { Written = Reach.WrittenVisits },
        new("visit_segments", Reach.PartOf("visit_segments", "visit_id", "visits"), Everybody, Everybody, Everybody, Everybody),
        new("visit_records", Reach.VisitRecords, Everybody, Roles.Chair | Manager, Staff, Roles.Chair),
        // What a client confided, and what was agreed about it.
        new("clearances", Reach.Clients("clearances"), Everybody, Health, Health, Health),
        new("client_keys", Reach.Confided("client_keys"), Health | Trainee | Roles.Client, Health, Manage, Job),
        new("health_answers", Reach.Confided("health_answers"), Health | Roles.Client, Health, Manage, Manage),
        new("photos", Reach.Photos, Health | Trainee | Roles.Client, Health, Health, Manage),
        new("sealed_drafts", Reach.OwnPerson, Health, Health, Health, Health),
        new("consent_texts", Reach.Practice, Everybody, Everybody, Nobody, Nobody),
        new("consents", Reach.Confided("consents"), Everybody, Everybody, Nobody, Nobody),
        new("erasures", Reach.Clients("erasures"), Manage, Manage, Nobody, Nobody) { Writes = Reach.Kept },
        new("retention_rules", Reach.Practice, Manage, Owner | Job, Owner | Job, Owner | Job),
        // Whoever opens something adds a line; owners read them all, clients those about themselves.
        new("access_heads", Reach.Practice, Everybody, Everybody, Everybody, Nobody),
        new("access_notes", Reach.ConfidedWriting, Everybody, Everybody, Nobody, Nobody) { Writes = Reach.OwnWritingOrAboutOneself },
        // A client's own page.
        new("client_preferences", Reach.Clients("client_preferences"), Everybody, Desk | Roles.Client, Desk | Roles.Client, Job),
        new("client_sign_ins", Reach.Clients("client_sign_ins"), Roles.Client | Job, Job, Job, Job),
        new("guardians", Reach.Confided("guardians"), Desk | Stylist | Roles.Client, Desk, Desk, Desk) { Writes = Reach.AtHome },
        new(
            "calendar_feeds",
            Reach.Clients("calendar_feeds"),
            Roles.Client | Job,
            Roles.Client | Job,
            Roles.Client | Job,
            Roles.Client | Job
        ),
        // Made and ended by the database itself; confirmed by whoever may read health and did not enter it.
        new("opening_addresses", Reach.Clients("opening_addresses"), Staff, Nobody, Health, Job),
        new("own_texts", Reach.Practice, Everybody, Manage, Manage, Manage),
        // Shared tablets; their PINs are nobody's to read.
        new("tablets", Reach.Practice, Manage, Manage, Manage, Job),
        new("tablet_pins", Reach.Practice, Job, Job, Job, Job),
        // What the program keeps for whoever wrote it.
        new("drafts", Reach.OwnPerson, Staff, Staff, Staff, Staff),
        new("write_keys", Reach.OwnWriting, Everybody, Everybody, Job, Job),
        new("work_items", Reach.OwnWriting, Everybody, Everybody, Job, Job),
    ];
}
