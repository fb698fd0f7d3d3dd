using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The lines a designer means by a boat, shaped before the surface: midship section, ends, keel, design waterline, sheer.</summary>
/// <remarks>Where the foot of an end reaches the design waterline, that line ends on the keel or on a sliver of the stem. The iso-line laid
/// in its place, the reference line, then leaves it forward (aft) of the middle and rises to a height at which the end has a foot's length
/// of profile below it; the skin takes its shape from it, but the fullness is asked of the waterline cut from the skin.</remarks>
internal sealed record CharacterLines
{
    /// <summary>Where the spans of a side begin, from its end to the widest station, as a rule: nearly even ones make the fairest lines, and the
    /// shorter the last the less a dial of one end is felt at the other.</summary>
    public static readonly double[] UsualSpans = [0, 0.26, 0.53, 0.79];

    /// <summary>What is tried where the usual ones make no hull or no fair one: more of them, and short ones at the widest station, so that a fine
    /// end can lie beside a full one; and fewer near the ends.</summary>
    public static readonly double[][] OtherSpans = [[0, 0.16, 0.42, 0.69, 0.9], [0, 0.35, 0.65, 0.87]];

    /// <summary>Where a hull is widest when nobody says, by its stern: where most of them are fairest, and held so that a dial of one end moves nothing at the other.</summary>
    private static readonly (double Pointed, double Transom) UsualWidest = (0.50, 0.56);

    private static readonly (double Foremost, double Aftmost) PlausibleWidest = (0.42, 0.58);

    /// <summary>Times the least bending of a design waterline that are taken for as fair: curvatures a twentieth greater.</summary>
    private const double AsFair = 1.1;

    /// <summary>Least part of the profile's height that lies below the end of the reference line.</summary>
    private const double LeastShare = 0.06;

    /// <summary>Change of the keel's slopes at its ends and of its height amidships that ends their shaping in turns with the stem's: a hundredth of the model length.</summary>
    private const double Still = 1e-8;

    public required HullDials Dials { get; init; }

    /// <summary>Where the spans of a side begin.</summary>
    public required double[] Spans { get; init; }

    /// <summary>The ends of the design waterline as they would lie alone.</summary>
    public required (EndAlone Bow, EndAlone Stern) Ends { get; init; }

    public required SplineBasis U { get; init; }

    public required double WidestU { get; init; }

    /// <summary>The widest section with its keel on the base line.</summary>
    public required MidshipSection OnBase { get; init; }

    /// <summary>The widest section with its keel where it is.</summary>
    public required MidshipSection Midship { get; init; }

    public required EndProfile Bow { get; init; }

    public required EndProfile Stern { get; init; }

    /// <summary>x of the net's poles, row by row along u [m].</summary>
    public required double[] X { get; init; }

    public required BattenLine Keel { get; init; }

    /// <summary>The reference line in plan: the design waterline, but for an end that is raised.</summary>
    public required BattenLine Waterline { get; init; }

    public required BattenLine SheerPlan { get; init; }

    public required BattenLine SheerProfile { get; init; }

    public SplineBasis V => Midship.V;

    public double WaterlineV => Midship.WaterlineV;

    /// <summary>Whether the reference line leaves the design waterline toward the bow.</summary>
    public bool ForeIsRaised => ReferenceFore(Dials) > Dials.Draft;

    /// <summary>Whether it does toward the stern.</summary>
    public bool AftIsRaised => ReferenceAft(Dials) > Dials.Draft;

    /// <summary>Height of a pole of the reference line [m].</summary>
    public double ReferenceHeight(int i)
    {
        // The three poles with a say at the widest station stay on the waterline: the rise begins beyond them.
        const double span = 0.25;
        var g = U.GrevilleAt(i);
        var fore = Math.Max(0, ((WidestU - g) / WidestU) - span) / (1 - span);
        var aft = Math.Max(0, ((g - WidestU) / (1 - WidestU)) - span) / (1 - span);
        return Dials.Draft + ((ReferenceFore(Dials) - Dials.Draft) * fore * fore * fore) + ((ReferenceAft(Dials) - Dials.Draft) * aft * aft * aft);
    }

    /// <summary>x of the fore and the after end of the design waterline [m].</summary>
    public (double Fore, double Aft) WaterlineEnds()
    {
        var fore = Bow.Z[0] < Dials.Draft ? Bow.InwardAt(V, Dials.Draft) : Keel.XAt(KeelCrossing(0));
        var aft = Stern.Z[0] < Dials.Draft ? Dials.Length - Stern.InwardAt(V, Dials.Draft) : Keel.XAt(KeelCrossing(1));
        return (fore, aft);
    }

