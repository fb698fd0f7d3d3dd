using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>Where the views stand on the sheet, and at which scales.</summary>
/// <remarks>
/// <para><b>Frame.</b> The sheet, millimeters, y up. The bow is to the right.</para>
/// <para><b>Method.</b> Profile on top, half-breadths and diagonals about one centerline below it, then a row with the tables, the
/// body plan and the title block. The largest scale of the usual ones at which all of it fits is taken; the body plan, small on a
/// slim boat, has the largest scale its own room allows. What height is left over is shared out between the views. On paper of the
/// desk's size, where lettering and tables would take the boat's room, the sheet is laid out larger and drawn smaller:
/// <see cref="Reduction"/>.</para>
/// </remarks>
internal sealed class PlanLayout
{
    /// <summary>Border to the edge of the paper [mm on paper].</summary>
    private const double Margin = 10;

    /// <summary>Paper whose shorter side is less [mm] takes a reduced sheet: Letter and A4, but not Tabloid.</summary>
    private const double LeastUnreduced = 270;

    /// <summary>The least reduction that keeps 1.8 mm lettering at 1.4 mm, the height that is still read at arm's length.</summary>
    private const double DeskReduction = 1.4 / 1.8;

    private const double Padding = 7;
    private const double LeastLabelsLeft = 24;

    /// <summary>From the grid's left end to the side labels' right end [mm].</summary>
    public const double LabelsOff = 4.8;

    private const double GridOver = 4;

    /// <summary>Side labels may stand so far into the padding [mm].</summary>
    private const double LabelsInPadding = 4;

    private const double LabelsRight = 14;
    private const double TableWidth = 92;
    private const double TitleWidth = 104;
    private const double LeastFoot = 62;

    /// <summary>Height above the profile for the length overall [mm].</summary>
    private const double AboveProfile = 16;

    /// <summary>Height below the base line for the keel's comb, the station numbers and the waterline length [mm].</summary>
    private const double BelowProfile = 25;

    /// <summary>Height above the half-breadths for the sheer's comb [mm].</summary>
    private const double AbovePlan = 15;

    /// <summary>Height below the diagonals for the station numbers [mm].</summary>
    private const double BelowDiagonals = 8;

    /// <summary>Heights above and below the body plan for labels and the beam [mm].</summary>
    private const double AroundBody = 24;

    /// <summary>Scales a drawing may have, 1 to each.</summary>
    public static IReadOnlyList<int> Scales { get; } = [1, 2, 4, 5, 6, 8, 10, 12, 15, 16, 20, 24, 25, 30, 40, 50, 60, 75, 100];

    private PlanLayout(PlanExtents e, PaperSize paper, double labelsLeft, int scale, int bodyScale)
    {
        Extents = e;
        Reduction = ReductionOn(paper);
        (Width, Height) = (paper.Height / Reduction, paper.Width / Reduction);
        Scale = scale;
        BodyScale = bodyScale;
        Border = BorderOn(paper);
        var room = Border.Grown(-Padding);
        double k = PerMeter, kb = BodyPerMeter;
        var foot = FootHeight(e, kb);
        var gap = (room.Height - UpperHeight(e, k) - foot) / 3;
        Bow = room.Right - LabelsRight - (((room.Width - labelsLeft - LabelsRight) - (e.Length * k)) / 2);
        BaseLine = room.Top - AboveProfile - (e.Top * k) - (gap / 2);
        Centerline = BaseLine - BelowProfile - gap - AbovePlan - (e.HalfBeam * k);
        Foot = new Box2(room.Left, room.Bottom, room.Right, Centerline - (e.Diagonal * k) - BelowDiagonals - gap);
        var body = new Box2(room.Left + TableWidth, Foot.Bottom, room.Right - TitleWidth, Foot.Top);
        Body = new Point2(body.Center.X, Foot.Bottom + (Foot.Height / 2) - (((e.Top + Math.Min(0, e.Bottom)) * kb) / 2));
        Table = Foot with { Right = room.Left + TableWidth };
        TitleBlock = new Box2(Border.Right - TitleWidth, Border.Bottom, Border.Right, Border.Bottom + LeastFoot);
    }

    /// <summary>Sizes of what is drawn.</summary>
    public PlanExtents Extents { get; }

    /// <summary>Millimeters on paper to a millimeter of the layout, at most 1; all other lengths here are the layout's.</summary>
    public double Reduction { get; }

    /// <summary>Width of the sheet [mm].</summary>
    public double Width { get; }

    /// <summary>Height of the sheet [mm].</summary>
    public double Height { get; }

    /// <summary>Profile, half-breadths and diagonals are drawn at 1 to this.</summary>
    public int Scale { get; }

    /// <summary>The body plan is drawn at 1 to this.</summary>
    public int BodyScale { get; }

    /// <summary>The border [mm].</summary>
    public Box2 Border { get; }

