using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Materials;

/// <summary>A part of the hull's weight.</summary>
/// <param name="Key">Its name for programs.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Mass">Its mass [kg].</param>
/// <param name="Center">Its center, hull frame [m].</param>
public readonly record struct WeightPart(string Key, string Name, double Mass, Point3 Center);

/// <summary>The weight of a planked and sheathed hull, or of a stretch of one, and where it lies.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame, both sides together.</para>
/// <para><b>Method.</b> Planking from its volume, cloth from the areas it lies on, resin by <see cref="LayupRules"/> and the coats that fill the weave;
/// stems along the profile, rails along the sheer, bulkheads from their outlines less their holes. What is screwed or glued in later (thwarts, decks, beams, fittings, paint) is not in it.</para>
/// <para><b>Accuracy.</b> An estimate: boards of one kind of wood differ by a fifth from the table either way. Areas and volumes to <see cref="Tolerance"/>.</para>
/// </remarks>
/// <param name="Layer">The planking.</param>
/// <param name="Bottom">Area of the second cloth, below the design waterline [m²]; 0 for none.</param>
/// <param name="Parts">What it is made of; parts of no mass are left out.</param>
public sealed record HullWeight(SkinLayer Layer, double Bottom, IReadOnlyList<WeightPart> Parts)
{
    /// <summary>Relative error of areas and volumes [1].</summary>
    public const double Tolerance = 1e-4;

    private const int Steps = 64;

    /// <summary>Chords for areas of bulkheads [m]: 1e-5 of them or so.</summary>
    private const double ChordTolerance = 1e-5;

    /// <summary>The whole mass [kg].</summary>
    public double Mass => Parts.Sum(p => p.Mass);

    /// <summary>Its center, hull frame [m].</summary>
    public Point3 Center => CenterOf(Parts);

    /// <summary>Mass of all cloth [kg].</summary>
    public double Cloth => Parts.Where(p => p.Key.EndsWith("_cloth", StringComparison.Ordinal)).Sum(p => p.Mass);

    /// <summary>Center of several parts [m].</summary>
    /// <param name="parts">The parts, one at least with a mass.</param>
    public static Point3 CenterOf(IReadOnlyList<WeightPart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var mass = parts.Sum(p => p.Mass);
        double Of(Func<Point3, double> axis) => parts.Sum(p => p.Mass * axis(p.Center)) / mass;
        return new Point3(Of(p => p.X), Of(p => p.Y), Of(p => p.Z));
    }

    /// <summary>The weight of a stretch of a hull.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="build">How it is built.</param>
    /// <param name="fore">Fore end of the stretch [m]; negative infinity for the whole hull.</param>
    /// <param name="aft">After end [m]; infinity for the whole hull.</param>
    public static HullWeight Of(HullSurface hull, BuildDials build, double fore = double.NegativeInfinity, double aft = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(build);
        var with = build.Material;
        var layer = SkinLayer.Of(hull.Side, fore, aft, double.PositiveInfinity, build.Planking, Tolerance);
        var bottom = with.BottomCloth > 0 ? SkinLayer.Of(hull.Side, fore, aft, hull.Draft, 0, Tolerance) : SkinLayer.Of(hull.Side, 1, 0, 0, 0, Tolerance);
        List<WeightPart> sides =
        [
            new("outside_cloth", "Cloth outside", with.OutsideCloth * layer.Outside, layer.OutsideCenter),
            new("bottom_cloth", "Second cloth below the waterline", with.BottomCloth * bottom.Outside, bottom.OutsideCenter),
            new("inside_cloth", "Cloth inside", with.InsideCloth * layer.Inside, layer.InsideCenter),
        ];
        List<WeightPart> coats =
        [
            new("", "", with.OutsideCloth > 0 ? with.FillCoats * layer.Outside : 0, layer.OutsideCenter), new("", "", with.InsideCloth > 0 ? with.FillCoats * layer.Inside : 0, layer.InsideCenter),
            .. sides.Select(s => s with { Mass = LayupRules.ResinToCloth * s.Mass }),
        ];
        WeightPart[] parts =
        [
            new("planking", "Planking, " + with.Wood.Name, with.Wood.Density * layer.Volume, layer.Center),
            .. sides,
            new("resin", "Resin", coats.Sum(c => c.Mass), coats.Any(c => c.Mass > 0) ? CenterOf(coats) : default),
            Stems(hull, build, fore, aft),
            Gunwales(hull, build, fore, aft),
            Transom(hull, build, aft),
        ];
        return new HullWeight(layer, bottom.Outside, [.. parts.Where(p => p.Mass > 0)]);
    }

    /// <summary>The same with bulkheads.</summary>
    /// <param name="bulkheads">The bulkheads.</param>
    /// <param name="with">What they are made of.</param>
    public HullWeight With(IReadOnlyList<Mold> bulkheads, MaterialDials with)
    {
        ArgumentNullException.ThrowIfNull(bulkheads);
        ArgumentNullException.ThrowIfNull(with);
        List<WeightPart> boards = [.. bulkheads.Select(b => Board(b, with.Plywood)).Where(b => b.Mass > 0)];
        return boards.Count == 0 ? this : this with { Parts = [.. Parts, new WeightPart("bulkheads", "Bulkheads", boards.Sum(b => b.Mass), CenterOf(boards))] };
    }