    /// <summary>Shapes the lines; <c>widest</c> left out is put by <see cref="FreeWidest"/>.</summary>
    public static CharacterLines Shape(HullDials d, double[] spans)
    {
        var onBase = MidshipSection.Shape(d, 0);
        var ends = EndsAlone(d, onBase);
        return ShapeAt(d, spans, ends, d.Widest ?? FreeWidest(d, spans, ends), onBase).Placed();
    }

    /// <summary>Shapes the lines on the spans of a hull of nearly the same dials, with its widest station where none is asked for.</summary>
    public static CharacterLines ShapeNear(HullDials d, HullSurface near)
    {
        var onBase = near.OnBase is { } known && MidshipSection.AreAlike(d, near.Dials) ? known : MidshipSection.Shape(d, 0);
        return ShapeAt(d, [.. near.Side.U.Breaks.Where(u => u < near.WidestU).Select(u => u / near.WidestU)], EndsAlone(d, onBase), d.Widest ?? near.WidestU, onBase).Placed();
    }

    /// <summary>The fore half of the waterplane where the design waterline ends on the keel or close above it.</summary>
    public CutArea EntryArea() => AreaFrom(Bow.Z[0] < Dials.Draft ? 0 : KeelCrossing(0), WaterlineEnds().Fore);

    /// <summary>The after half of it.</summary>
    public CutArea RunArea() => AreaFrom(Stern.Z[0] < Dials.Draft ? 1 : KeelCrossing(1), WaterlineEnds().Aft);

    private CutArea AreaFrom(double end, double x) => new(
        Dials.Draft, end, WidestU, Math.Abs(SplineRows.Value(U, WidestU, 0, Waterline.Abscissa) - x) * Midship.WaterlineHalfBreadth);

    private double KeelCrossing(int end) => Root.FirstWhere(u => Keel.At(u) >= Dials.Draft, WidestU, end);

    /// <summary>Placings of the widest station, the first of them by the whole way: where whole ways go to and fro, half ones settle.</summary>
    private const int WholePlacings = 8;

    private const int MostPlacings = 40;

    /// <summary>The lines with the widest station at its part of the design waterline, which may be shorter than the reference line.</summary>
    private CharacterLines Placed()
    {
        var lines = this;
        for (var pass = 0; pass < MostPlacings && Dials.Widest is double widest && (ForeIsRaised || AftIsRaised) && lines.Keel.At(lines.WidestU) < Dials.Draft && lines.Midship.IsMet; pass++)
        {
            var (fore, aft) = lines.WaterlineEnds();
            var line = lines.Waterline.Abscissa;
            var u = (fore + (widest * (aft - fore)) - line[0]) / (line[^1] - line[0]);
            if (Math.Abs(u - lines.WidestU) < 1e-9)
                break;
            lines = ShapeAt(Dials, Spans, Ends, pass < WholePlacings ? u : (u + lines.WidestU) / 2, OnBase);
        }

        return lines;
    }

    /// <summary>Each end of the design waterline as it would lie alone, so that a dial of one end is not felt at the other.</summary>
    private static (EndAlone Bow, EndAlone Stern) EndsAlone(HullDials d, MidshipSection onBase) => (
        EndAlone.Of(d.Bow.EntryFullness, !d.Hollow && ReferenceFore(d) <= d.Draft, null),
        EndAlone.Of(d.Stern.RunFullness, !d.Hollow && ReferenceAft(d) <= d.Draft, TransomEnds(d, onBase)));

    /// <summary>Where the widest station stands when nobody says, as a part of the design waterline: at its usual place, which hangs on no dial but the kind
    /// of stern, as long as the waterline bends there little more than where it bends least; else where it first does on the way to the latter.</summary>
    private static double FreeWidest(HullDials d, double[] spans, (EndAlone, EndAlone) ends)
    {
        var usual = d.Stern is TransomStern ? UsualWidest.Transom : UsualWidest.Pointed;
        var least = Peak.Over(widest => -Energy(widest), [PlausibleWidest.Foremost, usual, PlausibleWidest.Aftmost]);
        return Energy(usual) <= AsFair * -least.Value ? usual : Root.FirstWhere(widest => Energy(widest) <= AsFair * -least.Value, usual, least.At);

        double Energy(double widest)
        {
            var line = ShapeWaterline(Lengthwise(spans, widest), widest, 0, 1, 1, d, ends);
            return line.Energy + (1e4 * line.Hollow);
        }
    }

    private static double ReferenceFore(HullDials d) => Reference(d.Draft, d.Bow.Rocker, d.Bow.Sheer);

    private static double ReferenceAft(HullDials d) => Reference(d.Draft, d.Stern.FootHeight, d.Stern.Sheer);

    private static double Reference(double draft, double foot, double sheer) => Math.Max(draft, foot + (LeastShare * (sheer - foot)));

