using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>What of the practice is set up and what is missing.</summary>
public sealed class Overview(ClinicDbFactory databases, CurrentActor current)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var isOwner = current.Person.StaffRole == StaffRole.Owner;
        return await db
            .PracticeSettings.AsNoTracking()
            .Select(s => new Screen(s.Name, s.IsDemo && isOwner, s.GuideFinishedAt == null && isOwner)
            {
                Salons = db.Salons.Count(x => !x.Retired),
                SalonsWithoutHours = db.Salons.Where(x => !x.Retired && !x.Hours.Any()).Select(x => x.Name).ToList(),
                SalonsWithoutChairs = db
                    .Salons.Where(x => !x.Retired && !db.Chairs.Any(c => c.SalonId == x.Id && !c.Retired))
                    .Select(x => x.Name)
                    .ToList(),
                Chairs = db.Chairs.Count(c => !c.Retired),
                People = db.People.Count(p => !p.Left),
                PeopleWithoutAccount = db.People.Count(p =>
                    !p.Left && !db.Users.Any(u => u.PracticeId == p.PracticeId && u.PersonId == p.Id)
                ),
                PeopleWithSkills = db.People.Count(p => !p.Left && p.Skills.Any()),
                Services = db.ServiceKinds.Count(k => !k.Retired),
                RebondServices = db.ServiceKinds.Count(k => !k.Retired && k.Purpose == ServicePurpose.Rebond),
                HoldWindows = db.HoldWindowRules.Count(),
                FitsAnything = db.HoldWindowRules.Any(r => r.BaseMaterialId == null && r.AdhesiveId == null && r.Attachment == null),
                Adhesives = db.Products.Count(p => !p.Retired && (p.Kind == ProductKind.Adhesive || p.Kind == ProductKind.Tape)),
                Products = db.Products.Count(p => !p.Retired),
                UnitKinds = db.UnitKinds.Count(k => !k.Retired),
                KindsWithSpares = db.UnitKinds.Count(k => !k.Retired && k.Spares > 0),
                Clients = db.Clients.Count(),
            })
            .SingleAsync(cancellation);
    }

    public sealed record Screen(string Name, bool CanThrowDemoAway, bool GuideUnfinished)
    {
        public int Salons { get; init; }
        public IReadOnlyList<string> SalonsWithoutHours { get; init; } = [];
        public IReadOnlyList<string> SalonsWithoutChairs { get; init; } = [];
        public int Chairs { get; init; }
        public int People { get; init; }
        public int PeopleWithoutAccount { get; init; }
        public int PeopleWithSkills { get; init; }
        public int Services { get; init; }
        public int RebondServices { get; init; }
        public int HoldWindows { get; init; }

        /// <summary>Whether a hold window stands for every base and adhesive no other names.</summary>
        public bool FitsAnything { get; init; }

        public int Adhesives { get; init; }
        public int Products { get; init; }
        public int UnitKinds { get; init; }

        /// <summary>Kinds of which a spare is always to be ready.</summary>
        public int KindsWithSpares { get; init; }

        public int Clients { get; init; }
    }
}
