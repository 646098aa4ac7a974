using static HairClinic.Web.Data.Sql.ActorRoleFlags;

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
        new("practice_settings", RowConditions.Practice, Everybody, Owner | Job, Manage, Job),
        new("salons", RowConditions.Practice, Everybody, Manage, Manage, Job),
        new("salon_hours", RowConditions.Practice, Everybody, Manage, Manage, Manage),
        new("salon_closures", RowConditions.Practice, Everybody, Manage, Manage, Manage),
        new("service_kinds", RowConditions.Practice, Everybody, Manage, Manage, Job),
        new("service_steps", RowConditions.Practice, Everybody, Manage, Manage, Manage),
        new("base_materials", RowConditions.Practice, Everybody, Manage, Manage, Job),
        new("unit_kinds", RowConditions.Practice, Everybody, Manage, Manage, Job),
        new("hold_window_rules", RowConditions.Practice, Everybody, Manage, Manage, Manage),
        new("wear_factors", RowConditions.Practice, Staff, Manage, Manage, Job),
        // What the practice's own records tell, calculated each night.
        new("stored_fits", RowConditions.Practice, Everybody, Job, Job, Job),
        new("stored_leads", RowConditions.Practice, Staff, Job, Job, Job),
        new("load_forecasts", RowConditions.Practice, Manage, Job, Job, Job),
        new("order_forecasts", RowConditions.Practice, Manage, Job, Job, Job),
        new("stored_page_results", RowConditions.OwnSalons, Manage, Manage, Job, Job),
        new("recalculations", RowConditions.Practice, Manage, Manage, Manage, Job),
        new("reorder_plans", RowConditions.OfClients("reorder_plans"), Staff, Job, Job, Job),
        new("products", RowConditions.Practice, Everybody, Manage, Manage, Job),
        new("product_lots", RowConditions.Practice, Staff, Manage | ActorRoleFlags.Chair, Manage | ActorRoleFlags.Chair, Manage),
        new("workshops", RowConditions.Practice, Staff, Manage, Manage, Job),
        new("workshop_closures", RowConditions.Practice, Staff, Manage, Manage, Manage),
        new("chairs", RowConditions.Practice, Staff, Manage, Manage, Job),
        new("people", RowConditions.Practice, Staff, Manage, Manage, Job),
        new("person_salons", RowConditions.Practice, Staff, Manage, Manage, Manage),
        new("person_skills", RowConditions.Practice, Staff, Manage, Manage, Manage),
        new("person_absences", RowConditions.Practice, Staff, Manage, Manage, Manage),
        new("work_spells", RowConditions.Practice, Staff, Manage, Manage, Manage),
        // Clients and what belongs to them.
        new("clients", RowConditions.ClientRow, Everybody, Desk, Desk, Job),
        new("client_grants", RowConditions.Grants, Staff, Desk, Desk, Job) { Writes = RowConditions.AtHome },
        new("client_requests", RowConditions.OfClients("client_requests"), Desk, Job, Desk, Job) { Writes = RowConditions.AtHome },
        new("client_merges", RowConditions.OfClients("client_merges", "kept_id"), Desk, Desk, Desk, Job)
        {
            Writes = RowConditions.BothAtHome,
        },
        new("life_events", RowConditions.ConfidentialOfClients("life_events"), Everybody, Staff, Staff, Staff),
        new("care_facts", RowConditions.ConfidentialOfClients("care_facts"), Everybody, Staff, Staff, Job),
        new("contact_notes", RowConditions.OfClients("contact_notes"), Staff, Desk, Desk, Job),
        new("find_words", RowConditions.FindWords, Staff, Desk, Desk, Desk),
        // Units, bonds, visits.
        new("hair_systems", RowConditions.OfClientsOrStock("hair_systems"), Everybody, Desk | Stylist, Staff, Job),
        new(
            "promise_revisions",
            RowConditions.PartOf("promise_revisions", "hair_system_id", "hair_systems"),
            Everybody,
            Desk | Stylist,
            Desk | Stylist,
            Job
        ),
        new("unit_repairs", RowConditions.PartOf("unit_repairs", "hair_system_id", "hair_systems"), Everybody, Staff, Staff, Job),
        new("bonds", RowConditions.OfClients("bonds"), Everybody, ActorRoleFlags.Chair | Manager, Everybody, ActorRoleFlags.Chair),
        new(
            "bond_products",
            RowConditions.PartOf("bond_products", "bond_id", "bonds"),
            Everybody,
            ActorRoleFlags.Chair | Manager,
            ActorRoleFlags.Chair | Manager,
            ActorRoleFlags.Chair
        ),
        new("visits", RowConditions.Visits, Everybody, Everybody, Everybody, Job) { Written = RowConditions.WrittenVisits },
        new("visit_segments", RowConditions.PartOf("visit_segments", "visit_id", "visits"), Everybody, Everybody, Everybody, Everybody),
        new("visit_records", RowConditions.VisitRecords, Everybody, ActorRoleFlags.Chair | Manager, Staff, ActorRoleFlags.Chair),
        // What a client confided, and what was agreed about it.
        new("clearances", RowConditions.OfClients("clearances"), Everybody, Health, Health, Health),
        new(
            "client_keys",
            RowConditions.ConfidentialOfClients("client_keys"),
            Health | Trainee | ActorRoleFlags.Client,
            Health,
            Manage,
            Job
        ),
        new(
            "health_answers",
            RowConditions.ConfidentialOfClients("health_answers"),
            Health | ActorRoleFlags.Client,
            Health,
            Manage,
            Manage
        ),
        new("photos", RowConditions.Photos, Health | Trainee | ActorRoleFlags.Client, Health, Health, Manage),
        new("sealed_drafts", RowConditions.OwnPerson, Health, Health, Health, Health),
        new("consent_texts", RowConditions.Practice, Everybody, Everybody, Nobody, Nobody),
        new("consents", RowConditions.ConfidentialOfClients("consents"), Everybody, Everybody, Nobody, Nobody),
        new("erasures", RowConditions.OfClients("erasures"), Manage, Manage, Nobody, Nobody) { Writes = RowConditions.Kept },
        new("retention_rules", RowConditions.Practice, Manage, Owner | Job, Owner | Job, Owner | Job),
        // Whoever opens something adds a line; owners read them all, clients those about themselves.
        new("access_heads", RowConditions.Practice, Everybody, Everybody, Everybody, Nobody),
        new("access_notes", RowConditions.ConfidedWriting, Everybody, Everybody, Nobody, Nobody)
        {
            Writes = RowConditions.OwnWritingOrAboutOneself,
        },
        // A client's own page.
        new(
            "client_preferences",
            RowConditions.OfClients("client_preferences"),
            Everybody,
            Desk | ActorRoleFlags.Client,
            Desk | ActorRoleFlags.Client,
            Job
        ),
        new("client_sign_ins", RowConditions.OfClients("client_sign_ins"), ActorRoleFlags.Client | Job, Job, Job, Job),
        new("guardians", RowConditions.ConfidentialOfClients("guardians"), Desk | Stylist | ActorRoleFlags.Client, Desk, Desk, Desk)
        {
            Writes = RowConditions.AtHome,
        },
        new(
            "calendar_feeds",
            RowConditions.OfClients("calendar_feeds"),
            ActorRoleFlags.Client | Job,
            ActorRoleFlags.Client | Job,
            ActorRoleFlags.Client | Job,
            ActorRoleFlags.Client | Job
        ),
        // Made and ended by the database itself; confirmed by whoever may read health and did not enter it.
        new("opening_addresses", RowConditions.OfClients("opening_addresses"), Staff, Nobody, Health, Job),
        new("own_texts", RowConditions.Practice, Everybody, Manage, Manage, Manage),
        // Shared tablets; their PINs are nobody's to read.
        new("tablets", RowConditions.Practice, Manage, Manage, Manage, Job),
        new("tablet_pins", RowConditions.Practice, Job, Job, Job, Job),
        // What the program keeps for whoever wrote it.
        new("drafts", RowConditions.OwnPerson, Staff, Staff, Staff, Staff),
        new("write_keys", RowConditions.OwnWriting, Everybody, Everybody, Job, Job),
        new("work_items", RowConditions.OwnWriting, Everybody, Everybody, Job, Job),
    ];
}