    private static CharacterLines ShapeAt(HullDials d, double[] spans, (EndAlone Bow, EndAlone Stern) ends, double um, MidshipSection onBase)
    {
        var u = Lengthwise(spans, um);
        var midship = onBase;
        var vw = midship.WaterlineV;
        double keelFore = 0, keelAft = 0, atMidship = 0;
        for (var pass = 0; ; pass++)
        {
            var bow = EndProfile.Stem(midship.V, vw, d.Bow.Rocker, ReferenceFore(d), d.Bow.Sheer, d.Bow.Forefoot, keelFore, d.Bow.Profile);
            var fore = SplineRows.Value(midship.V, vw, 0, bow.Inward);
            var (stern, waterline) = ShapeStern(d, u, um, midship, fore, keelAft, ends);
            var aft = waterline.Abscissa[^1];
            var x = Abscissas(u, midship.V, um, fore + (um * (aft - fore)), bow, stern, d.Length);
            var keel = ShapeKeel(d, u, um, Column(x, u, midship.V, 0), stern.Z[0]);
            var settled = Math.Abs(keelFore + keel.SlopeAt(0)) + Math.Abs(keelAft - keel.SlopeAt(1)) + Math.Abs(atMidship - keel.At(um));
            if (settled < Still || pass == 30 || !(keel.At(um) < d.Draft) || (!midship.IsMet && (pass > 0 || d.KeelLow is null)))
            {
                var sheerX = Column(x, u, midship.V, midship.V.Count - 1);
                return new CharacterLines
                {
                    Dials = d,
                    Spans = spans,
                    Ends = ends,
                    U = u,
                    WidestU = um,
                    OnBase = onBase,
                    Midship = midship,
                    Bow = bow,
                    Stern = stern,
                    X = x,
                    Keel = keel,
                    Waterline = waterline,
                    SheerPlan = ShapeSheerPlan(d, u, um, sheerX, midship.Y[^1], stern.Y[^1], waterline),
                    SheerProfile = ShapeSheerProfile(d, u, um, sheerX),
                };
            }

            (keelFore, keelAft) = (-keel.SlopeAt(0), keel.SlopeAt(1));
            if (d.KeelLow is not null && Math.Abs(atMidship - keel.At(um)) > 1e-13)
            {
                atMidship = keel.At(um);
                midship = MidshipSection.Shape(d, atMidship);
                vw = midship.WaterlineV;
            }
        }
    }

    private static SplineBasis Lengthwise(double[] spans, double um) => SplineBasis.Clamped(
        3,
        [
            .. spans.Select(t => um * t),
            um,
            .. spans.Reverse().Select(t => 1 - ((1 - um) * t)),
        ]);

    private static (EndProfile Stern, BattenLine Waterline) ShapeStern(
        HullDials d, SplineBasis u, double um, MidshipSection midship, double fore, double keelAft, (EndAlone, EndAlone) ends)
    {
        double vw = midship.WaterlineV, half = midship.WaterlineHalfBreadth;
        if (d.Stern is PointedStern p)
        {
            var stern = EndProfile.Stem(midship.V, vw, p.Rocker, ReferenceAft(d), p.Sheer, p.Heel, keelAft, p.Profile);
            var aft = d.Length - SplineRows.Value(midship.V, vw, 0, stern.Inward);
            return (stern, ShapeWaterline(u, um, fore, aft, half, d, ends));
        }

        // The waterline ends on the transom's plane; where on it, breadthwise, is the waterline's own fairest answer.
        var t = (TransomStern)d.Stern;
        var end = d.Length - (Math.Tan(t.Rake) * ((t.Rake >= 0 ? t.Sheer : t.Foot) - ReferenceAft(d)));
        var line = ShapeWaterline(u, um, fore, end, half, d, ends);
        return (EndProfile.Transom(midship.V, vw, ReferenceAft(d), d, t, line.Ordinate[^1], midship), line);
    }

    private static BattenLine ShapeKeel(HullDials d, SplineBasis u, double um, double[] x, double aft)
    {
        using var line = new Batten(u, x);
        var low = d.KeelLow is double k ? ParameterAt(u, x, k * d.Length) : um;
        line.Pass(0, d.Bow.Rocker);
        line.Pass(1, aft);
        line.Pass(low, 0);
        line.Slope(low, 0);
        line.OneSided(1);
        return line.Solve();
    }

    private static BattenLine ShapeWaterline(SplineBasis u, double um, double fore, double aft, double half, HullDials d, (EndAlone Bow, EndAlone Stern) ends)
    {
        double[] x = [.. Enumerable.Range(0, u.Count).Select(i => fore + (u.GrevilleAt(i) * (aft - fore)))];
        using var line = new Batten(u, x);
        line.Pass(0, 0);
        line.Pass(um, half);
        line.Slope(um, 0);
        line.Area(0, um, d.Bow.EntryFullness * um * (aft - fore) * half);
        line.Area(um, 1, d.Stern.RunFullness * (1 - um) * (aft - fore) * half);
        line.Slope(0, d.Bow.EntryAngle is double entry ? Math.Tan(entry) : ends.Bow.Slope * half / (um * (aft - fore)));
        line.Pass(1, ends.Stern.Ordinate * half);
        line.Slope(1, -(d.Stern is PointedStern { RunAngle: double run } ? Math.Tan(run) : ends.Stern.Slope * half / ((1 - um) * (aft - fore))));

        var (from, to) = OneSided(d, um);
        if (!d.Hollow)
            line.OneSided(-1, from, to);
        return line.Solve();
    }

