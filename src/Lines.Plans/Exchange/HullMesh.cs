using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Meshes;
using Lines.Kernel.Splines;

namespace Lines.Plans.Exchange;

/// <summary>The hull as a closed body of flat facets: both sides of the skin, the transom, and the deck; that of an open hull is ruled from sheer to sheer.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame in millimeters: x aft, y to starboard, z up; to the outside of planking.</para>
/// <para><b>Sign.</b> Facets run counter-clockwise seen from outside.</para>
/// <para><b>Accuracy.</b> Watertight. Vertices lie on the surface but for rounding to the single precision of STL, which every format then
/// holds alike, under 0.001 mm. No facet is further from the surface than the chord error.</para>
/// </remarks>
public static class HullMesh
{
    /// <summary>The chord error where none is asked for [m]: under the 1/32 in (0.8 mm) that a builder sees.</summary>
    public const double UsualChordError = 5e-4;

    /// <summary>The least and the greatest chord error [m]: 0.01 mm gives a million facets, 10 mm still the shape.</summary>
    public const double Finest = 1e-5, Coarsest = 1e-2;

    /// <summary>What rounding to single precision takes of the chord error [m]: hulls are under 16 m.</summary>
    private const double Rounding = 1e-6;

    /// <summary>The facets of a hull.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="chordError">Greatest distance of a facet from the surface [m], <see cref="Finest"/> to <see cref="Coarsest"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The chord error is outside its range.</exception>
    public static TriangleMesh Of(HullSurface hull, double chordError)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (!(chordError is >= Finest and <= Coarsest))
            throw new ArgumentOutOfRangeException(nameof(chordError), chordError, Invariant($"a chord error is {Finest} m to {Coarsest} m"));
        var (us, vs) = SurfaceDivision.Within(hull.Patches, chordError - Rounding);
        var widest = us.Count(u => u <= hull.WidestU) - 1;
        var starboard = Grid(hull, us, vs[0]);
        int last = starboard.GetLength(0) - 1, top = starboard.GetLength(1) - 1;
        Point3[] edge = [.. Enumerable.Range(0, top + 1).Select(j => starboard[last, j])];
        var mesh = new MeshAssembly();
        mesh.Begin("starboard");
        Skin(starboard, widest, mesh.Add);
        mesh.Begin("port");
        Skin(starboard, widest, (a, b, c) => mesh.Add(Port(a), Port(c), Port(b)));
        mesh.Begin("deck");
        if (hull.Deck is { } patch)
        {
            var deck = Deck(patch, us, vs[1], starboard);
            Skin(deck, widest, mesh.Add);
            Skin(deck, widest, (a, b, c) => mesh.Add(Port(a), Port(c), Port(b)));
            edge = [.. edge, .. Enumerable.Range(1, deck.GetLength(1) - 1).Select(j => deck[last, j])];
        }
        else
        {
            Ruled(mesh, [.. Enumerable.Range(0, last + 1).Select(i => starboard[i, top])]);
        }

        if (hull.Transom is not null)
            Transom(mesh, edge, starboard[last, top]);
        return mesh.Made();
    }

    private static void Ruled(MeshAssembly mesh, Point3[] sheer)
    {
        foreach (var (fore, aft) in sheer.Zip(sheer.Skip(1)))
        {
            mesh.Add(Port(aft), aft, fore);
            mesh.Add(Port(aft), fore, Port(fore));
        }
    }

    /// <summary>The starboard half of a crowned deck; its first column is the sheer of the skin, and at a pointed end it is one point.</summary>
    private static Point3[,] Deck(BSplineSurface deck, double[] us, double[] vs, Point3[,] starboard)
    {
        var points = new Point3[us.Length, vs.Length];
        for (var i = 0; i < us.Length; i++)
        {
            var sheer = starboard[i, starboard.GetLength(1) - 1];
            for (var j = 0; j < vs.Length; j++)
            {
                var p = deck.PointAt(us[i], vs[j]);
                points[i, j] = j == 0 || sheer.Y == 0 ? sheer : new Point3(Single(p.X), j == vs.Length - 1 ? 0 : Single(p.Y), Single(p.Z));
            }
        }

        return points;
    }

    /// <summary>A fan about the middle of the transom: strips across would be nothing where its foot is level.</summary>
    private static void Transom(MeshAssembly mesh, Point3[] edge, Point3 head)
    {
        mesh.Begin("transom");
        var foot = edge[0];
        var middle = new Point3(Single((foot.X + head.X) / 2000), 0, Single((foot.Z + head.Z) / 2000));
        for (var j = 1; j < edge.Length; j++)
        {
            mesh.Add(middle, edge[j - 1], edge[j]);
            mesh.Add(middle, Port(edge[j]), Port(edge[j - 1]));
        }

        mesh.Add(middle, edge[^1], Port(edge[^1]));
    }

    private static Point3[,] Grid(HullSurface hull, double[] us, double[] vs)
    {
        var points = new Point3[us.Length, vs.Length];
        for (var i = 0; i < us.Length; i++)
        {
            for (var j = 0; j < vs.Length; j++)
            {
                var p = hull.Side.PointAt(us[i], vs[j]);
                var central = i == 0 || j == 0 || (i == us.Length - 1 && hull.Transom is null);
                points[i, j] = new Point3(Single(p.X), central ? 0 : Single(p.Y), Single(p.Z));
            }
        }

        return points;
    }

    /// <summary>Two triangles to a cell, their diagonal rising away from the nearer end.</summary>
    /// <remarks>So no triangle has all its corners on stem and keel, where it would lie flat against that of the other side.</remarks>
    private static void Skin(Point3[,] grid, int widest, Action<Point3, Point3, Point3> add)
    {
        for (var i = 0; i < grid.GetLength(0) - 1; i++)
        {
            for (var j = 0; j < grid.GetLength(1) - 1; j++)
            {
                Point3 foreLow = grid[i, j], foreHigh = grid[i, j + 1], aftLow = grid[i + 1, j], aftHigh = grid[i + 1, j + 1];
                if (i < widest)
                {
                    add(foreLow, foreHigh, aftHigh);
                    add(foreLow, aftHigh, aftLow);
                }
                else
                {
                    add(foreLow, foreHigh, aftLow);
                    add(foreHigh, aftHigh, aftLow);
                }
            }
        }
    }

    private static Point3 Port(Point3 p) => p.Y == 0 ? p : p with { Y = -p.Y };

    /// <summary>Meters to millimeters of single precision, with four decimals at most and no negative zero.</summary>
    private static double Single(double meters) => (float)Math.Round(1000 * meters, 4) + 0.0;
}
