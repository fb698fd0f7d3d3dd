using Lines.Kernel.Geometry;

namespace Lines.Kernel.Splines;

/// <summary>A B-spline curve in space.</summary>
public sealed class BSplineCurve
{
    private readonly Point3[] _poles;

    /// <summary>Makes the curve from its basis and poles.</summary>
    /// <exception cref="ArgumentException">The number of poles is not that of the basis.</exception>
    public BSplineCurve(SplineBasis basis, IReadOnlyList<Point3> poles)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(poles);
        if (poles.Count != basis.Count)
            throw new ArgumentException(Invariant($"{poles.Count} poles for {basis.Count} basis functions"), nameof(poles));
        Basis = basis;
        _poles = [.. poles];
    }

    /// <summary>The basis functions.</summary>
    public SplineBasis Basis { get; }

    /// <summary>The control points.</summary>
    public IReadOnlyList<Point3> Poles => _poles;

    /// <summary>Point at a parameter; outside the domain the end piece is continued.</summary>
    public Point3 PointAt(double u)
    {
        var jet = JetAt(u);
        return jet.Point;
    }

    /// <summary>Point with first and second derivative at a parameter; outside the domain the end piece is continued.</summary>
    public CurveJet JetAt(double u)
    {
        var w = Basis.Degree + 1;
        Span<double> n = stackalloc double[24];
        var first = Basis.Evaluate(u, Math.Min(2, Basis.Degree), n);
        Vector3 p = default, d = default, dd = default;
        for (var k = 0; k < w; k++)
        {
            var pole = _poles[first + k];
            var v = new Vector3(pole.X, pole.Y, pole.Z);
            p += n[k] * v;
            d += n[w + k] * v;
            if (Basis.Degree > 1)
                dd += n[(2 * w) + k] * v;
        }

        return new CurveJet(new Point3(p.X, p.Y, p.Z), d, dd);
    }
}

/// <summary>A point of a curve with its first two derivatives by the parameter.</summary>
/// <param name="Point">The point [m].</param>
/// <param name="First">First derivative.</param>
/// <param name="Second">Second derivative.</param>
public readonly record struct CurveJet(Point3 Point, Vector3 First, Vector3 Second);
