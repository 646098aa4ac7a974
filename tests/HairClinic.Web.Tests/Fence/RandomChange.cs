using HairClinic.Domain.Practices;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Tests.Fence;

/// <summary>One change that only some may make, on a client at random, and whether this actor may, by the rules as they are written.</summary>
internal sealed record RandomChange(string What, string Sql, bool May)
{
    public static readonly string[] Kinds =
    [
        "moves",
        "sends away",
        "folds",
        "leaves",
        "erases",
        "guardian",
        "merge",
        "erasure",
        "visit",
        "hands on",
    ];

    public static RandomChange Make(RandomWorld world, RandomWorld.Asking by, Random random)
    {
        var practice = by.Practice;
        var role = (by.Actor as PersonActor)?.StaffRole;
        var (desk, manage) = (
            role is StaffRole.Owner or StaffRole.Manager or StaffRole.FrontDesk,
            role is StaffRole.Owner or StaffRole.Manager
        );
        // Half of the time somebody at hand, else anybody of either practice.
        var client = Pick(world, by, random);
        var other = Pick(world, by, random);
        if (other == client)
            other = world.Everybody.First(c => c != client);
        var home = practice.Clients.FirstOrDefault(c => c.Id == client)?.HomeSalonId;
        var atHome = by.AtHome.Contains(client);
        var both = atHome && by.AtHome.Contains(other);
        var own = by.Salons.Count > 0 ? by.Salons.ElementAt(random.Next(by.Salons.Count)) : practice.Salons[0].Id;
        var anySalon = practice.Salons[random.Next(practice.Salons.Count)].Id;
        var visible = by.Allowed.Contains(client);
        var row = $"'{practice.Id}', gen_random_uuid()";
        return Kinds[random.Next(Kinds.Length)] switch
        {
            // Told to stay where they are nothing changes, and whoever sees them may say so.
            "moves" => new(
                "moves",
                $"update clients set home_salon_id = '{own}' where id = '{client}'",
                desk && visible && (atHome || home == own)
            ),
            "sends away" => new(
                "sends away",
                $"update clients set home_salon_id = '{anySalon}' where id = '{client}'",
                desk && visible && (home == anySalon || atHome && (role == StaffRole.Owner || by.Salons.Contains(anySalon)))
            ),
            "folds" => new("folds", $"update clients set merged_into_id = '{other}' where id = '{client}'", desk && both),
            "leaves" => new("leaves", $"update clients set left_on = '2027-01-01' where id = '{client}'", desk && atHome),
            "erases" => new("erases", $"update clients set erased_at = now() where id = '{client}'", manage && atHome),
            "guardian" => new(
                "guardian",
                $"insert into guardians (practice_id, id, client_id, name, email) values ({row}, '{client}', 'X', 'x@example.test')",
                desk && atHome
            ),
            "merge" => new(
                "merge",
                $"insert into client_merges (practice_id, id, kept_id, folded_id, merged_at, merged_by, moved) values ({row}, '{client}', '{other}', now(), '{practice.Somebody}', '{{}}')",
                desk && both
            ),
            "erasure" => new(
                "erasure",
                $"insert into erasures (practice_id, id, client_id, at, rule_version, counts) values ({row}, '{client}', now(), '2', '{{}}')",
                manage && atHome
            ),
            "visit" => new(
                "visit",
                $"""
                insert into visits (practice_id, id, client_id, salon_id, service_kind_id, day, starts_at, ends_at, state, holds_chair, holds_client)
                values ({row}, '{client}', '{anySalon}', '{practice.Service}', '2027-03-20', '2027-03-20T10:00Z', '2027-03-20T11:00Z', 'Booked', false, false)
                """,
                role switch
                {
                    null or StaffRole.Owner or StaffRole.Trainee => visible,
                    _ => visible && (by.Salons.Contains(anySalon) || atHome),
                }
            ),
            _ => new("hands on", $"update life_events set client_id = '{other}' where client_id = '{client}'", role is not null && both),
        };
    }

    private static Guid Pick(RandomWorld world, RandomWorld.Asking by, Random random)
    {
        var near = random.Next(2) == 0 ? by.AtHome : by.Allowed;
        return random.Next(2) == 0 && near.Count > 0
            ? near.ElementAt(random.Next(near.Count))
            : world.Everybody[random.Next(world.Everybody.Count)];
    }
}
