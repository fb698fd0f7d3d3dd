using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>Immersed areas of the sections of a hull below a level water plane: the sectional area curve.</summary>
/// <remarks>
/// <para><b>Method.</b> On the surface a section is u(v), found for each v from x(u, v) = x; its half area is the integral of
/// y dz up it. It begins on the keel, on the stem or sternpost, or level across a transom, and ends at the water.</para>
/// <para><b>Accuracy.</b> Relative error below the tolerance; of a section smaller than a thousandth of the rectangle of the
/// hull's half-breadth and draft, relative to that.</para>
/// </remarks>
public sealed class SectionAreas
{
    /// <summary>Samples of each spline span when the ends of a section are bracketed.</summary>
    private const int SamplesPerSpan = 8;

    /// <summary>Stations tried before the greatest section is narrowed down.</summary>
    private const int Trials = 16;

    private readonly BSplineSurface _side;
    private readonly double _height;
    private readonly double _tolerance;
    private readonly double[] _least;

    /// <summary>Takes the skin and the water plane.</summary>
    /// <param name="side">The starboard skin.</param>
    /// <param name="height">Height of the water plane [m].</param>
    /// <param name="tolerance">Relative error of an area, above 0.</param>
    public SectionAreas(BSplineSurface side, double height, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(side);
        _side = side;
        _height = height;
        _tolerance = tolerance;
        Point3[] poles = [.. Enumerable.Range(0, side.U.Count).SelectMany(i => Enumerable.Range(0, side.V.Count).Select(j => side.PoleAt(i, j)))];
        _least = [poles.Max(p => Math.Abs(p.Y)) * Math.Max(0, height - poles.Min(p => p.Z)) / 1000];
    }

    /// <summary>The immersed area of the section at x, both sides.</summary>
    /// <param name="x">Place of the section [m]; off the hull the area is 0.</param>
    public SectionArea At(double x)
    {
        var half = 0.0;
        foreach (var (from, to) in Reaches(x))
        {
            if (to > from)
                half += Quadrature.Over(Strip, _least, [from, .. _side.V.Breaks.Where(v => v > from && v < to), to], _tolerance)[0];
        }

        return new SectionArea(x, 2 * half);

        void Strip(double v, Span<double> values)
        {
            var (y, _, slope) = Along(x, v);
            values[0] = y * slope;
        }
    }

    /// <summary>The areas at a row of stations.</summary>
    /// <param name="stations">Places [m].</param>
    public IReadOnlyList<SectionArea> Curve(IEnumerable<double> stations) => [.. stations.Select(At)];

    /// <summary>The section of greatest immersed area between two places [m].</summary>
    public SectionArea Greatest(double fore, double aft)
    {
        var peak = Peak.Over(x => At(x).Area, [.. Enumerable.Range(0, Trials + 1).Select(i => fore + ((aft - fore) * i / Trials))]);
        return new SectionArea(peak.At, peak.Value);
    }

    // Intervals of v over which the station plane cuts the skin, each cut off at the water.
    private IEnumerable<(double From, double To)> Reaches(double x)
    {
        List<double> ends = [_side.V.Start, .. Crossings(_side.U.Start, x), .. Crossings(_side.U.End, x), _side.V.End];
        ends.Sort();
        for (var i = 1; i < ends.Count; i++)
        {
            double from = ends[i - 1], to = ends[i], middle = (from + to) / 2;
            if (PlaceOf(_side.U.Start, middle) > x || PlaceOf(_side.U.End, middle) < x)
                continue;
            double low = Along(x, from).Z - _height, high = Along(x, to).Z - _height;
            if (low >= 0)
                continue;
            yield return (from, high <= 0 ? to : Root.Between(Height, from, to));
        }

        (double, double) Height(double v)
        {
            var (_, z, slope) = Along(x, v);
            return (z - _height, slope);
        }
    }

    // By the jet, as the root finder reads it: two ways to add up one point differ in the last bit, and a bracket would be lost.
    private double PlaceOf(double u, double v) => _side.JetAt(u, v).Point.X;

    private (double Y, double Z, double SlopeZ) Along(double x, double v)
    {
        double fore = PlaceOf(_side.U.Start, v) - x, aft = PlaceOf(_side.U.End, v) - x;
        var u = fore >= 0 ? _side.U.Start : aft <= 0 ? _side.U.End : Root.Between(Place, _side.U.Start, _side.U.End);
        var jet = _side.JetAt(u, v);
        return (jet.Point.Y, jet.Point.Z, jet.V.Z - (jet.U.Z * jet.V.X / jet.U.X));

        (double, double) Place(double at)
        {
            var j = _side.JetAt(at, v);
            return (j.Point.X - x, j.U.X);
        }
    }

    // Where the end profile u passes the station.
    private List<double> Crossings(double u, double x)
    {
        var found = new List<double>();
        var breaks = _side.V.Breaks;
        for (var i = 1; i < breaks.Count; i++)
        {
            for (var k = 0; k < SamplesPerSpan; k++)
            {
                double low = At(k), high = At(k + 1);
                if ((PlaceOf(u, low) < x) != (PlaceOf(u, high) < x))
                    found.Add(Root.Between(Profile, low, high));
            }

            double At(int k) => breaks[i - 1] + ((breaks[i] - breaks[i - 1]) * k / SamplesPerSpan);
        }

        return found;

        (double, double) Profile(double v)
        {
            var jet = _side.JetAt(u, v);
            return (jet.Point.X - x, jet.V.X);
        }
    }
}