    /// <summary>Half-breadths between which the design waterline ends on a transom, over that at the widest station.</summary>
    /// <remarks>The transom must be able to take the end on a section without hollow: outside the straight line from its foot to its breadth at
    /// the sheer, and inside what the widest section would give at that breadth.</remarks>
    private static (double Least, double Most)? TransomEnds(HullDials d, MidshipSection onBase)
    {
        if (d.Stern is not TransomStern t)
            return null;
        double share = (ReferenceAft(d) - t.Foot) / (t.Sheer - t.Foot), most = 0.98 * t.Breadth / d.Beam;
        return (Math.Min(most, 1.15 * share * t.Breadth / 2 / onBase.WaterlineHalfBreadth), most);
    }

    /// <summary>Parameters between which the reference line must bulge; toward a raised end it is no line of the boat.</summary>
    internal static (double From, double To) OneSided(HullDials d, double um) =>
        (ReferenceFore(d) > d.Draft ? um : 0, ReferenceAft(d) > d.Draft ? um : 1);

    private static BattenLine ShapeSheerPlan(
        HullDials d, SplineBasis u, double um, double[] x, double half, double aft, BattenLine waterline)
    {
        using var line = new Batten(u, x);
        line.Pass(0, 0);
        line.Pass(1, aft);
        line.Pass(um, half);
        line.Slope(um, 0);
        var widest = SplineRows.Value(u, um, 0, x);
        if (d.Bow.SheerFullness is double bow)
            line.Area(0, um, bow * (widest - x[0]) * half);
        if (d.Stern.SheerFullness is double stern)
            line.Area(um, 1, stern * (x[^1] - widest) * half);
        if (!d.Hollow)
            line.OneSided(-1);
        for (var k = 1; d.Midship.Flare >= 0 && k < 20; k++)
            line.AtLeast(k / 20.0, waterline.At(k / 20.0));
        return line.Solve();
    }

    private static BattenLine ShapeSheerProfile(HullDials d, SplineBasis u, double um, double[] x)
    {
        using var line = new Batten(u, x);
        line.Pass(0, d.Bow.Sheer);
        line.Pass(1, d.Stern.Sheer);
        line.Pass(um, d.Depth);

        // Tumblehome keeps its beam exact only if heights are widest at the widest station: the sheer is level there.
        if (d.Midship.Flare < 0)
            line.Slope(um, 0);
        var share = (SplineRows.Value(u, um, 0, x) - x[0]) / (x[^1] - x[0]);
        var chord = d.Bow.Sheer + (share * (d.Stern.Sheer - d.Bow.Sheer));
        line.OneSided(d.Depth <= chord ? 1 : -1);
        return line.Solve();
    }

    /// <summary>x of the net: ruled from end to end, with a bump that makes the section at the widest station plane.</summary>
    private static double[] Abscissas(
        SplineBasis u, SplineBasis v, double um, double widest, EndProfile bow, EndProfile stern, double length)
    {
        using var line = new Batten(u, [.. Enumerable.Range(0, u.Count).Select(u.GrevilleAt)]);
        line.Pass(0, 0);
        line.Pass(1, 0);
        line.Pass(um, 1);
        var bump = line.Solve().Ordinate;
        var x = new double[u.Count * v.Count];
        for (var i = 0; i < u.Count; i++)
        {
            var g = u.GrevilleAt(i);
            for (var j = 0; j < v.Count; j++)
            {
                double fore = bow.Inward[j], aft = length - stern.Inward[j];
                x[(i * v.Count) + j] = ((1 - g) * fore) + (g * aft) + (bump[i] * (widest - ((1 - um) * fore) - (um * aft)));
            }
        }

        return x;
    }

    private static double[] Column(double[] x, SplineBasis u, SplineBasis v, int j) =>
        [.. Enumerable.Range(0, u.Count).Select(i => x[(i * v.Count) + j])];

    /// <summary>Parameter where an increasing spline takes a value.</summary>
    internal static double ParameterAt(SplineBasis u, double[] poles, double value)
    {
        double low = 0, high = 1;
        for (var k = 0; k < 60; k++)
        {
            var middle = (low + high) / 2;
            if (SplineRows.Value(u, middle, 0, poles) < value)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }
}
