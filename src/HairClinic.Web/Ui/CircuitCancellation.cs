namespace HairClinic.Web.Ui;

/// <summary>Stops what a live page goes on trying by itself, once the page is gone for good.</summary>
public sealed class CircuitCancellation : IDisposable
{
    private readonly CancelOnDispose _leaving = new();

    public CancellationToken Token => _leaving.Token;

    public void Dispose() => _leaving.Dispose();
}
