using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Construction.Molds;

/// <summary>What shaping any mold of one hull needs.</summary>
public sealed class MoldShaping
{
    /// <summary>Greatest distance of an outline's lines and arcs from the exact section [m]: half the shop tolerance.</summary>
    public const double FitTolerance = 1e-5;

    /// <summary>Length below which a line or arc stays only where the shape demands it [m]: router controllers stutter over crumbs.</summary>
    public const double ShortestSegment = 0.0005;

    /// <summary>Ends nearer than this are one point [m].</summary>
    public const double Coincident = 1e-6;

    /// <summary>How far the edge runs on past the sheer mark, measured along it [m]: a batten and the last strip bend on it fairly.</summary>
    public const double RunOn = 0.030;

    /// <summary>Gathers what shaping needs.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="build">What the builder decides.</param>
    /// <param name="strongback">The strongback.</param>
    /// <param name="waterlines">Heights of the grid's waterlines, lowest first [m].</param>
    /// <exception cref="BuildDialException">Planking, stock or siding is not a thickness.</exception>
    public MoldShaping(HullSurface hull, BuildDials build, Strongback strongback, IReadOnlyList<double> waterlines)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(strongback);
        ArgumentNullException.ThrowIfNull(waterlines);
        Require("planking", build.Planking, 0);
        Require("mold_stock", build.MoldStock, 0);
        Require("stem_siding", build.StemSiding, 0);
        (Hull, Build, Strongback) = (hull, build, strongback);
        Skin = InsetSkin.Of(hull, build.Planking);
        var grid = waterlines.Select((z, k) => z == hull.Draft ? LineTag.DesignWaterline(z) : LineTag.Waterline(z, Invariant($"{k + 1}")));
        Waterlines = waterlines.Contains(hull.Draft) ? [.. grid] : [.. grid, LineTag.DesignWaterline(hull.Draft)];
    }

    /// <summary>The same for other dials of the builder.</summary>
    internal MoldShaping Within(BuildDials build) => new(Hull, build, Strongback, [.. Waterlines.Select(w => w.Position)]);

    /// <summary>The hull.</summary>
    public HullSurface Hull { get; }

    /// <summary>What the builder decides.</summary>
    public BuildDials Build { get; }

    /// <summary>The strongback.</summary>
    public Strongback Strongback { get; }

    /// <summary>The inside of the planking.</summary>
    public InsetSkin Skin { get; }

    /// <summary>The waterlines to mark, the design waterline among them, labeled as on the lines plan.</summary>
    public IReadOnlyList<LineTag> Waterlines { get; }

    /// <summary>The parameter u on the sheer, between two others, at which a quantity of the inside is zero.</summary>
    /// <param name="low">Parameter of one end.</param>
    /// <param name="high">Parameter of the other end.</param>
    /// <param name="quantity">A quantity of the inside at (u, 1) that changes sign once.</param>
    /// <returns>The parameter, to 1e-13, or null where the quantity has one sign at both ends.</returns>
    public double? OnSheer(double low, double high, Func<InsetPoint, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        return Root(low, high, u => quantity(Skin.At(u, 1)));
    }

    /// <summary>The parameters of the point of the keel line's inside in a plane; null where it does not come there.</summary>
    public (double U, double V)? OnKeel(Plane plane) =>
        Root(-0.05, 1.05, u => plane.DistanceTo(Skin.At(u, 0).Point)) is { } u ? (u, 0) : null;

    /// <summary>The parameters of the lowest point of the inside at a station and a half-breadth; null where there is none.</summary>
    /// <param name="x">The station [m].</param>
    /// <param name="halfBreadth">The half-breadth [m].</param>
    public (double U, double V)? OnBottom(double x, double halfBreadth)
    {
        double? Station(double v) => Root(-0.05, 1.05, u => Skin.At(u, v).Point.X - x);
        double Beyond(double v) => Station(v) is { } u ? Skin.At(u, v).Point.Y - halfBreadth : double.NaN;

        // Folds of the outside stand at the turn of the bilge or above it: the first place from the keel is the lowest.
        const int places = 64;
        for (var i = 0; i < places; i++)
        {
            double low = (double)i / places, high = (i + 1.0) / places;
            if (Beyond(low) <= 0 && Beyond(high) > 0 && Root(low, high, Beyond) is { } v && Station(v) is { } u)
                return (u, v);
        }

        return null;
    }

    private static double? Root(double low, double high, Func<double, double> quantity)
    {
        double qLow = quantity(low), qHigh = quantity(high);
        if (!(qLow > 0 != qHigh > 0) || double.IsNaN(qLow) || double.IsNaN(qHigh))
            return null;
        while (Math.Abs(high - low) > 1e-13)
        {
            var mid = (low + high) / 2;
            if (mid == low || mid == high)
                break;
            if (quantity(mid) > 0 == qLow > 0)
                low = mid;
            else
                high = mid;
        }

        return (low + high) / 2;
    }

    /// <summary>Height of the sheer at a station [m].</summary>
    /// <param name="x">The station; beyond the ends the nearest end's sheer counts.</param>
    public double SheerAt(double x)
    {
        double low = 0, high = 1;
        while (high - low > 1e-13)
        {
            var mid = (low + high) / 2;
            if (Hull.Side.PointAt(mid, 1).X < x)
                low = mid;
            else
                high = mid;
        }

        return Hull.Side.PointAt((low + high) / 2, 1).Z;
    }

    /// <summary>The lines and arcs along a section on a drawing.</summary>
    /// <param name="section">The section.</param>
    /// <param name="from">First parameter.</param>
    /// <param name="to">Last parameter.</param>
    /// <param name="drawn">Point and direction on the drawing of a point of the section.</param>
    /// <param name="tolerance">Greatest distance of a line or arc from the section [m].</param>
    /// <exception cref="NoEdgeException">The section jumps or turns back.</exception>
    public static ArcPath Fitted(InsetSection section, double from, double to, Func<SectionPoint, DirectedPoint> drawn, double tolerance = FitTolerance)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(drawn);
        var spans = new List<ArcPath>();
        var start = from;
        foreach (var corner in section.Corners.Where(c => c > from && c < to))
        {
            spans.Add(Smooth(start, corner));
            start = corner + InsetSection.CornerGap;
        }

        spans.Add(Smooth(start, to));
        return ArcPaths.Joined(spans, closed: false, Coincident);

        ArcPath Smooth(double first, double last)
        {
            try
            {
                return ArcFit.Along(s => drawn(section.At(s)), first, last, tolerance, ShortestSegment);
            }
            catch (ArcFitException fault)
            {
                var at = section.At(fault.Parameter).Point;
                throw new NoEdgeException($"its edge cannot be drawn in lines and arcs near x = {new Length(at.X)}, {new Length(at.Z)} above the base line");
            }
        }
    }

    /// <summary>A level mark at a waterline.</summary>
    /// <param name="waterline">The waterline.</param>
    /// <param name="path">Its line on the drawing.</param>
    public MoldMark Mark(LineTag waterline, ArcPath path)
    {
        ArgumentNullException.ThrowIfNull(waterline);
        var kind = waterline.Position == Hull.Draft ? MoldMarkKind.DesignWaterline : MoldMarkKind.Waterline;
        return new MoldMark(kind, waterline.Label, path, waterline.Position);
    }

    private static void Require(string key, double value, double least)
    {
        if (!(value > least && double.IsFinite(value)))
            throw new BuildDialException(key, Invariant($"{value} m is not a thickness"), null);
    }
}
