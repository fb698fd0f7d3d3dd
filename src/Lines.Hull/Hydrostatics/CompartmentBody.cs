using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The part of a hull between two bulkheads as a closed body.</summary>
/// <remarks>
/// <para><b>Frame.</b> That of the hull. The bulkheads are planes of constant x; an open hull's part is closed level from sheer to sheer.</para>
/// <para><b>Method.</b> For every v the skin between the bulkheads is an interval of u; the patch over it is laid through its points, a cubic each way
/// through four points of every cell. Cells end at the skin's knots of v and where a bulkhead passes the stem, the sternpost or the transom's edge.</para>
/// <para><b>Accuracy.</b> Cells are halved until the enclosed volume stands still to 1e-6; the error left is a tenth of that or less.</para>
/// </remarks>
public static class CompartmentBody
{
    /// <summary>Relative change of the volume at which cells are fine enough.</summary>
    private const double Still = 1e-6;

    /// <summary>Cells along u, and of each span of v, to begin with, and how often they are halved at most.</summary>
    private const int CellsU = 8, CellsV = 2, MostHalvings = 4;

    /// <summary>The body.</summary>
    /// <param name="hull">The hull at its place.</param>
    /// <param name="name">What the compartment is called.</param>
    /// <param name="from">Its forward bulkhead, aft of the hull's foremost point [m].</param>
    /// <param name="to">Its after bulkhead [m].</param>
    /// <exception cref="ArgumentException">The bulkheads enclose nothing of the hull.</exception>
    /// <exception cref="ArithmeticException">The volume did not come to a stand.</exception>
    public static FloatingBody Between(PlacedHull hull, string name, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (!(from < to))
            throw new ArgumentException(Invariant($"a compartment from {from} to {to}"), nameof(from));
        FloatingBody? before = null;
        double volume = 0, change = 1;
        for (var k = 0; k <= MostHalvings; k++)
        {
            var patches = hull.Surface.Patches.SelectMany(p => Part(p, from, to, 1 << k)).ToList();
            if (hull.Surface.Deck is null)
                patches.Add(FloatingBody.LevelDeck(patches[^1]));
            var body = new FloatingBody(name, patches, open: false, hull.Place);
            var now = body.Below(WaterPlane.LevelAt(body.Reach(default, 0.01).Highest + 1), Still / 100).Volume;
            if (!(now > 0))
                throw new ArgumentException(Invariant($"nothing of {hull.Name} lies between {from} and {to}"), nameof(from));
            change = Math.Abs(now - volume) / now;
            if (before is not null && change <= Still)
                return body;
            (before, volume) = (body, now);
        }

        throw new ArithmeticException(Invariant($"the volume of {name} still changes by {change:E1} of itself"));
    }

    private static IEnumerable<BSplineSurface> Part(BSplineSurface skin, double from, double to, int finer)
    {
        double[] breaks =
        [
            .. skin.V.Breaks
                .Concat(new[] { skin.U.Start, skin.U.End }.SelectMany(end => StationPlace.Passes(skin, end, from).Concat(StationPlace.Passes(skin, end, to)))).Order(),
        ];
        List<double> vs = [breaks[0]];
        foreach (var v in breaks.Skip(1))
        {
            if (v - vs[^1] < 1e-9)
                continue;
            var first = vs[^1];
            for (var k = 1; k <= CellsV * finer; k++)
                vs.Add(k == CellsV * finer ? v : first + ((v - first) * k / (CellsV * finer)));
        }

        yield return Laid(skin, from, to, CellsU * finer, vs);
    }

    // Poles through four points of every cell, each way; neighbors share their edge.
    private static BSplineSurface Laid(BSplineSurface skin, double from, double to, int cells, List<double> vs)
    {
        int across = 3 * (vs.Count - 1), along = 3 * cells;
        var points = new Vector3[along + 1, across + 1];
        for (var j = 0; j <= across; j++)
        {
            var cell = Math.Min(j / 3, vs.Count - 2);
            var v = vs[cell] + ((vs[cell + 1] - vs[cell]) * (j - (3 * cell)) / 3);
            double u0 = StationPlace.On(skin, from, v).U, u1 = StationPlace.On(skin, to, v).U;
            for (var i = 0; i <= along; i++)
                points[i, j] = skin.PointAt(u0 + ((u1 - u0) * i / along), v) - default(Point3);
        }

        for (var j = 0; j <= across; j++)
        {
            for (var i = 0; i < along; i += 3)
                (points[i + 1, j], points[i + 2, j]) = Through(points[i, j], points[i + 1, j], points[i + 2, j], points[i + 3, j]);
        }

        var poles = new Point3[along + 1, across + 1];
        for (var i = 0; i <= along; i++)
        {
            for (var j = 0; j < across; j += 3)
                (points[i, j + 1], points[i, j + 2]) = Through(points[i, j], points[i, j + 1], points[i, j + 2], points[i, j + 3]);
            for (var j = 0; j <= across; j++)
                poles[i, j] = default(Point3) + points[i, j];
        }

        return new BSplineSurface(Joined(cells), Joined(vs.Count - 1), poles);
    }

    private static SplineBasis Joined(int cells) =>
        new(3, [0, .. Enumerable.Range(0, cells + 1).SelectMany(k => Enumerable.Repeat((double)k, 3)), cells]);

    // Inner Bezier points of the cubic through four equally spaced points.
    private static (Vector3 B, Vector3 C) Through(Vector3 p, Vector3 q, Vector3 r, Vector3 s) => (
        (1.0 / 6) * ((-5 * p) + (18 * q) + (-9 * r) + (2 * s)),
        (1.0 / 6) * ((2 * p) + (-9 * q) + (18 * r) + (-5 * s)));
}
