namespace HairClinic.Web.Ui;

/// <summary>Stops what a live page goes on trying by itself, once the page is gone for good.</summary>
public sealed class CircuitEnd : IDisposable
{
    private readonly Leaving _leaving = new();

    public CancellationToken Token => _leaving.Token;

    public void Dispose() => _leaving.Dispose();
}
