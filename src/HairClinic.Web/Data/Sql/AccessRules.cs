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
        new("practice_settings", RowPolicyConditions.Practice, Everybody, Owner | Job, Manage, Job),
        new("salons", RowPolicyConditions.Practice, Everybody, Manage, Manage, Job),
        new("salon_hours", RowPolicyConditions.Practice, Everybody, Manage, Manage, Manage),
        new("salon_closures", RowPolicyConditions.Practice, Everybody, Manage, Manage, Manage),
        new("service_kinds", RowPolicyConditions.Practice, Everybody, Manage, Manage, Job),
        new("service_steps", RowPolicyConditions.Practice, Everybody, Manage, Manage, Manage),
        new("base_materials", RowPolicyConditions.Practice, Everybody, Manage, Manage, Job),
        new("unit_kinds", RowPolicyConditions.Practice, Everybody, Manage, Manage, Job),
        new("hold_window_rules", RowPolicyConditions.Practice, Everybody, Manage, Manage, Manage),
        new("wear_factors", RowPolicyConditions.Practice, Staff, Manage, Manage, Job),
        // What the practice's own records tell, calculated each night.
        new("stored_fits", RowPolicyConditions.Practice, Everybody, Job, Job, Job),
        new("stored_leads", RowPolicyConditions.Practice, Staff, Job, Job, Job),
        new("load_forecasts", RowPolicyConditions.Practice, Manage, Job, Job, Job),
        new("order_forecasts", RowPolicyConditions.Practice, Manage, Job, Job, Job),
        new("stored_page_results", RowPolicyConditions.OwnSalons, Manage, Manage, Job, Job),
        new("recalculations", RowPolicyConditions.Practice, Manage, Manage, Manage, Job),
        new("reorder_plans", RowPolicyConditions.OfClients("reorder_plans"), Staff, Job, Job, Job),
        new("products", RowPolicyConditions.Practice, Everybody, Manage, Manage, Job),
        new("product_lots", RowPolicyConditions.Practice, Staff, Manage | ActorRoles.Chair, Manage | ActorRoles.Chair, Manage),
        new("workshops", RowPolicyConditions.Practice, Staff, Manage, Manage, Job),
        new("workshop_closures", RowPolicyConditions.Practice, Staff, Manage, Manage, Manage),
        new("chairs", RowPolicyConditions.Practice, Staff, Manage, Manage, Job),
        new("people", RowPolicyConditions.Practice, Staff, Manage, Manage, Job),
        new("person_salons", RowPolicyConditions.Practice, Staff, Manage, Manage, Manage),
        new("person_skills", RowPolicyConditions.Practice, Staff, Manage, Manage, Manage),
        new("person_absences", RowPolicyConditions.Practice, Staff, Manage, Manage, Manage),
        new("work_spells", RowPolicyConditions.Practice, Staff, Manage, Manage, Manage),
        // Clients and what belongs to them.
        new("clients", RowPolicyConditions.ClientRow, Everybody, Desk, Desk, Job),
        new("client_grants", RowPolicyConditions.Grants, Staff, Desk, Desk, Job) { Writes = RowPolicyConditions.AtHome },
        new("client_requests", RowPolicyConditions.OfClients("client_requests"), Desk, Job, Desk, Job)
        {
            Writes = RowPolicyConditions.AtHome,
        },
        new("client_merges", RowPolicyConditions.OfClients("client_merges", "kept_id"), Desk, Desk, Desk, Job)
        {
            Writes = RowPolicyConditions.BothAtHome,
        },
        new("life_events", RowPolicyConditions.ConfidentialOfClients("life_events"), Everybody, Staff, Staff, Staff),
        new("care_facts", RowPolicyConditions.ConfidentialOfClients("care_facts"), Everybody, Staff, Staff, Job),
        new("contact_notes", RowPolicyConditions.OfClients("contact_notes"), Staff, Desk, Desk, Job),
        new("find_words", RowPolicyConditions.FindWords, Staff, Desk, Desk, Desk),
        // Units, bonds, visits.
        new("hair_systems", RowPolicyConditions.OfClientsOrStock("hair_systems"), Everybody, Desk | Stylist, Staff, Job),
        new(
            "promise_revisions",
            RowPolicyConditions.PartOf("promise_revisions", "hair_system_id", "hair_systems"),
            Everybody,
            Desk | Stylist,
            Desk | Stylist,
            Job
        ),
        new("unit_repairs", RowPolicyConditions.PartOf("unit_repairs", "hair_system_id", "hair_systems"), Everybody, Staff, Staff, Job),
        new("bonds", RowPolicyConditions.OfClients("bonds"), Everybody, ActorRoles.Chair | Manager, Everybody, ActorRoles.Chair),
        new(
            "bond_products",
            RowPolicyConditions.PartOf("bond_products", "bond_id", "bonds"),
            Everybody,
            ActorRoles.Chair | Manager,
            ActorRoles.Chair | Manager,
            ActorRoles.Chair
        ),
        new("visits", RowPolicyConditions.Visits, Everybody, Everybody, Everybody, Job) { Written = RowPolicyConditions.WrittenVisits },
        new(
            "visit_segments",
            RowPolicyConditions.PartOf("visit_segments", "visit_id", "visits"),
            Everybody,
            Everybody,
            Everybody,
            Everybody
        ),
        new("visit_records", RowPolicyConditions.VisitRecords, Everybody, ActorRoles.Chair | Manager, Staff, ActorRoles.Chair),
        // What a client confided, and what was agreed about it.
        new("clearances", RowPolicyConditions.OfClients("clearances"), Everybody, Health, Health, Health),
        new(
            "client_keys",
            RowPolicyConditions.ConfidentialOfClients("client_keys"),
            Health | Trainee | ActorRoles.Client,
            Health,
            Manage,
            Job
        ),
        new(
            "health_answers",
            RowPolicyConditions.ConfidentialOfClients("health_answers"),
            Health | ActorRoles.Client,
            Health,
            Manage,
            Manage
        ),
        new("photos", RowPolicyConditions.Photos, Health | Trainee | ActorRoles.Client, Health, Health, Manage),
        new("sealed_drafts", RowPolicyConditions.OwnPerson, Health, Health, Health, Health),
        new("consent_texts", RowPolicyConditions.Practice, Everybody, Everybody, Nobody, Nobody),
        new("consents", RowPolicyConditions.ConfidentialOfClients("consents"), Everybody, Everybody, Nobody, Nobody),
        new("erasures", RowPolicyConditions.OfClients("erasures"), Manage, Manage, Nobody, Nobody) { Writes = RowPolicyConditions.Kept },
        new("retention_rules", RowPolicyConditions.Practice, Manage, Owner | Job, Owner | Job, Owner | Job),
        // Whoever opens something adds a line; owners read them all, clients those about themselves.
        new("access_heads", RowPolicyConditions.Practice, Everybody, Everybody, Everybody, Nobody),
        new("access_notes", RowPolicyConditions.ConfidedWriting, Everybody, Everybody, Nobody, Nobody)
        {
            Writes = RowPolicyConditions.OwnWritingOrAboutOneself,
        },
        // A client's own page.
        new(
            "client_preferences",
            RowPolicyConditions.OfClients("client_preferences"),
            Everybody,
            Desk | ActorRoles.Client,
            Desk | ActorRoles.Client,
            Job
        ),
        new("client_sign_ins", RowPolicyConditions.OfClients("client_sign_ins"), ActorRoles.Client | Job, Job, Job, Job),
        new("guardians", RowPolicyConditions.ConfidentialOfClients("guardians"), Desk | Stylist | ActorRoles.Client, Desk, Desk, Desk)
        {
            Writes = RowPolicyConditions.AtHome,
        },
        new(
            "calendar_feeds",
            RowPolicyConditions.OfClients("calendar_feeds"),
            ActorRoles.Client | Job,
            ActorRoles.Client | Job,
            ActorRoles.Client | Job,
            ActorRoles.Client | Job
        ),
        // Made and ended by the database itself; confirmed by whoever may read health and did not enter it.
        new("opening_addresses", RowPolicyConditions.OfClients("opening_addresses"), Staff, Nobody, Health, Job),
        new("own_texts", RowPolicyConditions.Practice, Everybody, Manage, Manage, Manage),
        // Shared tablets; their PINs are nobody's to read.
        new("tablets", RowPolicyConditions.Practice, Manage, Manage, Manage, Job),
        new("tablet_pins", RowPolicyConditions.Practice, Job, Job, Job, Job),
        // What the program keeps for whoever wrote it.
        new("drafts", RowPolicyConditions.OwnPerson, Staff, Staff, Staff, Staff),
        new("write_keys", RowPolicyConditions.OwnWriting, Everybody, Everybody, Job, Job),
        new("work_items", RowPolicyConditions.OwnWriting, Everybody, Everybody, Job, Job),
    ];
}
