using HairClinic.Domain.Replay;

namespace HairClinic.Web.Learning;

public sealed partial class ReorderFacts
{
    /// <summary>As it would have been with what was known on an earlier day; the practice's rows are today's.</summary>
    public static ReorderFacts FromPast(PastRecords records, PastKnowledge known) =>
        new(
            records.Settings,
            records.Salons,
            records.Workshops,
            records.Kinds,
            known.Leads,
            new WearModelPair(known.Hold, known.Life),
            known.Preparation
        );

    /// <summary>What would be said of a client's next order if this were their hair.</summary>
    /// <param name="client">What the records say of them.</param>
    /// <returns>Null where nothing is advised: they have lapsed, or never wore anything.</returns>
    public ReorderOutlook? OutlookOf(ReorderRule rule, ClientUnits client, ReplayStanding hair)
    {
        var today = client.Today;
        if (LapsedClientRule.HasLapsed(client.LastWornOn, today) || client.ToRepeat is not { } repeated)
            return null;
        var (orders, next) = (LeadTimesOn(today), Kinds[repeated.UnitKindId]);
        var effect = EffectOf(client, next, client.CovariatesOf(null, next));
        var question = QuestionOf(
            effect,
            next,
            orders,
            [.. hair.InHouse.Select(u => LifeOf(u.UnitKindId, u.Worn))],
            [
                .. hair
                    .OnOrder.OrderBy(o => o.OrderedOn)
                    .Select(o => new UnitOnOrder(
                        LifeOf(o.Unit.UnitKindId, 0),
                        orders.LeadTimeLeft(o.Unit.UnitKindId, o.OrderedOn),
                        orders.WorkshopDaysOf(o.Unit.UnitKindId)
                    )),
            ]
        );
        return ReorderPlanner.Plan(rule, question, today, next.Id, LifeOf(next.Id, 0), _opening[client.SalonId]);

        RemainingLife LifeOf(Guid kindId, int worn) =>
            InHandOf(effect, Kinds[kindId], client.CovariatesOf(null, Kinds[kindId]), worn, repairedAt: null);
    }
}
