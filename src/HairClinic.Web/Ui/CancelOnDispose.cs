namespace HairClinic.Web.Ui;

/// <summary>Stops what goes on for somebody who has left, or who asks for something else.</summary>
/// <remarks>What was under way may ask for the token after the end, where a source's own would throw: it is read once.</remarks>
public sealed class CancelOnDispose : IDisposable
{
    private readonly CancellationTokenSource _source = new();

    public CancelOnDispose() => Token = _source.Token;

    public CancellationToken Token { get; }

    public void Dispose()
    {
        _source.Cancel();
        _source.Dispose();
    }
}
