using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Fairness;

/// <summary>One place along a line that is judged.</summary>
/// <param name="Point">The place in the axes in which the line is seen flat [m].</param>
/// <param name="Direction">Direction of the line there, any length but zero.</param>
/// <param name="Curvature">Curvature [1/m], positive where the line bulges the way it is meant to.</param>
public readonly record struct TracePoint(Point2 Point, Vector2 Direction, double Curvature);

/// <summary>A line seen flat, as samples with exact curvature and the means to find any other place exactly.</summary>
public sealed class LineTrace
{
    private readonly Func<double, TracePoint> _at;
    private readonly TracePoint[] _samples;
    private readonly double[] _lengths;
    private readonly double[] _places;

    /// <summary>Samples a line at given places.</summary>
    /// <param name="at">The line: place to point, direction and curvature.</param>
    /// <param name="places">Places, strictly increasing, at least two; first and last are the line's ends.</param>
    /// <param name="outwardSign">+1 where the intended side of the line is on its right hand, so that left turns bulge; -1 if not.</param>
    public LineTrace(Func<double, TracePoint> at, IReadOnlyList<double> places, int outwardSign)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(places);
        if (places.Count < 2)
            throw new ArgumentException(Invariant($"{places.Count} places are too few for a line"), nameof(places));
        _at = at;
        OutwardSign = outwardSign;
        _places = [.. places];
        _samples = new TracePoint[places.Count];
        _lengths = new double[places.Count];
        for (var k = 0; k < places.Count; k++)
        {
            _samples[k] = at(places[k]);
            if (k > 0)
                _lengths[k] = _lengths[k - 1] + _samples[k].Point.DistanceTo(_samples[k - 1].Point);
        }
    }

    /// <summary>Places of the samples along the line.</summary>
    public IReadOnlyList<double> Places => _places;

    /// <summary>The samples.</summary>
    public IReadOnlyList<TracePoint> Samples => _samples;

    /// <summary>Chord lengths from the start to each sample [m].</summary>
    public IReadOnlyList<double> Lengths => _lengths;

    /// <summary>Chord length of the whole [m].</summary>
    public double Length => _lengths[^1];

    /// <summary>+1 where left turns bulge the way the line is meant to, -1 where right turns do.</summary>
    public int OutwardSign { get; }

    /// <summary>The line at any place.</summary>
    public TracePoint At(double place) => _at(place);

    /// <summary>The part of the line between two samples.</summary>
    /// <param name="first">First sample of the part.</param>
    /// <param name="last">Last sample of the part, after the first.</param>
    public LineTrace Between(int first, int last)
    {
        if (first < 0 || last >= _samples.Length || last <= first)
            throw new ArgumentOutOfRangeException(nameof(last), last, Invariant($"no part of {_samples.Length} samples from {first}"));
        return first == 0 && last == _samples.Length - 1
            ? this
            : new LineTrace(this, first, last - first + 1);
    }

    private LineTrace(LineTrace whole, int first, int count)
    {
        (_at, OutwardSign) = (whole._at, whole.OutwardSign);
        _places = whole._places[first..(first + count)];
        _samples = whole._samples[first..(first + count)];
        _lengths = whole._lengths[first..(first + count)];
        var start = _lengths[0];
        for (var k = 0; k < count; k++)
            _lengths[k] -= start;
    }

    /// <summary>The trace of a hull line at its nodes and half-way between them.</summary>
    /// <param name="line">The line.</param>
    /// <param name="axes">The axes in which it is seen.</param>
    /// <param name="outwardSign">Sign of the curvature in those axes where the line bulges as meant.</param>
    public static LineTrace Of(HullLine line, FlatAxes axes, int outwardSign)
    {
        ArgumentNullException.ThrowIfNull(line);
        var places = new double[(2 * line.Nodes.Count) - 1];
        for (var k = 0; k < line.Nodes.Count; k++)
        {
            places[2 * k] = line.Nodes[k].T;
            if (k > 0)
                places[(2 * k) - 1] = (line.Nodes[k - 1].T + line.Nodes[k].T) / 2;
        }

        return new LineTrace(At, places, outwardSign);

        TracePoint At(double t)
        {
            var jet = line.JetAt(t);
            Vector2 first = axes.Flat(jet.First), second = axes.Flat(jet.Second);
            var speed = first.Length;
            return new TracePoint(axes.Flat(jet.Point), first, outwardSign * first.Cross(second) / (speed * speed * speed));
        }
    }

    /// <summary>Heading of the line at every sample against that at the first, turns added up [rad], positive to the left.</summary>
    internal double[] Headings()
    {
        var headings = new double[_samples.Length];
        for (var k = 1; k < headings.Length; k++)
        {
            var (a, b) = (_samples[k - 1].Direction, _samples[k].Direction);
            headings[k] = headings[k - 1] + Math.Atan2(a.Cross(b), a.Dot(b));
        }

        return headings;
    }

    /// <summary>Chord length from the start to the sample nearest to a place.</summary>
    internal double LengthAt(double place)
    {
        var k = 0;
        while (k < Places.Count - 1 && Places[k] < place)
            k++;
        return _lengths[k];
    }

    /// <summary>The sample nearest to a chord length from the start.</summary>
    internal int SampleAt(double length) => NearestOf(_lengths, length);

    /// <summary>Index of the nearest of rising numbers; of two as near, the later.</summary>
    internal static int NearestOf(double[] rising, double value)
    {
        var k = Array.BinarySearch(rising, value) is var i && i >= 0 ? i : ~i;
        if (k == 0 || k == rising.Length)
            return Math.Clamp(k, 0, rising.Length - 1);
        return value - rising[k - 1] < rising[k] - value ? k - 1 : k;
    }
}
