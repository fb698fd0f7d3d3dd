using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The part of a patch's parameter domain below one level water plane.</summary>
/// <remarks><b>Method.</b> Heights rise with v, so the region is v &lt; v(u), the waterline in the domain, over those u whose
/// keel is immersed. What is said of keel and sheer holds for the edges v = 0 and v = 1 of a deck, which are the sheer and the centerplane.</remarks>
internal sealed class WaterRegion
{
    /// <summary>Samples of each spline span when its roots are bracketed; a cubic piece has three at most.</summary>
    private const int SamplesPerSpan = 16;

    /// <summary>Heights closer than this are one height: a nanometer, far below the model length of 1 µm.</summary>
    private const double SameHeight = 1e-9;

    private readonly BSplineSurface _side;
    private readonly double _height;
    private readonly bool _closed;
    private double[][]? _spans;
    private (double U, double V) _last = (double.NaN, 0);

    /// <summary>Finds the region.</summary>
    /// <param name="side">The patch.</param>
    /// <param name="height">Height of the water plane [m].</param>
    /// <param name="closed">Whether the patch belongs to a closed hull, whose edge v = 1 may be under water.</param>
    /// <exception cref="DownfloodingException">The plane is above the sheer of an open hull somewhere.</exception>
    public WaterRegion(BSplineSurface side, double height, bool closed = false)
    {
        _side = side;
        _height = height;
        _closed = closed;
        if (!closed)
            RefuseDownflooding();
        Wet = [.. Immersed(Crossings(0))];
    }

    /// <summary>The intervals of u whose keel is immersed.</summary>
    public IReadOnlyList<(double From, double To)> Wet { get; }

    /// <summary>The same intervals, each cut where a spline piece ends or the waterline passes a knot of v.</summary>
    public IReadOnlyList<double[]> Spans => _spans ??= [.. Cut()];

    /// <summary>The stretches of the spans along which the waterline lies on this patch, rather than on or above its edge v = 1.</summary>
    public IEnumerable<IReadOnlyList<double>> Waterlines => _closed ? Spans.SelectMany(Dry) : Spans;

    /// <summary>Parameter v of the waterline at u; 0 where the keel is not immersed, 1 where the edge v = 1 is.</summary>
    public double WaterlineAt(double u)
    {
        if (u == _last.U)
            return _last.V;
        double keel = HeightAt(u, 0) - _height, sheer = HeightAt(u, 1) - _height;
        var v = keel >= 0 ? 0 : sheer <= 0 ? 1 : Root.Between(Height, 0, 1);
        _last = (u, v);
        return v;

        (double, double) Height(double at)
        {
            var jet = _side.JetAt(u, at);
            return (jet.Point.Z - _height, jet.V.Z);
        }
    }

    /// <summary>A point of the waterline with its derivative by u.</summary>
    public (Point3 Point, Vector3 Slope) AlongAt(double u)
    {
        var jet = _side.JetAt(u, WaterlineAt(u));
        return (jet.Point, jet.U - ((jet.U.Z / jet.V.Z) * jet.V));
    }

    /// <summary>The whole cells below the waterline, and the cells that it crosses; both over the pieces of the spline.</summary>
    public (List<Cell> Whole, List<Cell> Topped) Cells()
    {
        var whole = new List<Cell>();
        var topped = new List<Cell>();
        var v = _side.V.Breaks;
        foreach (var span in Spans)
        {
            for (var i = 1; i < span.Length; i++)
            {
                var top = WaterlineAt((span[i - 1] + span[i]) / 2);
                for (var j = 1; j < v.Count && v[j - 1] < top; j++)
                    (v[j] <= top ? whole : topped).Add(new Cell(span[i - 1], span[i], v[j - 1], v[j]));
            }
        }

        return (whole, topped);
    }

    /// <summary>Parameter v, and its rate by t, where t runs over a whole knot span but the cell ends at the waterline.</summary>
    public (double V, double Rate) BelowWaterline(double u, double t)
    {
        var span = _side.V.SpanAt(t);
        double low = _side.V.Knots[span], high = _side.V.Knots[span + 1];
        var rate = (Math.Clamp(WaterlineAt(u), low, high) - low) / (high - low);
        return (low + ((t - low) * rate), rate);
    }

    // By the jet, as the root finder reads it: two ways to add up one point differ in the last bit, and a bracket would be lost.
    private double HeightAt(double u, double v) => _side.JetAt(u, v).Point.Z;

    private void RefuseDownflooding()
    {
        foreach (var u in Samples())
        {
            var sheer = _side.PointAt(u, 1);
            if (sheer.Z < _height - SameHeight)
                throw new DownfloodingException(sheer.X, sheer.Z, _height);
        }
    }

    private IEnumerable<(double From, double To)> Immersed(List<double> keelCrossings)
    {
        double[] ends = [_side.U.Start, .. keelCrossings, _side.U.End];
        for (var i = 1; i < ends.Length; i++)
        {
            double from = ends[i - 1], to = ends[i];
            if (from < to && HeightAt((from + to) / 2, 0) < _height - SameHeight)
                yield return (from, to);
        }
    }

    private IEnumerable<double[]> Cut()
    {
        var knots = _side.V.Breaks.Skip(1).SkipLast(_closed ? 0 : 1).SelectMany(Crossings).Concat(_side.U.Breaks).Order().ToList();
        return Wet.Select(w => (double[])[w.From, .. knots.Where(k => k > w.From && k < w.To).Distinct(), w.To]);
    }

    // The runs of a span's pieces on which the edge v = 1 is not under water.
    private IEnumerable<List<double>> Dry(double[] span)
    {
        List<double> run = [];
        for (var i = 1; i < span.Length; i++)
        {
            if (IsDry((span[i - 1] + span[i]) / 2))
            {
                run.AddRange(run.Count == 0 ? [span[i - 1], span[i]] : [span[i]]);
                continue;
            }

            if (run.Count > 0)
                yield return run;
            run = [];
        }

        if (run.Count > 0)
            yield return run;
    }

    // The edge v = 1 is not under water, or level with it where the patch rises through it: there the waterline is that edge.
    private bool IsDry(double u) =>
        WaterlineAt(u) < 1 || (_side.JetAt(u, 1) is var edge && edge.V.Z > 0 && Math.Abs(edge.Point.Z - _height) <= SameHeight);

    // Where the iso-line v crosses the water plane. An iso-line that lies in the plane (the design waterline) has no crossing.
    private List<double> Crossings(double v)
    {
        var found = new List<double>();
        double? before = null;
        var beforeSign = 0;
        foreach (var u in Samples())
        {
            var difference = HeightAt(u, v) - _height;
            var sign = Math.Abs(difference) <= SameHeight ? 0 : Math.Sign(difference);
            if (sign == 0)
                continue;
            if (before is { } low && beforeSign != sign)
                found.Add(Root.Between(Along, low, u));
            (before, beforeSign) = (u, sign);
        }

        return found;

        (double, double) Along(double u)
        {
            var jet = _side.JetAt(u, v);
            return (jet.Point.Z - _height, jet.U.Z);
        }
    }

    private IEnumerable<double> Samples()
    {
        var breaks = _side.U.Breaks;
        for (var i = 1; i < breaks.Count; i++)
        {
            for (var k = 0; k < SamplesPerSpan; k++)
                yield return breaks[i - 1] + ((breaks[i] - breaks[i - 1]) * k / SamplesPerSpan);
        }

        yield return breaks[^1];
    }
}
