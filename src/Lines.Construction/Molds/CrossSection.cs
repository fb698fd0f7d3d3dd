using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>A cross section of the inset skin as a mold or transom uses it: one side, from past the sheer to the centerline.</summary>
/// <remarks><b>Frame.</b> On the drawing the side lies to the right whichever side it is; the boat is alike to both.</remarks>
internal sealed class CrossSection
{
    private readonly InsetSection _section;
    private readonly MoldFrame _frame;
    private readonly double _cosine;

    private CrossSection(InsetSection section, MoldFrame frame, double sheerMark, double sheer)
    {
        (_section, _frame, SheerMark, Sheer) = (section, frame, sheerMark, sheer);
        _cosine = -frame.Up.Z;
        Top = Math.Max(0, sheerMark - MoldShaping.RunOn);
    }

    /// <summary>Parameter of the end of the run-on.</summary>
    public double Top { get; }

    /// <summary>Parameter of the sheer mark.</summary>
    public double SheerMark { get; }

    /// <summary>Height of the sheer above the base line [m].</summary>
    public double Sheer { get; }

    /// <summary>The end of the edge at the centerline.</summary>
    public SectionPoint Keel => _section.At(_section.Length);

    /// <summary>The edge from the end of the run-on to a parameter.</summary>
    public ArcPath EdgeTo(double s) => EdgeBetween(Top, s);

    /// <summary>The edge between two parameters.</summary>
    public ArcPath EdgeBetween(double from, double to) => MoldShaping.Fitted(_section, from, to, Drawn);

    /// <summary>The highest place, hull upright, at which the side is so far from the centerplane; null where there is none.</summary>
    /// <param name="halfBreadth">Half-breadth of the edge [m].</param>
    public double? Where(double halfBreadth) => _section.Where(p => p.Point.Y - halfBreadth);

    /// <summary>The point on the drawing at a parameter.</summary>
    public Point2 PointAt(double s) => Drawn(_section.At(s)).Point;

    /// <summary>The point in space at a parameter.</summary>
    public SectionPoint SpaceAt(double s) => _section.At(s);

    /// <summary>Height above the base line at a parameter [m].</summary>
    public double HullHeightAt(double s) => _section.At(s).Point.Z;

    /// <summary>The point on the drawing where the edge meets the centerline.</summary>
    public Point2 PointAtKeel() => new(0, PointAt(_section.Length).Y);

    /// <summary>The parameter of the edge's end at the centerline.</summary>
    public double Bottom => _section.Length;

    /// <summary>How far a mold cut to this section, from the sheer mark to a parameter, stands outside another section one stock away [m].</summary>
    public double ProudOf(CrossSection far, double to) => FarFace.Proud(_section, SheerMark, to, far._section);

    /// <summary>The planking's angles over the edge from the sheer mark to a parameter.</summary>
    public EdgeBevels BevelsTo(double to) => EdgeBevels.Across(_section, SheerMark, to);

    /// <summary>Points of the section between the sheer mark and the centerline, evenly spread.</summary>
    public IEnumerable<SectionPoint> Below(int count) =>
        Enumerable.Range(0, count + 1).Select(i => _section.At(SheerMark + ((_section.Length - SheerMark) * i / count)));

    /// <summary>Cuts the inset skin in a frame's plane.</summary>
    /// <param name="shaping">What shaping needs.</param>
    /// <param name="plane">The plane.</param>
    /// <param name="frame">The drawing in it.</param>
    /// <param name="u">Parameter on the sheer of a point of the inside in the plane.</param>
    /// <param name="section">The section.</param>
    /// <param name="reason">Why there is none.</param>
    public static bool TryCut(MoldShaping shaping, Plane plane, MoldFrame frame, double u, out CrossSection? section, out FormattableString reason)
    {
        section = null;
        var upward = MoldShaping.RunOn + (2 * shaping.Skin.Thickness);
        if (!InsetSection.TryCut(shaping.Skin, plane, u, 1, upward, p => p.Point.Y, out var cut, out reason, () => shaping.OnKeel(plane)))
            return false;
        // The sheer is marked where the edge has the height of the outside's sheer in the same plane.
        var sheer = SheerIn(shaping, plane);
        if (cut!.Where(p => p.Point.Z - sheer) is not { } mark)
        {
            reason = $"the edge does not reach the height of the sheer";
            return false;
        }

        section = new CrossSection(cut, frame, mark, sheer);
        return true;
    }

    /// <summary>Level marks across at the waterlines the edge reaches.</summary>
    /// <param name="shaping">What shaping needs.</param>
    /// <param name="lowest">Height above the base line under which none is marked [m].</param>
    public IEnumerable<MoldMark> Waterlines(MoldShaping shaping, double lowest)
    {
        foreach (var waterline in shaping.Waterlines.Where(w => w.Position < Sheer && w.Position > lowest))
        {
            if (HalfBreadthAt(waterline.Position) is { } y)
            {
                var h = HeightOf(waterline.Position);
                yield return shaping.Mark(waterline, ArcPath.Line(new Point2(-y, h), new Point2(y, h)));
            }
        }
    }

    /// <summary>Level marks at both edges at the sheer.</summary>
    public IEnumerable<MoldMark> SheerMarks()
    {
        var p = PointAt(SheerMark);
        var inner = Math.Max(0.35 * p.X, p.X - 0.040);
        yield return new MoldMark(MoldMarkKind.Sheer, "SHEER", ArcPath.Line(p, new Point2(inner, p.Y)), Sheer);
        yield return new MoldMark(MoldMarkKind.Sheer, "SHEER", ArcPath.Line(new Point2(-p.X, p.Y), new Point2(-inner, p.Y)), Sheer);
    }

    /// <summary>Heights on the drawing of a side that ends at a height above the base line [m].</summary>
    public MoldHeights Heights(MoldShaping shaping, double lowest) => new(
        HeightOf(Sheer),
        shaping.Hull.Draft > lowest ? HeightOf(shaping.Hull.Draft) : null,
        HeightOf(lowest),
        PointAt(SheerMark).X);

    /// <summary>Heights above the strongback top of the whole section, where its drawing has another origin or lies aslant.</summary>
    public MoldHeights HeightsOverStrongback(MoldShaping shaping) => new(
        shaping.Strongback.HeightOf(Sheer),
        shaping.Hull.Draft > Keel.Point.Z ? shaping.Strongback.HeightOf(shaping.Hull.Draft) : null,
        shaping.Strongback.HeightOf(Keel.Point.Z),
        PointAt(SheerMark).X);

    /// <summary>Half-breadth of the edge at a height above the base line [m]; null where it has none.</summary>
    public double? HalfBreadthAt(double z) => _section.Where(p => p.Point.Z - z) is { } s ? PointAt(s).X : null;

    /// <summary>Ordinate on the drawing of a height above the base line [m].</summary>
    public double HeightOf(double z) => (_frame.Origin.Z - z) / _cosine;

    private static double SheerIn(MoldShaping shaping, Plane plane)
    {
        double low = -0.2, high = 1.2;
        while (high - low > 1e-13)
        {
            var mid = (low + high) / 2;
            if (plane.DistanceTo(shaping.Hull.Side.PointAt(mid, 1)) < 0)
                low = mid;
            else
                high = mid;
        }

        return shaping.Hull.Side.PointAt((low + high) / 2, 1).Z;
    }

    private DirectedPoint Drawn(SectionPoint p) =>
        new(new Point2(p.Point.Y, _frame.ToDrawing(p.Point).Y), new Vector2(p.Down.Y, _frame.ToDrawing(p.Down).Y));
}
