using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>A place of a skin that is watched for hollows.</summary>
/// <param name="U">Its parameter along the hull.</param>
/// <param name="V">Its parameter up the section.</param>
/// <param name="Fall">Fall over half-breadth of a diagonal watched there beside that at 45 degrees; 0 for none.</param>
internal readonly record struct WatchedPlace(double U, double V, double Fall);

/// <summary>The bounds a skin is held to at sample places: heights rise up every section, and lines do not turn hollow.</summary>
internal sealed class SkinBounds
{
    /// <summary>A bulge that is no longer watched in a step [m].</summary>
    private const double Ample = 0.0005;

    /// <summary>Part of the parameter over which a section's bow is taken.</summary>
    private const double SectionReach = 0.25;

    /// <summary>The same close to the keel and the stem, where the section turns within a shorter way.</summary>
    private const double EdgeReach = 0.005;

    /// <summary>Slope of a buttock, rise over run, from which it is not watched.</summary>
    private const double SteepButtock = 0.15;

    /// <summary>How much softer lines are kept from hollows where hollow lines are asked for.</summary>
    private const double SoftForHollow = 1e-3;

    /// <summary>Part of the parameter from either end within which sections may then be hollow too.</summary>
    private const double HollowEnds = 0.18;

    /// <summary>The same for lengthwise lines: a little less than the two fifths within which a hollow was asked for.</summary>
    public const double HollowLines = 0.36;

    private readonly SplineBasis _u;
    private readonly SplineBasis _v;
    private readonly double[] _x;
    private readonly SkinScale _scale;
    private readonly bool _convex;
    private readonly List<Sample> _samples = [];
    private readonly List<Sample> _edge = [];
    private readonly int _net;

    // Room for the coefficients of one pass's rows.
    private readonly List<double[]> _values = [];

    public SkinBounds(SplineBasis u, SplineBasis v, double[] x, SkinScale scale, bool convex)
    {
        (_u, _v, _x, _scale, _convex) = (u, v, x, scale, convex);
        _net = u.Count * v.Count;
        AddSamples();
    }

    /// <summary>Watches a further place.</summary>
    /// <returns>The row that keeps the skin from folding there.</returns>
    public ElasticRow Watch(WatchedPlace place)
    {
        var sample = At(place.U, place.V, place.Fall);
        _samples.Add(sample);
        return Rise(sample);
    }

    /// <summary>Rows that keep the skin from folding; they are linear as they stand.</summary>
    public List<ElasticRow> Fold()
    {
        var rows = new List<ElasticRow>();
        foreach (var s in _samples.Concat(_edge))
        {
            rows.Add(Rise(s));

            // A transom is broadest at the sheer.
            if (s.U == 1 && _scale.Transom)
                rows.Add(new ElasticRow(s.Row(_net, new Partials(0, -1, 0, 0, 0), default), 0, SkinStiffness.Fold));
        }

        // Close to the keel the skin spreads upward, a hair even where the stem begins, so that no half-breadth is negative there.
        foreach (var s in _edge)
        {
            var least = 0.002 * _scale.Length * Math.Min(s.U, 1 - s.U);
            rows.Add(new ElasticRow(s.Row(_net, new Partials(0, -1, 0, 0, 0), default), -least, SkinStiffness.Spread));
        }

        return rows;
    }

    private ElasticRow Rise(Sample s) => new(
        s.Row(_net, default, new Partials(s.Xv, -s.Xu, 0, 0, 0)).Times(1 / _scale.Length), -s.LeastRise, SkinStiffness.Fold);

    /// <summary>The bows at the samples of a net that are hollow, with a positive depth, or near to turning so.</summary>
    public void Fill(List<Bow> bows, double[] net)
    {
        bows.Clear();
        foreach (var s in _samples)
        {
            var at = new SkinPoint(s, s.JetOf(net, _net));
            if (IsNearlyFolded(at))
                continue;
            AddNear(bows, SectionBow(at, SectionReach));

            // A hollow this far from the end can be no longer than about twice that distance, nor than an eighth of the hull.
            var weight = SkinStiffness.Convexity * (_convex || Math.Min(s.U, 1 - s.U) > HollowLines ? 1 : SoftForHollow);
            var reach = _scale.Length * Math.Min(0.125, Math.Max(0.02, 2 * Math.Min(s.U, 1 - s.U)));
            AddNear(bows, Bow.Of(at, BowStep.AlongWaterline(at, reach), weight));
            foreach (var fall in (ReadOnlySpan<double>)[1, s.Fall])
            {
                if (fall > 0 && fall * at.Q > -0.5)
                    AddNear(bows, Bow.Of(at, BowStep.AlongDiagonal(at, reach, fall), weight));
            }

            // Where a buttock runs steeper the waterlines hold it, and one more bound leads the skin astray.
            if (at.Q > 0 && Math.Abs(at.P / at.Q) < SteepButtock)
                AddNear(bows, Bow.Of(at, BowStep.AlongButtock(at, reach), weight));
        }

        foreach (var s in _edge)
        {
            var at = new SkinPoint(s, s.JetOf(net, _net));
            if (!IsNearlyFolded(at))
                AddNear(bows, SectionBow(at, EdgeReach));
        }
    }

