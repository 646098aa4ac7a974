using System.Collections.Concurrent;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;

namespace HairClinic.Web.Tests.Workers;

/// <summary>A way out for letters that keeps them, and a worker that uses it.</summary>
internal sealed class Letterbox : IMailSender
{
    public ConcurrentQueue<Letter> Sent { get; } = new();

    /// <summary>What happens before a letter is taken: it may wait or throw.</summary>
    public Func<Letter, Task> Before { get; set; } = _ => Task.CompletedTask;

    public async Task SendAsync(Letter letter, LetterDelivery posting, CancellationToken cancellation)
    {
        await posting.HandingOver();
        await Before(letter);
        cancellation.ThrowIfCancellationRequested();
        Sent.Enqueue(letter);
    }

    /// <summary>One worker, working until nothing is due.</summary>
    public static Task<int> WorkAsync(
        TestClinic clinic,
        IMailSender route,
        ILogger<LetterSender>? log = null,
        CancellationToken? cancellation = null
    ) =>
        clinic.AsAsync(
            clinic.Job,
            services =>
                new PracticeWorkRunner(
                    services.GetRequiredService<ClinicDbFactory>(),
                    services.GetRequiredService<DueDateRefresher>(),
                    new LetterSender(
                        services.GetRequiredService<ClinicDbFactory>(),
                        route,
                        services.GetRequiredService<IClock>(),
                        log ?? NullLogger<LetterSender>.Instance
                    ),
                    services.GetRequiredService<PhotoStore>(),
                    services.GetRequiredService<CurrentActor>(),
                    services.GetRequiredService<IClock>(),
                    NullLogger<PracticeWorkRunner>.Instance
                ).RunAllDueAsync(cancellation ?? TestContext.Current.CancellationToken)
        );

    public static Task<List<WorkItem>> ItemsAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.WorkItems.AsNoTracking().OrderBy(i => i.Id).ToListAsync(TestContext.Current.CancellationToken));
}
