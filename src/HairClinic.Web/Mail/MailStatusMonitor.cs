using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Mail;

/// <summary>
/// Whether letters leave just now. The mail server is asked for it, at most once a minute, and the same whoever wants to know: the answer
/// to somebody who asks for a link tells nothing about their address.
/// </summary>
public sealed class MailStatusMonitor(MailSenderSelector route, SmtpMailSender server, SiteAddress site, IClock clock) : IDisposable
{
    private static readonly Duration Fresh = Duration.FromMinutes(1);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private readonly SemaphoreSlim _turn = new(1);
    private (Instant At, string? Fault)? _last;

    /// <summary>Asks the mail server where it was not asked within the minute.</summary>
    public async Task<MailReadiness> CheckReadinessAsync(CancellationToken cancellation)
    {
        var way = await route.WayAsync(cancellation);
        return new(way, way is MailWay.Server ? await FaultAsync(cancellation) : null, site.Url is not null);
    }

    /// <summary>What was last heard of the mail server, without asking it.</summary>
    public async Task<MailReadiness> LastAsync(CancellationToken cancellation)
    {
        var way = await route.WayAsync(cancellation);
        return new(way, way is MailWay.Server ? _last?.Fault : null, site.Url is not null);
    }

    public void Dispose() => _turn.Dispose();

    private async Task<string?> FaultAsync(CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            var now = clock.GetCurrentInstant();
            if (_last is { } known && now - known.At < Fresh)
                return known.Fault;
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            patience.CancelAfter(Patience);
            string? fault = null;
            try
            {
                await server.ProbeAsync(patience.Token);
            }
            catch (Exception e) when (!cancellation.IsCancellationRequested)
            {
                fault = WorkFaults.NameOf(e);
            }
            _last = (now, fault);
            return fault;
        }
        finally
        {
            _turn.Release();
        }
    }
}
