using Lines.Kernel.Numerics;

namespace Lines.Kernel.Splines;

/// <summary>Linear functionals of a spline's poles as sparse rows, for fitting and fairing.</summary>
public static class SplineRows
{
    /// <summary>The row whose product with the poles is a derivative at a parameter.</summary>
    /// <param name="basis">Basis.</param>
    /// <param name="u">Parameter.</param>
    /// <param name="derivative">0 for the value.</param>
    public static SparseRow At(SplineBasis basis, double u, int derivative)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var w = basis.Degree + 1;
        Span<double> n = stackalloc double[64];
        var first = basis.Evaluate(u, derivative, n);
        return new SparseRow(basis.RunFrom(first), n.Slice(derivative * w, w).ToArray());
    }

    /// <summary>A spline's value or derivative at a parameter.</summary>
    /// <param name="basis">Basis.</param>
    /// <param name="u">Parameter.</param>
    /// <param name="derivative">0 for the value.</param>
    /// <param name="poles">Its poles.</param>
    public static double Value(SplineBasis basis, double u, int derivative, double[] poles)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(poles);
        var w = basis.Degree + 1;
        Span<double> n = stackalloc double[64];
        var first = basis.Evaluate(u, derivative, n);
        var sum = 0.0;
        for (var k = 0; k < w; k++)
            sum += n[(derivative * w) + k] * poles[first + k];
        return sum;
    }

    /// <summary>Calls for every Gauss point of every polynomial piece between two parameters.</summary>
    /// <param name="basis">Basis whose breaks part the pieces.</param>
    /// <param name="from">First parameter.</param>
    /// <param name="to">Last parameter.</param>
    /// <param name="points">Gauss points per piece.</param>
    /// <param name="visit">Receives the parameter and its quadrature weight.</param>
    public static void ForGaussPoints(SplineBasis basis, double from, double to, int points, Action<double, double> visit)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(visit);
        var rule = GaussLegendre.Rule(points);
        var breaks = basis.Breaks;
        for (var s = 0; s + 1 < breaks.Count; s++)
        {
            double a = Math.Max(from, breaks[s]), b = Math.Min(to, breaks[s + 1]);
            if (!(b > a))
                continue;
            for (var k = 0; k < points; k++)
                visit(((a + b) / 2) + ((b - a) / 2 * rule.Abscissas[k]), (b - a) / 2 * rule.Weights[k]);
        }
    }
}
