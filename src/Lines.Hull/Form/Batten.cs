using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The spline of least bending energy that meets its ducks: one fair line over a known abscissa.</summary>
/// <remarks>
/// <para><b>Method.</b> Minimizes ∫ (d²f/dx²)² dx over the poles of f, x(u) being a given spline on the same basis, with points,
/// slopes and areas as exact equations and one sign of curvature as elastic inequalities at five places in every span.</para>
/// <para><b>Accuracy.</b> Equations to rounding. The curvature rows give way by an amount reported as a hollow in meters.</para>
/// </remarks>
internal sealed class Batten : IDisposable
{
    internal const double CurvatureStiffness = 3e4;

    /// <summary>Least dx/du taken, as a part of the length; a hull has twenty times as much or is refused.</summary>
    private const double LeastStretch = 0.0025;

    private readonly SplineBasis _basis;
    private readonly double[] _abscissa;
    private readonly double _length;
    private readonly ElasticProgram _program;
    private readonly List<ElasticRow> _bounds = [];
    private readonly List<double> _places = [];
    private int _curvatureRows;

    /// <summary>Makes a batten without ducks.</summary>
    /// <param name="basis">Basis of f and x.</param>
    /// <param name="abscissa">Poles of x(u) [m], increasing.</param>
    public Batten(SplineBasis basis, double[] abscissa)
    {
        _basis = basis;
        _abscissa = abscissa;
        _length = abscissa[^1] - abscissa[0];
        _program = new ElasticProgram(basis.Count);
        SplineRows.ForGaussPoints(basis, 0, 1, 4, (u, w) =>
            _program.AddSquare(Bending(u, out var stretch), 0, w * stretch / _length));
    }

    /// <summary>Gives back the room that the program took.</summary>
    public void Dispose() => _program.Dispose();

    /// <summary>A duck: the line passes through a value.</summary>
    public void Pass(double u, double value) => _program.AddEquation(SplineRows.At(_basis, u, 0), value);

    /// <summary>The line has a slope df/dx at a parameter.</summary>
    public void Slope(double u, double slope)
    {
        var row = SplineRows.At(_basis, u, 1);
        _program.AddEquation(row, slope * row.Dot(_abscissa));
    }

    /// <summary>The line encloses an area ∫ f dx between two parameters.</summary>
    public void Area(double from, double to, double area)
    {
        _program.AddEquation(AreaRow(_basis, _abscissa, from, to), area);
    }

    /// <summary>Row of ∫ f dx between two parameters.</summary>
    internal static SparseRow AreaRow(SplineBasis basis, double[] abscissa, double from, double to)
    {
        var row = new double[basis.Count];
        SplineRows.ForGaussPoints(basis, from, to, 4, (u, w) =>
            SplineRows.At(basis, u, 0).AddTo(row, w * SplineRows.Value(basis, u, 1, abscissa)));
        return SparseRow.Full(row);
    }

    /// <summary>Five places in every span, its ends among them, where the sign of curvature is watched.</summary>
    internal static IEnumerable<double> CurvaturePlaces(SplineBasis basis)
    {
        var breaks = basis.Breaks;
        for (var s = 0; s + 1 < breaks.Count; s++)
        {
            for (var k = s == 0 ? 0 : 1; k <= 4; k++)
                yield return breaks[s] + ((breaks[s + 1] - breaks[s]) * k / 4);
        }
    }

    /// <summary>The line stays on or above a value.</summary>
    public void AtLeast(double u, double value)
    {
        var row = SplineRows.At(_basis, u, 0);
        _bounds.Add(new ElasticRow(row.Times(-1), -value, 1e8));
    }

    /// <summary>The line stays on or below a value.</summary>
    public void AtMost(double u, double value) => _bounds.Add(new ElasticRow(SplineRows.At(_basis, u, 0), value, 1e8));

