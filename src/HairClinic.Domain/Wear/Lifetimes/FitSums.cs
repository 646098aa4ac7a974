namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A log-likelihood with its gradient and Hessian (both triangles), summed part by part.</summary>
internal sealed class FitSums(int size)
{
    public int Size { get; } = size;

    public double Value { get; set; }

    public double[] Gradient { get; } = new double[size];

    /// <summary>Row by row; while summing, only j ≤ i is filled.</summary>
    public double[] Hessian { get; } = new double[size * size];

    public bool IsFinite =>
        double.IsFinite(Value) && Array.TrueForAll(Gradient, double.IsFinite) && Array.TrueForAll(Hessian, double.IsFinite);

    public void Add(FitSums part)
    {
        Value += part.Value;
        for (var i = 0; i < Gradient.Length; i++)
            Gradient[i] += part.Gradient[i];
        for (var i = 0; i < Hessian.Length; i++)
            Hessian[i] += part.Hessian[i];
    }

    public void Mirror()
    {
        for (var i = 0; i < Size; i++)
        {
            for (var j = 0; j < i; j++)
                Hessian[j * Size + i] = Hessian[i * Size + j];
        }
    }
}
