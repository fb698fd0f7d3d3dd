using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Plans.Figures;

namespace Lines.Tests.Support;

/// <summary>Hull surfaces made by formula, for tests of what reads a surface rather than shapes it.</summary>
internal static class SampleHulls
{
    /// <summary>A 5.2 m pointed double-ender; its dials are nominal, only its surface is meant.</summary>
    public static HullSurface DoubleEnder() => Make(Dials(new PointedStern(0.6, 0.04, 0.48, 0.22)), transom: false);

    /// <summary>A 4.2 m boat with a transom raked 15 degrees.</summary>
    public static HullSurface TransomBoat() =>
        Make(Dials(new TransomStern(0.7, 0.06, 0.45, 15 * Math.PI / 180, 0.60)) with { Length = 4.2, Beam = 1.1, Depth = 0.42, Draft = 0.14 }, transom: true);

    /// <summary>A hull's figures.</summary>
    public static IReadOnlyList<FigureGroup> Figures(HullSurface hull) => HullFigures.Of(hull, UprightHydrostatics.Below(hull, hull.Draft, 1e-6));

    private static HullDials Dials(SternDials stern) => new()
    {
        Length = 5.2,
        Beam = 0.74,
        Depth = 0.36,
        Draft = 0.115,
        Widest = 0.5,
        Bow = new BowDials(0.62, 0.05, 0.52, 0.25),
        Stern = stern,
        Midship = new MidshipDials(6 * Math.PI / 180, 0.8, 6 * Math.PI / 180),
    };

    private static HullSurface Make(HullDials d, bool transom)
    {
        var u = SplineBasis.Clamped(3, [.. Enumerable.Range(0, 9).Select(i => i / 8.0)]);
        var v = SplineBasis.Clamped(3, [.. Enumerable.Range(0, 6).Select(i => i / 5.0)]);
        var net = new Point3[u.Count, v.Count];
        for (var i = 0; i < u.Count; i++)
        {
            for (var j = 0; j < v.Count; j++)
                net[i, j] = Pole(d, transom, u.GrevilleAt(i), v.GrevilleAt(j));
        }

        return new HullSurface(new BSplineSurface(u, v, net), d, 0.5, 0.55);
    }

    private static Point3 Pole(HullDials d, bool transom, double s, double t)
    {
        // Stem: a quarter ellipse from the forefoot to the foremost point; heights crowd toward the keel.
        double Height(double low, double high) => low + ((high - low) * t * t);
        double zStem = Height(d.Bow.Rocker, d.Bow.Sheer), zMid = d.Depth * t * (0.15 + (0.85 * t));
        var xStem = d.Bow.Forefoot * (1 - Math.Sin(Math.PI / 2 * t));
        double xStern, zStern, width;
        var mid = (d.Beam / 2) * Math.Sin(Math.PI / 2 * Math.Min(1, 1.02 * t));
        if (d.Stern is TransomStern tr && transom)
        {
            zStern = Height(tr.Foot, tr.Sheer);
            xStern = d.Length - ((tr.Sheer - zStern) * Math.Tan(tr.Rake));
            width = 1 - Math.Pow(Math.Abs((2 * s) - 1), 2);
            var end = (tr.Breadth / 2) * Math.Sin(Math.PI / 2 * t);
            var y = s < 0.5 ? mid * width : mid + ((end - mid) * Math.Pow((2 * s) - 1, 2));
            return new Point3(((1 - s) * xStem) + (s * xStern), y, Blend(zStem, zMid, zStern, s));
        }

        var p = d.Stern as PointedStern ?? new PointedStern(0.6, 0.04, 0.48, 0.22);
        zStern = Height(p.Rocker, p.Sheer);
        xStern = d.Length - (p.Heel * (1 - Math.Sin(Math.PI / 2 * t)));
        width = 1 - Math.Pow(Math.Abs((2 * s) - 1), 2);
        return new Point3(((1 - s) * xStem) + (s * xStern), mid * width, Blend(zStem, zMid, zStern, s));
    }

    private static double Blend(double fore, double mid, double aft, double s)
    {
        var r = Math.Pow(Math.Abs((2 * s) - 1), 2.2);
        return s < 0.5 ? mid + ((fore - mid) * r) : mid + ((aft - mid) * r);
    }
}
