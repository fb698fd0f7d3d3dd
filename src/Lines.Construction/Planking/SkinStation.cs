using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Construction.Planking;

/// <summary>The section of the outside skin in one plane square to x, as a curve over the skin's own parameter v.</summary>
/// <remarks><b>Frame.</b> Hull frame. x grows with u along every line of constant v.</remarks>
public sealed class SkinStation
{
    private const int Places = 32;

    private readonly BSplineSurface _side;

    private SkinStation(BSplineSurface side, double x, double low, double high) => (_side, X, Low, High) = (side, x, low, high);

    /// <summary>Where the plane stands [m].</summary>
    public double X { get; }

    /// <summary>Parameter v of the lower end: on the keel, or on the stem, sternpost or transom that the plane cuts.</summary>
    public double Low { get; }

    /// <summary>Parameter v of the upper end: the sheer, or an end that the plane cuts.</summary>
    public double High { get; }

    /// <summary>The section of a skin; null where the plane misses it.</summary>
    /// <param name="side">The skin.</param>
    /// <param name="x">The plane [m].</param>
    public static SkinStation? Of(BSplineSurface side, double x)
    {
        ArgumentNullException.ThrowIfNull(side);
        var first = -1;
        var last = -1;
        for (var k = 0; k <= Places; k++)
        {
            if (!Holds((double)k / Places))
                continue;
            first = first < 0 ? k : first;
            last = k;
        }

        if (first < 0)
            return null;
        double low = (double)first / Places, high = (double)last / Places;
        return new SkinStation(
            side,
            x,
            first == 0 ? 0 : Root.FirstWhere(Holds, (first - 1.0) / Places, low),
            last == Places ? 1 : Root.FirstWhere(Holds, (last + 1.0) / Places, high));

        bool Holds(double v) => side.PointAt(0, v).X <= x && side.PointAt(1, v).X >= x;
    }

    /// <summary>Parameter u of the section's point at a parameter v, rounding only.</summary>
    /// <param name="v">From <see cref="Low"/> to <see cref="High"/>.</param>
    public double UAt(double v) => StationPlace.On(_side, X, v).U;

    /// <summary>The skin at a parameter v, with its derivatives.</summary>
    public SurfaceJet JetAt(double v) => _side.JetAt(UAt(v), v);

    /// <summary>Length of the section between two parameters [m].</summary>
    /// <param name="from">Lower parameter.</param>
    /// <param name="to">Upper parameter.</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    public double Girth(double from, double to, double tolerance) => from >= to ? 0 : Quadrature.Over(
        (v, g) => g[0] = Along(JetAt(v)).Length,
        [1e-9],
        [from, .. _side.V.Breaks.Where(b => b > from && b < to), to],
        tolerance)[0];

    /// <summary>Derivative of the section's point by v.</summary>
    internal static Vector3 Along(SurfaceJet s) => s.V - (s.V.X / s.U.X * s.U);
}
