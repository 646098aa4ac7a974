using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Keys;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;

namespace HairClinic.Web.Data;

public sealed partial class ClinicDb
{
    // Unfenced: read before the actor is known.
    public DbSet<PracticeRow> Practices => Set<PracticeRow>();
    public DbSet<SignInLink> SignInLinks => Set<SignInLink>();
    public DbSet<SignInSession> SignInSessions => Set<SignInSession>();
    public DbSet<LinkAsk> LinkAsks => Set<LinkAsk>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();
    public DbSet<MasterKeyMark> MasterKeyMarks => Set<MasterKeyMark>();

    // Fenced: of the acting practice only.
    public DbSet<PracticeSettings> PracticeSettings => Set<PracticeSettings>();
    public DbSet<Salon> Salons => Set<Salon>();
    public DbSet<SalonHours> SalonHours => Set<SalonHours>();
    public DbSet<SalonClosure> SalonClosures => Set<SalonClosure>();
    public DbSet<Person> People => Set<Person>();
    public DbSet<PersonSalon> PersonSalons => Set<PersonSalon>();
    public DbSet<PersonSkill> PersonSkills => Set<PersonSkill>();
    public DbSet<WorkSpell> WorkSpells => Set<WorkSpell>();
    public DbSet<PersonAbsence> PersonAbsences => Set<PersonAbsence>();
    public DbSet<Chair> Chairs => Set<Chair>();
    public DbSet<Workshop> Workshops => Set<Workshop>();
    public DbSet<WorkshopClosure> WorkshopClosures => Set<WorkshopClosure>();
    public DbSet<Client> Clients => Set<Client>();
    public DbSet<ClientRequest> ClientRequests => Set<ClientRequest>();
    public DbSet<ClientGrant> ClientGrants => Set<ClientGrant>();
    public DbSet<LifeEvent> LifeEvents => Set<LifeEvent>();
    public DbSet<CareFact> CareFacts => Set<CareFact>();
    public DbSet<ContactNote> ContactNotes => Set<ContactNote>();
    public DbSet<ClientMerge> ClientMerges => Set<ClientMerge>();
    public DbSet<ClientPreference> ClientPreferences => Set<ClientPreference>();
    public DbSet<Guardian> Guardians => Set<Guardian>();
    public DbSet<OpeningAddress> OpeningAddresses => Set<OpeningAddress>();
    public DbSet<CalendarFeed> CalendarFeeds => Set<CalendarFeed>();
    public DbSet<Tablet> Tablets => Set<Tablet>();
    public DbSet<TabletPin> TabletPins => Set<TabletPin>();
    public DbSet<OwnText> OwnTexts => Set<OwnText>();
    public DbSet<ClientSignIn> ClientSignIns => Set<ClientSignIn>();
    public DbSet<BaseMaterial> BaseMaterials => Set<BaseMaterial>();
    public DbSet<UnitKind> UnitKinds => Set<UnitKind>();
    public DbSet<HairSystem> HairSystems => Set<HairSystem>();
    public DbSet<PromiseRevision> PromiseRevisions => Set<PromiseRevision>();
    public DbSet<UnitRepair> UnitRepairs => Set<UnitRepair>();
    public DbSet<UnitArrival> UnitArrivals => Set<UnitArrival>();
    public DbSet<UnitStep> UnitSteps => Set<UnitStep>();
    public DbSet<UnitQuestion> UnitQuestions => Set<UnitQuestion>();
    public DbSet<UnitLoan> UnitLoans => Set<UnitLoan>();
    public DbSet<WorkshopOrder> WorkshopOrders => Set<WorkshopOrder>();
    public DbSet<OrderPromise> OrderPromises => Set<OrderPromise>();
    public DbSet<WearFactor> WearFactors => Set<WearFactor>();
    public DbSet<StoredFit> StoredFits => Set<StoredFit>();
    public DbSet<StoredLead> StoredLeads => Set<StoredLead>();
    public DbSet<StoredWatch> StoredWatches => Set<StoredWatch>();
    public DbSet<WatchAlarm> WatchAlarms => Set<WatchAlarm>();
    public DbSet<StoredPreparation> StoredPreparations => Set<StoredPreparation>();
    public DbSet<DateCheck> DateChecks => Set<DateCheck>();
    public DbSet<ReorderPlan> ReorderPlans => Set<ReorderPlan>();
    public DbSet<StoredPageResult> StoredPageResults => Set<StoredPageResult>();

    public DbSet<LoadForecast> LoadForecasts => Set<LoadForecast>();
    public DbSet<OrderForecast> OrderForecasts => Set<OrderForecast>();
    public DbSet<Recalculation> Recalculations => Set<Recalculation>();
    public DbSet<HoldWindowRule> HoldWindowRules => Set<HoldWindowRule>();
    public DbSet<Bond> Bonds => Set<Bond>();
    public DbSet<BondProduct> BondProducts => Set<BondProduct>();
    public DbSet<Product> Products => Set<Product>();
    public DbSet<ProductLot> ProductLots => Set<ProductLot>();
    public DbSet<ServiceKind> ServiceKinds => Set<ServiceKind>();
    public DbSet<ServiceStep> ServiceSteps => Set<ServiceStep>();
    public DbSet<Visit> Visits => Set<Visit>();
    public DbSet<VisitSegment> VisitSegments => Set<VisitSegment>();
    public DbSet<VisitRecord> VisitRecords => Set<VisitRecord>();
    public DbSet<TakeDownProduct> TakeDownProducts => Set<TakeDownProduct>();
    public DbSet<WriteKey> WriteKeys => Set<WriteKey>();
    public DbSet<Draft> Drafts => Set<Draft>();
    public DbSet<WorkItem> WorkItems => Set<WorkItem>();
    public DbSet<FindWord> FindWords => Set<FindWord>();
    public DbSet<ConsentText> ConsentTexts => Set<ConsentText>();
    public DbSet<Consent> Consents => Set<Consent>();
    public DbSet<Erasure> Erasures => Set<Erasure>();
    public DbSet<RetentionRule> RetentionRules => Set<RetentionRule>();
    public DbSet<ClientKey> ClientKeys => Set<ClientKey>();
    public DbSet<AccessNote> AccessNotes => Set<AccessNote>();
    public DbSet<AccessHead> AccessHeads => Set<AccessHead>();
    public DbSet<HealthAnswer> HealthAnswers => Set<HealthAnswer>();
    public DbSet<SealedDraft> SealedDrafts => Set<SealedDraft>();
    public DbSet<Clearance> Clearances => Set<Clearance>();
    public DbSet<Photo> Photos => Set<Photo>();
}