    /// <summary>Curvature keeps one sign: +1 for a line that is hollow seen from above (a sprung sheer), -1 for one that bulges.</summary>
    /// <param name="sign">The sign.</param>
    /// <param name="from">Parameter from which it does.</param>
    /// <param name="to">Parameter to which it does.</param>
    public void OneSided(int sign, double from = 0, double to = 1)
    {
        foreach (var u in CurvaturePlaces(_basis).Where(u => u >= from && u <= to))
        {
            _places.Add(u);
            _bounds.Insert(_curvatureRows++, new ElasticRow(Bending(u, out _).Times(-sign), 0, CurvatureStiffness));
        }
    }

    /// <summary>Bends the batten round its ducks.</summary>
    public BattenLine Solve()
    {
        var result = _program.Solve(_bounds);
        double hollow = 0, place = 0, missed = 0, energy = 0;
        for (var r = 0; r < _bounds.Count; r++)
        {
            // A span of an eighth of the length with this curvature bows by κ ℓ² / 8; the rows are per unit of squared length.
            if (r < _curvatureRows && result.Slack[r] / 512 > hollow)
                (hollow, place) = (result.Slack[r] / 512, _places[r]);
            else if (r >= _curvatureRows)
                missed = Math.Max(missed, result.Slack[r]);
        }

        SplineRows.ForGaussPoints(_basis, 0, 1, 4, (u, w) =>
        {
            var bend = Bending(u, out var stretch).Dot(result.X);
            energy += w * stretch / _length * bend * bend;
        });
        return new BattenLine(_basis, _abscissa, result.X, energy, hollow, place, missed, _program.Contradiction);
    }

    private SparseRow Bending(double u, out double stretch) => Bending(_basis, _abscissa, u, out stretch);

    /// <summary>Row of d²f/dξ², ξ = x over the batten's length; also dx/du.</summary>
    internal static SparseRow Bending(SplineBasis basis, double[] abscissa, double u, out double stretch)
    {
        var w = basis.Degree + 1;
        var length = abscissa[^1] - abscissa[0];
        Span<double> n = stackalloc double[24];
        var first = basis.Evaluate(u, 2, n);
        double xu = 0, xuu = 0;
        for (var k = 0; k < w; k++)
        {
            xu += n[w + k] * abscissa[first + k];
            xuu += n[(2 * w) + k] * abscissa[first + k];
        }

        // Ends that reach past each other make the abscissa run back; the hull is refused for it, but the batten must stand meanwhile.
        xu = Math.Max(xu, LeastStretch * Math.Abs(length));
        stretch = xu;
        var row = new double[w];
        for (var k = 0; k < w; k++)
            row[k] = length * length * ((n[(2 * w) + k] / (xu * xu)) - (n[w + k] * xuu / (xu * xu * xu)));
        return new SparseRow(basis.RunFrom(first), row);
    }
}

/// <summary>A batten at rest.</summary>
/// <param name="Basis">Basis.</param>
/// <param name="Abscissa">Poles of x(u) [m].</param>
/// <param name="Ordinate">Poles of f(u) [m].</param>
/// <param name="Energy">Bending energy ∫ (d²f/dξ²)² dξ, ξ from 0 to 1 [m²].</param>
/// <param name="Hollow">By how much one-sidedness gave way [m].</param>
/// <param name="HollowU">Parameter where it gave way most.</param>
/// <param name="Short">By how much a least value was missed [m].</param>
/// <param name="Contradiction">What is left of equations that contradict each other; 0 when they agree.</param>
internal sealed record BattenLine(
    SplineBasis Basis, double[] Abscissa, double[] Ordinate, double Energy, double Hollow, double HollowU, double Short, double Contradiction)
{
    /// <summary>Value of f, or its derivative by u, at a parameter.</summary>
    public double At(double u, int derivative = 0) => Spline(Ordinate, u, derivative);

    /// <summary>Value of x, or its derivative by u, at a parameter.</summary>
    public double XAt(double u, int derivative = 0) => Spline(Abscissa, u, derivative);

    /// <summary>Slope df/dx at a parameter.</summary>
    public double SlopeAt(double u) => At(u, 1) / XAt(u, 1);

    private double Spline(double[] poles, double u, int derivative) => SplineRows.Value(Basis, u, derivative, poles);
}
