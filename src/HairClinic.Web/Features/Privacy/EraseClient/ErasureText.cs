namespace HairClinic.Web.Features.Privacy;

/// <summary>What an erasure does to a table, in words; each is a localiser's key. A table without words of its own is named as it is.</summary>
public static class ErasureText
{
    public static string Of(string key) =>
        key switch
        {
            "clients: Renamed" => "Name and code: a pseudonym takes their place",
            "clients: Emptied" => "Phone, e-mail, birth date, what they are called, note",
            "find_words: TakenOut" => "Words they are found by",
            "contact_notes: TakenOut" => "Notes on calls and messages",
            "life_events: TakenOut" => "Dates in their life",
            "care_facts: TakenOut" => "Skin and habits",
            "drafts: TakenOut" or "sealed_drafts: TakenOut" => "Forms begun and not sent",
            "health_answers: TakenOut" => "Health answers",
            "clearances: TakenOut" => "What had to be asked about first",
            "photos: TakenOut" => "Photos",
            "opening_addresses: TakenOut" => "E-mail addresses that open their pages",
            "client_sign_ins: TakenOut" => "Where they are signed in",
            "calendar_feeds: TakenOut" => "Calendar addresses",
            "reorder_plans: TakenOut" => "When their next unit is to be ordered",
            "client_preferences: TakenOut" => "What they chose on their own page",
            "client_requests: TakenOut" => "Asks of other salons to see them",
            "guardians: TakenOut" => "Who looks after them",
            "client_grants: Emptied" => "Why other salons were let in",
            "unit_repairs: Emptied" => "Notes on repairs",
            "sign_in_links: TakenOut" => "Sign-in links",
            "write_keys: TakenOut" => "Kept answers that name them",
            "work_items: TakenOut" => "Letters and work that name them",
            "visits: CalledOff" => "Visits ahead, called off",
            "visit_segments: CalledOff" => "Hands set free",
            "visits: Emptied" => "Notes on visits",
            "visit_records: Emptied" => "Notes of what was done",
            "hair_systems: Emptied" => "Why units were put away",
            _ => key,
        };

    /// <summary>What stays of which table.</summary>
    public static string Kept(string table) =>
        table switch
        {
            "clients" => "The record itself, under a pseudonym and a new code",
            "visits" => "Visits: when, where, what for",
            "visit_records" => "What was seen and done, without notes",
            "hair_systems" => "Units with their serials, dates and prices",
            "bonds" => "Bonds with products and lots",
            "consents" => "What was agreed to and taken back",
            "erasures" => "That the record was erased",
            "access_notes" => "Who opened the record, by number",
            _ => "",
        };
}
