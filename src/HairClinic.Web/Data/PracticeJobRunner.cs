using HairClinic.Web.Fence;

namespace HairClinic.Web.Data;

/// <summary>Runs work for a practice as a job: the one way a worker or a command gets an actor.</summary>
public sealed class PracticeJobRunner(IServiceScopeFactory scopes)
{
    /// <summary>The ids of all practices in this database; the only thing about them that is not fenced.</summary>
    public async Task<IReadOnlyList<Guid>> PracticeIdsAsync(CancellationToken cancellation)
    {
        await using var scope = scopes.CreateAsyncScope();
        await using var db = scope.ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
        return await db.Practices.OrderBy(p => p.Id).Select(p => p.Id).ToListAsync(cancellation);
    }

    public async Task<T> RunJobAsync<T>(Guid practiceId, string job, Func<IServiceProvider, Task<T>> work) =>
        await RunAsAsync(new JobActor(practiceId, job), work);

    public async Task<T> RunAsAsync<T>(Actor actor, Func<IServiceProvider, Task<T>> work)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentActor>().Set(actor);
        return await work(scope.ServiceProvider);
    }
}