    /// <summary>What bulges more than amply will not turn hollow in one step; if it did, the true cost would hold the step back.</summary>
    private static void AddNear(List<Bow> bows, Bow bow)
    {
        if (bow.Depth >= -Ample)
            bows.Add(bow);
    }

    /// <summary>Adds the rows of bows, linearized at the net they were taken of.</summary>
    /// <remarks>They hold until the next are added: their room is used again.</remarks>
    /// <param name="rows">Where to.</param>
    /// <param name="bows">The bows.</param>
    /// <param name="net">The net.</param>
    /// <param name="hardness">Factor on their stiffness.</param>
    public void AddConvexity(List<ElasticRow> rows, List<Bow> bows, double[] net, double hardness)
    {
        while (_values.Count < bows.Count)
            _values.Add(new double[Sample.RowLength]);
        foreach (var (bow, values) in bows.Zip(_values))
        {
            var row = bow.Row(net, _net, values);
            rows.Add(new ElasticRow(row, row.Dot(net) - bow.Depth, bow.Weight * hardness));
        }
    }

    private void AddSamples()
    {
        // The end spans hold the short sections that cross the stem: they are sampled closer toward the end.
        var last = _u.Breaks.Count - 1;
        double fore = _u.Breaks[1], aft = 1 - _u.Breaks[last - 1];
        double[] toEnds = [0.04, 0.12, 0.3, 0.5, 0.75];
        List<double> along =
        [
            .. toEnds.Select(t => fore * t),
            .. Between([.. _u.Breaks.Skip(1).Take(last - 1)], 3),
            .. toEnds.Reverse().Select(t => 1 - (aft * t)),
            .. _scale.Transom ? (double[])[1] : [],
        ];
        foreach (var u in along)
        {
            foreach (var v in Between(_v.Breaks, 3))
                _samples.Add(At(u, v));
        }

        // The keel's own edge, closer toward the ends where it turns into the stem: the deadrise never falls below level.
        foreach (var u in Between(_u.Breaks, 4).Concat([0.002, 0.006, 0.994, 0.998]))
            _edge.Add(At(u, 0));
        foreach (var u in (double[])[0, 0.005, 0.015, 0.03, 0.97, 0.985, 0.995, 1])
        {
            foreach (var v in (double[])[0.008, 0.02, 0.04, 0.08])
                _edge.Add(At(u, v));
        }
    }

    private static IEnumerable<double> Between(IReadOnlyList<double> breaks, int perSpan)
    {
        for (var s = 0; s + 1 < breaks.Count; s++)
        {
            for (var k = 0; k < perSpan; k++)
                yield return breaks[s] + ((breaks[s + 1] - breaks[s]) * (k + 0.5) / perSpan);
        }
    }

    private Sample At(double u, double v, double fall = 0) => new(_u, _v, _x, u, v) { LeastRise = _scale.LeastRise(u, v), Fall = fall };

    /// <summary>Whether the fold rows come first here.</summary>
    private bool IsNearlyFolded(in SkinPoint at) => at.Delta < Math.Max(0.3 * at.At.LeastRise * _scale.Length, 1e-6);

    /// <summary>The bow of the section at a sample, of the transom's own edge at a transom.</summary>
    private Bow SectionBow(in SkinPoint at, double reach)
    {
        var s = at.At;
        var soft = _convex || Math.Min(s.U, 1 - s.U) > HollowEnds ? 1 : SoftForHollow;
        return Bow.Of(at, s.U == 1 && _scale.Transom ? BowStep.UpTransom(at, reach) : BowStep.UpSection(at, reach), SkinStiffness.Convexity * soft);
    }
}