    /// <summary>Length of one stem along the profile, keel to sheer [m]; 0 for the end of a transom.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="bow">Whether that of the bow.</param>
    public static double StemLength(HullSurface hull, bool bow)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return !bow && hull.Transom is not null ? 0 : Pieces(t => hull.Side.PointAt(bow ? 0 : 1, t), double.NegativeInfinity, double.PositiveInfinity).Sum(p => p.Length);
    }

    /// <summary>Length of the sheer of one side between two planes across [m].</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="fore">x of the forward plane [m].</param>
    /// <param name="aft">x of the after plane [m].</param>
    public static double SheerLength(HullSurface hull, double fore, double aft)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return Enumerable.Range(0, Steps).Sum(k =>
        {
            Point3 from = hull.Side.PointAt((double)k / Steps, 1), to = hull.Side.PointAt((k + 1.0) / Steps, 1);
            return from.DistanceTo(to) * Math.Clamp((Math.Min(aft, to.X) - Math.Max(fore, from.X)) / (to.X - from.X), 0, 1);
        });
    }

    // Inner and outer stem alike.
    private static WeightPart Stems(HullSurface hull, BuildDials build, double fore, double aft)
    {
        var section = 2 * build.StemSiding * build.StemMolding * build.Material.Wood.Density;
        var ends = Pieces(t => hull.Side.PointAt(0, t), fore, aft).Concat(hull.Transom is null ? Pieces(t => hull.Side.PointAt(1, t), fore, aft) : []);
        return Along("stems", "Inner and outer stems", section, ends);
    }

    // Inwale and outwale on both sides.
    private static WeightPart Gunwales(HullSurface hull, BuildDials build, double fore, double aft)
    {
        var part = Along("gunwales", "Inwales and outwales", 4 * build.Gunwale * build.Gunwale * build.Material.Wood.Density, Pieces(t => hull.Side.PointAt(t, 1), fore, aft));
        return part with { Center = part.Center with { Y = 0 } };
    }

    // The outline's chords, each a triangle with the drawing's origin, and the holes taken out; bulkheads are square across, their stock on the midship side.
    private static WeightPart Board(Mold bulkhead, double density)
    {
        var corners = bulkhead.Outline.Flattened(ChordTolerance);
        double area = 0;
        var moment = default(Vector2);
        for (var i = 0; i < corners.Count; i++)
        {
            Vector2 a = corners[i] - default(Point2), b = corners[(i + 1) % corners.Count] - default(Point2);
            var triangle = a.Cross(b) / 2;
            (area, moment) = (area + triangle, moment + (triangle / 3 * (a + b)));
        }

        foreach (var hole in bulkhead.Holes)
        {
            var taken = Math.PI * hole.Diameter * hole.Diameter / 4;
            (area, moment) = (area - taken, moment - (taken * (hole.At - default(Point2))));
        }

        var at = bulkhead.Frame.ToHull(default(Point2) + (1 / area * moment));
        return new WeightPart("", "", area * bulkhead.Stock * density, at with { X = (bulkhead.X + bulkhead.FarX) / 2 });
    }

    private static WeightPart Transom(HullSurface hull, BuildDials build, double aft)
    {
        if (hull.Transom is not { } plane || aft < hull.Side.PointAt(1, 1).X)
            return default;
        double area = 0, moment = 0;
        foreach (var (from, to) in Enumerable.Range(0, Steps).Select(k => (hull.Side.PointAt(1, (double)k / Steps), hull.Side.PointAt(1, (k + 1.0) / Steps))))
        {
            var strip = (from.Y + to.Y) * (to.Z - from.Z) / plane.Normal.X;
            (area, moment) = (area + strip, moment + (strip * (from.Z + to.Z) / 2));
        }

        var height = moment / area;
        var mass = area * build.BulkheadStock * build.Material.Plywood;
        return new WeightPart("transom", "Transom", mass, new Point3((plane.Offset - (plane.Normal.Z * height)) / plane.Normal.X, 0, height));
    }

    private static WeightPart Along(string key, string name, double perMeter, IEnumerable<(double Length, Point3 Middle)> pieces)
    {
        List<WeightPart> parts = [.. pieces.Select(p => new WeightPart(key, name, perMeter * p.Length, p.Middle))];
        var mass = parts.Sum(p => p.Mass);
        return new WeightPart(key, name, mass, mass > 0 ? CenterOf(parts) : default);
    }

    // Pieces whose middle lies in the stretch.
    private static IEnumerable<(double Length, Point3 Middle)> Pieces(Func<double, Point3> line, double fore, double aft)
    {
        for (var k = 0; k < Steps; k++)
        {
            Point3 from = line((double)k / Steps), to = line((k + 1.0) / Steps), middle = from + (0.5 * (to - from));
            if (middle.X >= fore && middle.X <= aft)
                yield return (from.DistanceTo(to), middle);
        }
    }
}
