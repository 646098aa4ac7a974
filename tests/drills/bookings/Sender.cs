using System.Diagnostics;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.BookingDrill;

/// <summary>Sends a submission until it has an answer: now and then twice at once, or again after the answer, always with its key.</summary>
internal sealed class Sender(Ledger ledger, Random random, CancellationToken giveUp)
{
    private const int TwiceAtOnce = 8;
    private const int AgainAfter = 5;

    /// <returns>The answer; nothing where it was refused.</returns>
    public async Task<T?> SendAsync<T>(string deed, Func<Task<T>> send)
        where T : class?
    {
        var watch = Stopwatch.StartNew();
        var luck = random.Next(100);
        T? answer;
        if (luck < TwiceAtOnce)
        {
            var both = await Task.WhenAll(UntilAnsweredAsync(deed, send), UntilAnsweredAsync(deed, send));
            answer = both[0] ?? both[1];
            ledger.Count("sent twice at once");
        }
        else
            answer = await UntilAnsweredAsync(deed, send);
        ledger.Milliseconds.Add(watch.Elapsed.TotalMilliseconds);
        if (answer is not null && luck >= 100 - AgainAfter)
        {
            ledger.Count("sent again");
            await UntilAnsweredAsync(deed, send);
        }
        return answer;
    }

    private async Task<T?> UntilAnsweredAsync<T>(string deed, Func<Task<T>> send)
        where T : class?
    {
        while (true)
        {
            try
            {
                return await send();
            }
            catch (Refusal)
            {
                ledger.Count($"{deed} refused");
                return null;
            }
            catch (OvertakenException)
            {
                ledger.Count($"{deed} overtaken");
                return null;
            }
            catch (StaleActorException e)
            {
                ledger.Wrong.Add($"{deed}: {e.Message}");
                return null;
            }
            catch (Exception e) when (Faults.AreTransient(e))
            {
                ledger.Count("answer lost, sent again");
                if (giveUp.IsCancellationRequested)
                {
                    ledger.Wrong.Add($"{deed} had no answer to the end: {Faults.Innermost(e).Message}");
                    return null;
                }
                await Task.Delay(200, CancellationToken.None);
            }
            catch (Exception e) when (e is DbUpdateException or InvalidOperationException)
            {
                ledger.Wrong.Add($"{deed}: {Faults.Innermost(e).GetType().Name} {Faults.Innermost(e).Message}");
                return null;
            }
        }
    }
}
