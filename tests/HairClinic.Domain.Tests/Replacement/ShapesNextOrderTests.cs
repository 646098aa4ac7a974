using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class ShapesNextOrderTests
{
    [Theory]
    [InlineData(typeof(HairSystem), true)]
    [InlineData(typeof(UnitRepair), true)]
    [InlineData(typeof(PromiseRevision), true)]
    [InlineData(typeof(CareFact), true)]
    [InlineData(typeof(Bond), true)]
    [InlineData(typeof(Client), false)]
    [InlineData(typeof(LifeEvent), false)]
    public void What_comes_or_goes_asks_for_a_new_plan(Type entity, bool asks) =>
        Assert.Equal(asks, ShapesNextOrderAttribute.IsChangedBy(entity, changed: null));

    [Theory]
    [InlineData(typeof(HairSystem), nameof(HairSystem.State), true)]
    [InlineData(typeof(UnitRepair), nameof(UnitRepair.DoneOn), true)]
    [InlineData(typeof(PromiseRevision), nameof(PromiseRevision.PromisedFor), true)]
    [InlineData(typeof(CareFact), nameof(CareFact.Habits), true)]
    [InlineData(typeof(Bond), nameof(Bond.RemovedOn), true)]
    [InlineData(typeof(Bond), nameof(Bond.LastSoundOn), false)]
    [InlineData(typeof(Client), nameof(Client.HomeSalonId), true)]
    [InlineData(typeof(Client), nameof(Client.LeftOn), true)]
    [InlineData(typeof(Client), nameof(Client.MergedIntoId), true)]
    [InlineData(typeof(Client), nameof(Client.Name), false)]
    [InlineData(typeof(LifeEvent), nameof(LifeEvent.From), false)]
    public void What_changes_asks_for_a_new_plan_where_the_order_depends_on_it(Type entity, string property, bool asks) =>
        Assert.Equal(asks, ShapesNextOrderAttribute.IsChangedBy(entity, ["Version", property]));

    // The save finds the client by one of these.
    [Fact]
    public void Whatever_asks_says_whose_order_it_is()
    {
        var asking = typeof(PracticeOwned).Assembly.GetTypes().Where(t => t.IsDefined(typeof(ShapesNextOrderAttribute), inherit: false));

        Assert.All(
            asking.Where(t => t != typeof(Client)),
            t => Assert.True(t.GetProperty("ClientId") is not null || t.GetProperty("HairSystemId") is not null)
        );
    }
}
