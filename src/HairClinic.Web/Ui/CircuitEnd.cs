namespace HairClinic.Web.Ui;

/// <summary>Stops what a live page goes on trying by itself, once the page is gone for good.</summary>
public sealed class CircuitEnd : IDisposable
{
    private readonly Leaving leaving = new();

    public CancellationToken Token => leaving.Token;

    public void Dispose() => leaving.Dispose();
}