    /// <summary>Abscissa of the hull's foremost point in the lengthwise views [mm].</summary>
    public double Bow { get; }

    /// <summary>Ordinate of the base line in the profile [mm].</summary>
    public double BaseLine { get; }

    /// <summary>Ordinate of the centerline between half-breadths and diagonals [mm].</summary>
    public double Centerline { get; }

    /// <summary>Centerline and base line of the body plan [mm].</summary>
    public Point2 Body { get; }

    /// <summary>The row below the views [mm].</summary>
    public Box2 Foot { get; }

    /// <summary>Room of the tables [mm].</summary>
    public Box2 Table { get; }

    /// <summary>Room of the title block [mm].</summary>
    public Box2 TitleBlock { get; }

    /// <summary>Left end of the grid in the lengthwise views [mm].</summary>
    public double GridLeft => Bow - (Extents.Length * PerMeter) - GridOver;

    /// <summary>Right end of the grid in the lengthwise views [mm].</summary>
    public double GridRight => Bow + GridOver;

    /// <summary>Millimeters to a meter in the lengthwise views.</summary>
    public double PerMeter => 1000 / (Scale * Reduction);

    /// <summary>Millimeters to a meter in the body plan.</summary>
    public double BodyPerMeter => 1000 / (BodyScale * Reduction);

    /// <summary>The layout of a hull's lines on a paper.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="widestLabel">Width of the widest label beside the lengthwise views [mm].</param>
    /// <exception cref="ArgumentException">The paper is too small for the smallest scale.</exception>
    public static PlanLayout Of(HullLines lines, PaperSize paper, double widestLabel)
    {
        var labelsLeft = Math.Max(LeastLabelsLeft, GridOver + LabelsOff + widestLabel - LabelsInPadding);
        var e = PlanExtents.Of(lines);
        var room = BorderOn(paper).Grown(-Padding);
        var perScale = 1000 / ReductionOn(paper);
        foreach (var scale in Scales)
        {
            if ((e.Length * perScale / scale) + labelsLeft + LabelsRight > room.Width)
                continue;
            foreach (var body in Scales)
            {
                if (body <= scale && FitsBody(e, perScale / body, room.Width) && UpperHeight(e, perScale / scale) + FootHeight(e, perScale / body) <= room.Height)
                    return new PlanLayout(e, paper, labelsLeft, scale, body);
            }
        }

        throw new ArgumentException(Invariant($"{paper.Name} paper is too small for the lines of a hull of {e.Length} m"), nameof(paper));
    }

    private static double ReductionOn(PaperSize paper) => paper.Width < LeastUnreduced ? DeskReduction : 1;

    private static Box2 BorderOn(PaperSize paper)
    {
        var k = ReductionOn(paper);
        return new Box2(0, 0, paper.Height / k, paper.Width / k).Grown(-Margin / k);
    }

    // The body plan is welcome at twice the scale or so; beyond that it would dwarf the other views.
    private static bool FitsBody(PlanExtents e, double k, double width) => 2 * e.HalfBeam * k <= width - TableWidth - TitleWidth - 34;

    private static double UpperHeight(PlanExtents e, double k) =>
        AboveProfile + BelowProfile + AbovePlan + BelowDiagonals + ((e.Top + e.HalfBeam + e.Diagonal) * k);

    private static double FootHeight(PlanExtents e, double k) => Math.Max(LeastFoot, (e.Top * k) + AroundBody);
}

/// <summary>Sizes of what a lines plan shows [m].</summary>
/// <param name="Length">Length overall.</param>
/// <param name="Top">Greatest height of the sheer, or of the deck.</param>
/// <param name="Bottom">Least height of the keel.</param>
/// <param name="HalfBeam">Half the greatest breadth.</param>
/// <param name="Diagonal">Greatest distance along a diagonal.</param>
internal sealed record PlanExtents(double Length, double Top, double Bottom, double HalfBeam, double Diagonal)
{
    /// <summary>Measures a hull's lines.</summary>
    public static PlanExtents Of(HullLines lines)
    {
        var edges = new[] { lines.Sheer, lines.Keel, lines.Stem, lines.Stern }.SelectMany(l => l.Nodes).Select(n => n.Point).ToList();
        var breadths = lines.Stations.Concat(lines.Waterlines).Append(lines.Sheer).SelectMany(l => l.Nodes).Max(n => n.Point.Y);
        var diagonal = lines.Diagonals.SelectMany(d => d.Nodes.Select(n => d.Axes.Flat(n.Point).Y)).DefaultIfEmpty(0).Max();
        return new PlanExtents(edges.Max(p => p.X), edges.Concat(DeckLines.Of(lines.Hull)?.Ridge ?? []).Max(p => p.Z), edges.Min(p => p.Z), Math.Max(breadths, lines.Hull.Dials.Beam / 2), diagonal);
    }
}
