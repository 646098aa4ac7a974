using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Settings;

/// <summary>A practice with two salons, an owner, and a manager who works in the first salon only.</summary>
public abstract class PracticeTest(PgServer server)
{
    protected Person Owner { get; private set; } = null!;

    protected Person Manager { get; private set; } = null!;

    protected Person Stylist { get; private set; } = null!;

    protected Salon Salon { get; private set; } = null!;

    protected Salon Other { get; private set; } = null!;

    protected Scene Scene { get; private set; } = null!;

    protected static CancellationToken Cancel => TestContext.Current.CancellationToken;

    protected Task<TestClinic> OpenAsync(Action<Scene>? more = null) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                Scene = scene;
                scene.AddPractice("Practice under test");
                Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
                Other = scene.OpenSalon("Canal Side", "America/New_York", "USD", chairs: 1);
                Owner = scene.Hire("Ottilie Vane", StaffRole.Owner, Salon);
                Manager = scene.Hire("Mabel Root", StaffRole.Manager, Salon);
                Stylist = scene.Hire("Sten Ito", StaffRole.Stylist, Salon);
                more?.Invoke(scene);
            }
        );

    protected PersonActor AsOwner(TestClinic clinic) => clinic.Acting(Owner, Salon, Other);

    protected PersonActor AsManager(TestClinic clinic) => clinic.Acting(Manager, Salon);

    protected Task<T> OwnerAsync<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull => clinic.UseAsync(AsOwner(clinic), call);

    protected Task<T> ManagerAsync<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull => clinic.UseAsync(AsManager(clinic), call);

    /// <summary>How often due dates were asked to be worked out anew for the whole practice.</summary>
    protected static Task<int> RefreshesAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.WorkItems.CountAsync(w => w.Kind == WorkKind.RefreshDueDates, Cancel));
}
