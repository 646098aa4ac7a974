using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>Logs a visit at which the bond stays on. What is seen of its edges is what the practice learns its hold from.</summary>
public sealed class LogVisit(ClinicDbFactory databases, WriteOnce writes, DraftStore drafts, CurrentActor current, IClock clock)
{
    /// <returns>Null when there is no such visit in the salons of whoever asks.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        await using var db = databases.Open();
        var found = await (
            from visit in db.Visits.AsNoTracking()
            join client in db.Clients on visit.ClientId equals client.Id
            join salon in db.Salons on visit.SalonId equals salon.Id
            join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
            where visit.Id == visitId && salons.Contains(visit.SalonId)
            select new
            {
                service.Name,
                service.Purpose,
                Client = client.CalledAs ?? client.Name,
                client.Note,
                VisitNote = visit.Note,
                visit.Day,
                visit.ClientId,
                salon.Zone,
                // Lists of one at most: the first of them would be numbered over everybody's rows.
                AllWorn = (
                    from bond in db.Bonds
                    join unit in db.HairSystems on bond.HairSystemId equals unit.Id
                    where bond.ClientId == client.Id && bond.RemovedOn == null
                    select new WornBond(bond.Id, unit.Serial, bond.AppliedOn, bond.DueOn, bond.Lift)
                ).ToList(),
                AllLogged = db
                    .VisitRecords.Where(r => r.VisitId == visit.Id)
                    .Select(r => new LoggedVisit(
                        db.People.Where(p => p.Id == r.RecordedBy).Select(p => p.Name).FirstOrDefault(),
                        r.RecordedAt,
                        r.Note
                    ))
                    .ToList(),
            }
        ).SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var (worn, logged) = (found.AllWorn.FirstOrDefault(), found.AllLogged.FirstOrDefault());
        var today = clock.Today(found.Zone);
        var start = new Input
        {
            VisitId = visitId,
            WornBondId = worn?.BondId,
            MustSayEdges = Input.RequiresEdgeCheck(worn is not null, found.Purpose),
        };
        if (found.Purpose == ServicePurpose.FixLift && worn is not null)
        {
            (start.EdgeUp, start.SpotFixed) = (true, true);
            (start.LiftedOn, start.LiftZone, start.LiftedSince) = (
                worn.Lift?.LiftedOn,
                worn.Lift?.Zone,
                worn.Lift is { LiftedOn: null } ? SinceWhen.NotKnown : null
            );
        }
        var fixing = await FixingAsync(db, found.ClientId, LocalDate.Min(found.Day, today), cancellation);
        // What was written into a log that was taken back; about another bond than the one on the head it would be wrong.
        var draft = logged is null ? await drafts.FindAsync<Input>(nameof(LogVisit), visitId, cancellation) : null;
        return new Screen(
            visitId,
            found.Name,
            found.Purpose,
            found.Client,
            found.Note,
            found.VisitNote,
            found.Zone,
            today,
            worn,
            start,
            logged
        )
        {
            Draft = draft?.WornBondId == start.WornBondId ? draft : null,
            MayBook = StaffPermissions.MayBook(current.Person.StaffRole),
            Fixing = fixing.Count == 0 ? null : fixing.Max(),
            MaySetAside = ClearanceGate.MaySetAside(current.Person),
        };
    }

    /// <exception cref="Refusal">It is logged or called off already, a day is impossible, or bonding is blocked and an edge was put down.</exception>
    /// <exception cref="OvertakenException">Someone changed the visit or the bond at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            var outcome = await writes.RunAsync(key, nameof(LogVisit), input, db => WriteAsync(db, input, cancellation), cancellation);
            await drafts.DeleteForSubjectAsync(nameof(LogVisit), input.VisitId, cancellation);
            return outcome;
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, VisitRecordMap.OnePerVisit))
        {
            throw new Refusal("This visit is logged already.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        var found =
            await db
                .Visits.Where(v => v.Id == input.VisitId && salons.Contains(v.SalonId))
                .Select(v => new
                {
                    Visit = v,
                    v.Record,
                    Salon = db.Salons.First(s => s.Id == v.SalonId),
                    Worn = db.Bonds.FirstOrDefault(b => b.ClientId == v.ClientId && b.RemovedOn == null),
                })
                .SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This visit is not in the book of your salons.");
        if (found.Worn?.Id != input.WornBondId)
            throw new Refusal("Another bond is on this head than when you opened this form. Open the visit again to see it.");
        if (input.SpotFixed == true)
            await RequireNotPausedAsync(db, found.Visit, found.Salon, cancellation);
        var aside = input.SpotFixed == true && await PassAsync(db, found.Visit, found.Salon, input.Looked, cancellation);
        var seen = input.EdgeUp switch
        {
            null => null,
            false => EdgeFindings.Sound,
            true => new EdgeFindings(true, input.LiftedOn, input.LiftZone, input.SpotFixed == true) { Since = input.LiftedSince },
        };
        found.Visit.RecordCare(
            Guid.CreateVersion7(),
            found.Worn,
            seen,
            found.Salon,
            clock.GetCurrentInstant(),
            current.Actor.Id,
            aside ? ClearanceGate.AppendSetAsideLine(input.Note) : input.Note
        );
        return new Outcome(
            found.Visit.ClientId,
            input is { EdgeUp: true, SpotFixed: false },
            found.Worn?.DueOn,
            found.Salon.DayOf(clock.GetCurrentInstant())
        );
    }

    /// <summary>An edge that was put down has something on the scalp, whatever the visit was for; what else is logged here has not.</summary>
    private async Task<bool> PassAsync(ClinicDb db, Visit visit, Salon salon, bool looked, CancellationToken cancellation)
    {
        var day = LocalDate.Min(visit.Day, salon.DayOf(clock.GetCurrentInstant()));
        return ClearanceGate.RequireSkinCheck(await FixingAsync(db, visit.ClientId, day, cancellation), current.Person, looked);
    }

    /// <summary>An edge is put down for the last days before a take-down, and not while there is to be no bond.</summary>
    private async Task RequireNotPausedAsync(ClinicDb db, Visit visit, Salon salon, CancellationToken cancellation)
    {
        var day = LocalDate.Min(visit.Day, salon.DayOf(clock.GetCurrentInstant()));
        var events = await db.LifeEvents.AsNoTracking().Where(e => e.ClientId == visit.ClientId).ToListAsync(cancellation);
        if (BondingPause.On(events, day, daysBeforeEvent: 0) is { Degree: BondingPauseDegree.Begun } pause)
            pause.RequireBondable(wanted: false);
    }

    private static Task<List<ClearanceSeverity>> FixingAsync(ClinicDb db, Guid clientId, LocalDate day, CancellationToken cancellation) =>
        ClearanceStore
            .OfPurposeOnDay(db, ServicePurpose.FixLift, day)
            .Where(c => c.ClientId == clientId)
            .Select(c => c.Kind)
            .ToListAsync(cancellation);

    public sealed record Screen(
        Guid VisitId,
        string Service,
        ServicePurpose Purpose,
        string ClientName,
        string? ClientNote,
        string? VisitNote,
        string Zone,
        LocalDate Today,
        WornBond? Worn,
        Input Start,
        LoggedVisit? Logged
    )
    {
        /// <summary>What the same person wrote before, into a log that was taken back.</summary>
        public Input? Draft { get; init; }

        public bool MayBook { get; init; }

        /// <summary>What speaks against putting an edge down: nothing, a warning, a block.</summary>
        public ClearanceSeverity? Fixing { get; init; }

        /// <summary>Whoever logs may say that they looked and a block is set aside.</summary>
        public bool MaySetAside { get; init; }
    }

    public sealed record WornBond(Guid BondId, string Serial, LocalDate AppliedOn, LocalDate DueOn, Lift? Lift);

    public sealed record LoggedVisit(string? By, Instant At, string? Note);

    public sealed record Input
    {
        public Guid VisitId { get; set; }
        public Guid? WornBondId { get; set; }

        /// <summary>A wash or a lift fix is not logged without saying how the edges were.</summary>
        public bool MustSayEdges { get; set; }

        public bool? EdgeUp { get; set; }
        public LocalDate? LiftedOn { get; set; }

        /// <summary>Or about when.</summary>
        public SinceWhen? LiftedSince { get; set; }

        public LiftZone? LiftZone { get; set; }
        public bool? SpotFixed { get; set; }

        /// <summary>Something speaks against putting an edge down, and they looked.</summary>
        public bool Looked { get; set; }

        public string? Note { get; set; }

        /// <summary>What was typed into a log, to be logged once more. What must be confirmed anew is not in it.</summary>
        public static Input FromRecord(VisitRecord record, Bond? worn, LocalDate day, ServicePurpose purpose) =>
            new()
            {
                VisitId = record.VisitId,
                WornBondId = worn?.Id,
                MustSayEdges = RequiresEdgeCheck(worn is not null, purpose),
                EdgeUp =
                    record.FoundLifted ? true
                    : worn?.LastSoundOn == day ? false
                    : null,
                LiftedOn = record.LiftedOn,
                LiftedSince = record is { FoundLifted: true, LiftedOn: null } ? record.LiftedSince ?? SinceWhen.NotKnown : null,
                LiftZone = record.LiftZone,
                SpotFixed = record.FoundLifted ? worn?.Lift?.SpotFixed : null,
                Note = ClearanceGate.StripSetAsideLine(record.Note),
            };

        public static bool RequiresEdgeCheck(bool worn, ServicePurpose purpose) =>
            worn && purpose is ServicePurpose.WashAndStyle or ServicePurpose.FixLift;
    }

    /// <param name="StillUp">An edge is up and was not put down: a rebond is wanted now.</param>
    public sealed record Outcome(Guid ClientId, bool StillUp, LocalDate? DueOn, LocalDate Today);
}
