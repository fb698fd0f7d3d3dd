using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Tests.Support;

/// <summary>Bodies whose volumes are known in closed form.</summary>
internal static class SampleBodies
{
    /// <summary>A box from x = 0, z = 0, with flat ends.</summary>
    public static FloatingBody Box(double length, double breadth, double depth, bool open = true, Vector3 offset = default)
    {
        Point3[] across = [new(0, 0, 0), new(0, breadth / 2, 0), new(0, breadth / 2, depth), new(0, 0, depth)];
        var count = open ? 3 : 4;
        var poles = new Point3[2, count];
        for (var j = 0; j < count; j++)
            (poles[0, j], poles[1, j]) = (across[j], across[j] + new Vector3(length, 0, 0));
        var v = SplineBasis.Clamped(1, [.. Enumerable.Range(0, count).Select(k => (double)k)]);
        return new FloatingBody("box", [new BSplineSurface(SplineBasis.Clamped(1, [0, 1]), v, poles)], open, offset);
    }

    /// <summary>A triangular prism, keel down, from x = 0, z = 0 at the keel.</summary>
    public static FloatingBody Prism(double length, double breadth, double depth)
    {
        var poles = new Point3[2, 2];
        for (var i = 0; i < 2; i++)
            (poles[i, 0], poles[i, 1]) = (new(i * length, 0, 0), new(i * length, breadth / 2, depth));
        var basis = SplineBasis.Clamped(1, [0, 1]);
        return new FloatingBody("prism", [new BSplineSurface(basis, basis, poles)], open: true, default);
    }

    /// <summary>A closed cylinder along x with flat ends, its axis at z = radius; the circle is met to 1e-9 of the radius.</summary>
    public static FloatingBody Cylinder(double length, double radius) => new("cylinder", [CylinderSkin(length, radius)], open: false, default);

    /// <summary>The skin of the starboard half of that cylinder, from the keel round to the top.</summary>
    /// <param name="length">Its length.</param>
    /// <param name="radius">Its radius.</param>
    /// <param name="angle">Angle it goes round from the keel; all the way to the top unless given.</param>
    public static BSplineSurface CylinderSkin(double length, double radius, double angle = Math.PI) => ConeSkin(length, radius, radius, angle);

    /// <summary>The skin of the starboard half of a cone about a level line, its keel at z = 0 at the fore end, from the keel round.</summary>
    /// <param name="length">Its length.</param>
    /// <param name="fore">Its radius at x = 0.</param>
    /// <param name="aft">Its radius at the other end.</param>
    /// <param name="angle">Angle it goes round from the keel.</param>
    public static BSplineSurface ConeSkin(double length, double fore, double aft, double angle)
    {
        var (v, sine, cosine) = HalfCircle(128, angle);
        var poles = new Point3[2, v.Count];
        for (var j = 0; j < v.Count; j++)
        {
            poles[0, j] = new Point3(0, fore * sine[j], fore * (1 - cosine[j]));
            poles[1, j] = new Point3(length, aft * sine[j], fore - (aft * cosine[j]));
        }

        return new BSplineSurface(SplineBasis.Clamped(1, [0, 1]), v, poles);
    }

    /// <summary>A whole ellipsoid of half axes a along x, b along y, c along z about the origin; met to 4e-8 of an axis.</summary>
    public static FloatingBody Ellipsoid(double a, double b, double c, Vector3 offset = default) => new("ellipsoid", [EllipsoidSkin(a, b, c)], open: false, offset);

    /// <summary>The skin of the starboard half of that ellipsoid about the origin.</summary>
    public static BSplineSurface EllipsoidSkin(double a, double b, double c)
    {
        var (basis, sine, cosine) = HalfCircle(64);
        var poles = new Point3[basis.Count, basis.Count];
        for (var i = 0; i < basis.Count; i++)
        {
            for (var j = 0; j < basis.Count; j++)
                poles[i, j] = new Point3(-a * cosine[i], b * sine[i] * sine[j], -c * sine[i] * cosine[j]);
        }

        return new BSplineSurface(basis, basis, poles);
    }

    /// <summary>A boat of one open hull.</summary>
    public static Craft DoubleEnderCraft() => new([FloatingBody.Of(new PlacedHull("main hull", SampleHulls.DoubleEnder(), default))]);

    /// <summary>The same hull between two closed floats of its own shape, 0.7 as long, 0.35 as broad and as deep.</summary>
    public static Craft OutriggedCraft() => new(
    [
        FloatingBody.Of(new PlacedHull("main hull", SampleHulls.DoubleEnder(), default)),
        Float("outrigger 1 port", new Vector3(0.8, -1.1, 0.05)),
        Float("outrigger 1 starboard", new Vector3(0.8, 1.1, 0.05)),
    ]);

    private static FloatingBody Float(string name, Vector3 offset)
    {
        var side = SampleHulls.DoubleEnder().Side;
        var skin = new Point3[side.U.Count, side.V.Count];
        var deck = new Point3[side.U.Count, 2];
        for (var i = 0; i < side.U.Count; i++)
        {
            for (var j = 0; j < side.V.Count; j++)
                skin[i, j] = new Point3(0.7 * side.PoleAt(i, j).X, 0.35 * side.PoleAt(i, j).Y, 0.35 * side.PoleAt(i, j).Z);
            (deck[i, 0], deck[i, 1]) = (skin[i, side.V.Count - 1], skin[i, side.V.Count - 1] with { Y = 0 });
        }

        return new FloatingBody(name, [new BSplineSurface(side.U, side.V, skin), new BSplineSurface(side.U, SplineBasis.Clamped(1, [0, 1]), deck)], open: false, offset);
    }

    /// <summary>What a plane cuts from an ellipsoid about the origin: it is a sphere in stretched coordinates.</summary>
    public static (double Volume, Vector3 Moment, double Area) Cap(double a, double b, double c, WaterPlane water)
    {
        var n = new Vector3(a * water.Up.X, b * water.Up.Y, c * water.Up.Z);
        var d = Math.Clamp(water.Level / n.Length, -1, 1);
        var along = -Math.PI / 4 * Math.Pow(1 - (d * d), 2) * a * b * c / n.Length;
        return (
            a * b * c * Math.PI * (2 + (3 * d) - (d * d * d)) / 3,
            new Vector3(along * a * n.X, along * b * n.Y, along * c * n.Z),
            Math.PI * (1 - (d * d)) * a * b * c / n.Length);
    }

    // Sine and cosine of an angle times t for t from 0 to 1 as cubic splines with their own slopes at the breaks (knots doubled).
    private static (SplineBasis Basis, double[] Sine, double[] Cosine) HalfCircle(int pieces, double angle = Math.PI)
    {
        double[] knots = [0, 0, .. Enumerable.Range(0, pieces + 1).SelectMany(k => new[] { k / (double)pieces, k / (double)pieces }), 1, 1];
        var third = angle / (3 * pieces);
        double[] sine = new double[(2 * pieces) + 2], cosine = new double[sine.Length];
        for (var k = 0; k <= pieces; k++)
        {
            double s = k == pieces && angle == Math.PI ? 0 : Math.Sin(angle * k / pieces), c = Math.Cos(angle * k / pieces);
            (sine[2 * k], sine[(2 * k) + 1]) = (s - (third * c), s + (third * c));
            (cosine[2 * k], cosine[(2 * k) + 1]) = (c + (third * s), c - (third * s));
        }

        (sine[0], cosine[0], sine[^1], cosine[^1]) = (0, 1, angle == Math.PI ? 0 : Math.Sin(angle), Math.Cos(angle));
        return (new SplineBasis(3, knots), sine, cosine);
    }
}
