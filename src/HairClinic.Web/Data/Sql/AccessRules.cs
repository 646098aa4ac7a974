using static HairClinic.Web.Data.Sql.ActorRoles;

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
        new("practice_settings", RowPolicy.Practice, Everybody, Owner | Job, Manage, Job),
        new("salons", RowPolicy.Practice, Everybody, Manage, Manage, Job),
        new("salon_hours", RowPolicy.Practice, Everybody, Manage, Manage, Manage),
        new("salon_closures", RowPolicy.Practice, Everybody, Manage, Manage, Manage),
        new("service_kinds", RowPolicy.Practice, Everybody, Manage, Manage, Job),
        new("service_steps", RowPolicy.Practice, Everybody, Manage, Manage, Manage),
        new("base_materials", RowPolicy.Practice, Everybody, Manage, Manage, Job),
        new("unit_kinds", RowPolicy.Practice, Everybody, Manage, Manage, Job),
        new("hold_window_rules", RowPolicy.Practice, Everybody, Manage, Manage, Manage),
        new("wear_factors", RowPolicy.Practice, Staff, Manage, Manage, Job),
        // What the practice's own records tell, calculated each night.
        new("stored_fits", RowPolicy.Practice, Everybody, Job, Job, Job),
        new("stored_leads", RowPolicy.Practice, Staff, Job, Job, Job),
        new("load_forecasts", RowPolicy.Practice, Manage, Job, Job, Job),
        new("order_forecasts", RowPolicy.Practice, Manage, Job, Job, Job),
        new("stored_page_results", RowPolicy.OwnSalons, Manage, Manage, Job, Job),
        new("recalculations", RowPolicy.Practice, Manage, Manage, Manage, Job),
        new("reorder_plans", RowPolicy.OfClients("reorder_plans"), Staff, Job, Job, Job),
        new("products", RowPolicy.Practice, Everybody, Manage, Manage, Job),
        new("product_lots", RowPolicy.Practice, Staff, Manage | ActorRoles.Chair, Manage | ActorRoles.Chair, Manage),
        new("workshops", RowPolicy.Practice, Staff, Manage, Manage, Job),
        new("workshop_closures", RowPolicy.Practice, Staff, Manage, Manage, Manage),
        new("chairs", RowPolicy.Practice, Staff, Manage, Manage, Job),
        new("people", RowPolicy.Practice, Staff, Manage, Manage, Job),
        new("person_salons", RowPolicy.Practice, Staff, Manage, Manage, Manage),
        new("person_skills", RowPolicy.Practice, Staff, Manage, Manage, Manage),
        new("person_absences", RowPolicy.Practice, Staff, Manage, Manage, Manage),
        new("work_spells", RowPolicy.Practice, Staff, Manage, Manage, Manage),
        // Clients and what belongs to them.
        new("clients", RowPolicy.ClientRow, Everybody, Desk, Desk, Job),
        new("client_grants", RowPolicy.Grants, Staff, Desk, Desk, Job) { Writes = RowPolicy.AtHome },
        new("client_requests", RowPolicy.OfClients("client_requests"), Desk, Job, Desk, Job) { Writes = RowPolicy.AtHome },
        new("client_merges", RowPolicy.OfClients("client_merges", "kept_id"), Desk, Desk, Desk, Job) { Writes = RowPolicy.BothAtHome },
        new("life_events", RowPolicy.ConfidentialOfClients("life_events"), Everybody, Staff, Staff, Staff),
        new("care_facts", RowPolicy.ConfidentialOfClients("care_facts"), Everybody, Staff, Staff, Job),
        new("contact_notes", RowPolicy.OfClients("contact_notes"), Staff, Desk, Desk, Job),
        new("find_words", RowPolicy.FindWords, Staff, Desk, Desk, Desk),
        // Units, bonds, visits.
        new("hair_systems", RowPolicy.OfClientsOrStock("hair_systems"), Everybody, Desk | Stylist, Staff, Job),
        new(
            "promise_revisions",
            RowPolicy.PartOf("promise_revisions", "hair_system_id", "hair_systems"),
            Everybody,
            Desk | Stylist,
            Desk | Stylist,
            Job
        ),
        new("unit_repairs", RowPolicy.PartOf("unit_repairs", "hair_system_id", "hair_systems"), Everybody, Staff, Staff, Job),
        new("bonds", RowPolicy.OfClients("bonds"), Everybody, ActorRoles.Chair | Manager, Everybody, ActorRoles.Chair),
        new(
            "bond_products",
            RowPolicy.PartOf("bond_products", "bond_id", "bonds"),
            Everybody,
            ActorRoles.Chair | Manager,
            ActorRoles.Chair | Manager,
            ActorRoles.Chair
        ),
        new("visits", RowPolicy.Visits, Everybody, Everybody, Everybody, Job) { Written = RowPolicy.WrittenVisits },
        new("visit_segments", RowPolicy.PartOf("visit_segments", "visit_id", "visits"), Everybody, Everybody, Everybody, Everybody),
        new("visit_records", RowPolicy.VisitRecords, Everybody, ActorRoles.Chair | Manager, Staff, ActorRoles.Chair),
        // What a client confided, and what was agreed about it.
        new("clearances", RowPolicy.OfClients("clearances"), Everybody, Health, Health, Health),
        new("client_keys", RowPolicy.ConfidentialOfClients("client_keys"), Health | Trainee | ActorRoles.Client, Health, Manage, Job),
        new("health_answers", RowPolicy.ConfidentialOfClients("health_answers"), Health | ActorRoles.Client, Health, Manage, Manage),
        new("photos", RowPolicy.Photos, Health | Trainee | ActorRoles.Client, Health, Health, Manage),
        new("sealed_drafts", RowPolicy.OwnPerson, Health, Health, Health, Health),
        new("consent_texts", RowPolicy.Practice, Everybody, Everybody, Nobody, Nobody),
        new("consents", RowPolicy.ConfidentialOfClients("consents"), Everybody, Everybody, Nobody, Nobody),
        new("erasures", RowPolicy.OfClients("erasures"), Manage, Manage, Nobody, Nobody) { Writes = RowPolicy.Kept },
        new("retention_rules", RowPolicy.Practice, Manage, Owner | Job, Owner | Job, Owner | Job),
        // Whoever opens something adds a line; owners read them all, clients those about themselves.
        new("access_heads", RowPolicy.Practice, Everybody, Everybody, Everybody, Nobody),
        new("access_notes", RowPolicy.ConfidedWriting, Everybody, Everybody, Nobody, Nobody)
        {
            Writes = RowPolicy.OwnWritingOrAboutOneself,
        },
        // A client's own page.
        new(
            "client_preferences",
            RowPolicy.OfClients("client_preferences"),
            Everybody,
            Desk | ActorRoles.Client,
            Desk | ActorRoles.Client,
            Job
        ),
        new("client_sign_ins", RowPolicy.OfClients("client_sign_ins"), ActorRoles.Client | Job, Job, Job, Job),
        new("guardians", RowPolicy.ConfidentialOfClients("guardians"), Desk | Stylist | ActorRoles.Client, Desk, Desk, Desk)
        {
            Writes = RowPolicy.AtHome,
        },
        new(
            "calendar_feeds",
            RowPolicy.OfClients("calendar_feeds"),
            ActorRoles.Client | Job,
            ActorRoles.Client | Job,
            ActorRoles.Client | Job,
            ActorRoles.Client | Job
        ),
        // Made and ended by the database itself; confirmed by whoever may read health and did not enter it.
        new("opening_addresses", RowPolicy.OfClients("opening_addresses"), Staff, Nobody, Health, Job),
        new("own_texts", RowPolicy.Practice, Everybody, Manage, Manage, Manage),
        // Shared tablets; their PINs are nobody's to read.
        new("tablets", RowPolicy.Practice, Manage, Manage, Manage, Job),
        new("tablet_pins", RowPolicy.Practice, Job, Job, Job, Job),
        // What the program keeps for whoever wrote it.
        new("drafts", RowPolicy.OwnPerson, Staff, Staff, Staff, Staff),
        new("write_keys", RowPolicy.OwnWriting, Everybody, Everybody, Job, Job),
        new("work_items", RowPolicy.OwnWriting, Everybody, Everybody, Job, Job),
    ];
}
