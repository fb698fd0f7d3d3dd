using Lines.Construction.Planking;
using Lines.Hull.Fairness;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Construction.Materials;

/// <summary>The planking of a stretch of a hull as a layer of one thickness under the skin: areas, volume, and where they lie.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame, both sides of the boat together, so that centers lie on the centerplane.</para>
/// <para><b>Method.</b> At a depth s under the skin an area shrinks as (1 - κ₁ s)(1 - κ₂ s); the layer is integrated over s in closed form and over the
/// skin by quadrature in x and v. At a sharp end, and at the keel, the layers of both sides cross the centerplane: what they have twice there counts twice,
/// as the stems and the cut at the keel do in the shop.</para>
/// </remarks>
/// <param name="Outside">Area of the skin [m²].</param>
/// <param name="OutsideCenter">Its center [m].</param>
/// <param name="Inside">Area of the inside of the layer [m²].</param>
/// <param name="InsideCenter">Its center [m].</param>
/// <param name="Volume">Volume of the layer [m³].</param>
/// <param name="Center">Its center [m].</param>
public sealed record SkinLayer(double Outside, Point3 OutsideCenter, double Inside, Point3 InsideCenter, double Volume, Point3 Center)
{
    private const int Stretches = 8;

    private static readonly double[] s_sizes = [1e-6, 1e-6, 1e-6, 1e-6, 1e-6, 1e-6, 1e-9, 1e-9, 1e-9];

    /// <summary>The layer between two planes square to x and below a level.</summary>
    /// <param name="side">The starboard skin, outward normal V × U.</param>
    /// <param name="fore">Fore plane [m].</param>
    /// <param name="aft">After plane [m].</param>
    /// <param name="below">Height that bounds it above [m]; infinite for none.</param>
    /// <param name="thickness">Thickness of the layer [m].</param>
    /// <param name="tolerance">Relative error of areas and volume, above 0.</param>
    /// <returns>The layer; zeros where there is none.</returns>
    public static SkinLayer Of(BSplineSurface side, double fore, double aft, double below, double thickness, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(side);
        double[] ends = [side.PointAt(0, 0).X, side.PointAt(0, 1).X, side.PointAt(1, 0).X, side.PointAt(1, 1).X];
        double first = Math.Max(fore, Math.Min(ends[0], ends[1])), last = Math.Min(aft, Math.Max(ends[2], ends[3]));
        if (!(last > first))
            return new SkinLayer(0, default, 0, default, 0, default);
        double[] breaks =
        [
            .. Enumerable.Range(0, Stretches + 1).Select(k => first + ((last - first) * k / Stretches))
                .Concat(ends.Where(e => e > first && e < last)).Distinct().Order(),
        ];
        var cells = breaks.Zip(breaks.Skip(1)).SelectMany(x => new[] { new Cell(x.First, x.Second, 0, 0.5), new Cell(x.First, x.Second, 0.5, 1) }).ToList();
        var place = (Station: (SkinStation?)null, Top: 0.0);
        var sums = Quadrature.Over(Add, s_sizes, cells, tolerance);
        return new SkinLayer(2 * sums[0], CenterOf(sums, 0), 2 * sums[3], CenterOf(sums, 3), 2 * sums[6], CenterOf(sums, 6));

        // The nodes of one station come one after the other.
        void Add(double x, double t, Span<double> values)
        {
            if (place.Station?.X != x)
            {
                var station = SkinStation.Of(side, x);
                place = (station, station is null ? 0 : Top(station, below));
            }

            values.Clear();
            if (place.Station is not { } at || !(place.Top > at.Low))
                return;
            var v = at.Low + (t * (place.Top - at.Low));
            Element(at.JetAt(v), place.Top - at.Low, thickness, values);
        }
    }

    private static void Element(SurfaceJet s, double stretch, double t, Span<double> values)
    {
        var normal = s.V.Cross(s.U);
        var size = normal.Length;
        if (!(size > 0 && s.U.X > 0))
            return;
        Vector3 n = (1 / size) * normal;
        var bend = PrincipalCurvatures.Of(s);
        double area = stretch * size / s.U.X, mean = bend.Mean, gauss = bend.Gaussian;
        var inside = area * (1 - (2 * mean * t) + (gauss * t * t));
        var volume = area * (t - (mean * t * t) + (gauss * t * t * t / 3));
        var inward = area * ((t * t / 2) - (2 * mean * t * t * t / 3) + (gauss * t * t * t * t / 4));
        Put(values, 0, area, area * s.Point.X, area * s.Point.Z);
        Put(values, 3, inside, inside * (s.Point.X - (t * n.X)), inside * (s.Point.Z - (t * n.Z)));
        Put(values, 6, volume, (volume * s.Point.X) - (inward * n.X), (volume * s.Point.Z) - (inward * n.Z));
    }

    private static void Put(Span<double> values, int at, double size, double x, double z) => (values[at], values[at + 1], values[at + 2]) = (size, x, z);

    private static Point3 CenterOf(double[] sums, int at) => sums[at] > 0 ? new Point3(sums[at + 1] / sums[at], 0, sums[at + 2] / sums[at]) : default;

    private static double Top(SkinStation station, double below)
    {
        bool Above(double v) => station.JetAt(v).Point.Z >= below;
        return !Above(station.High) ? station.High : Above(station.Low) ? station.Low : Root.FirstWhere(Above, station.Low, station.High);
    }
}
