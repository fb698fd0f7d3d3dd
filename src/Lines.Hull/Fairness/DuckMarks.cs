namespace Lines.Hull.Fairness;

/// <summary>Where the ducks of a batten stand along a line.</summary>
/// <remarks>
/// <para><b>Method.</b> Ducks stand a given distance apart or a little less. Where the line may turn sharply they stand closer, so that it
/// turns by no more than 0.12 rad from duck to duck, and the distance between them changes gradually, by at most half the way gone:
/// a loftsman sets them closer as a turn comes on. What counts is the turn of the line as a whole over half a duck spacing, so that a
/// bump or a dent, after which the line goes on in its old direction, draws no ducks to itself.</para>
/// </remarks>
internal sealed class DuckMarks
{
    private const int LeastSpans = 12;
    private const double TurnPerSpan = 0.12;
    private const double Grading = 0.5;

    /// <summary>Part of a span that a duck keeps from the edge of a stretch over which ducks are pulled.</summary>
    private const double NoCloser = 0.4;

    private readonly LineTrace _trace;
    private readonly double[] _spans; // number of duck spans from the start to every sample, not rounded
    private readonly int _count;

    /// <summary>Sets out ducks.</summary>
    /// <param name="trace">The line.</param>
    /// <param name="spacing">Greatest distance between ducks [m]; a twelfth of the line's length where that is less.</param>
    /// <param name="turnZone">Part of the line's length from either end within which ducks may stand closer for a turn, 0 to 0.5.</param>
    public DuckMarks(LineTrace trace, double spacing, double turnZone)
    {
        _trace = trace;
        var apart = Apart(trace, Math.Min(spacing, trace.Length / LeastSpans), turnZone);
        _spans = new double[apart.Length];
        for (var k = 1; k < apart.Length; k++)
            _spans[k] = _spans[k - 1] + ((trace.Lengths[k] - trace.Lengths[k - 1]) * ((1 / apart[k]) + (1 / apart[k - 1])) / 2);
        _count = (int)Math.Ceiling(_spans[^1] - 1e-9);
    }

    /// <summary>Samples at which the ducks stand, both ends included.</summary>
    /// <param name="shift">By what part of a span they are shifted toward the end, 0 to 1.</param>
    /// <param name="pulled">Stretches, as chord lengths, over which the ducks are pulled; one stands at each edge of a stretch instead.</param>
    public List<int> Ducks(double shift, IReadOnlyList<(double From, double To)> pulled)
    {
        var edges = new SortedSet<int>();
        foreach (var (from, to) in pulled)
        {
            foreach (var length in (ReadOnlySpan<double>)[from, to])
            {
                if (length > _trace.Lengths[1] && length < _trace.Lengths[^2] && !IsWithin(pulled, length))
                    edges.Add(_trace.SampleAt(length));
            }
        }

        var ducks = new SortedSet<int>(edges) { 0, _spans.Length - 1 };
        for (var mark = shift > 0 ? shift : 1; mark < _count; mark++)
        {
            var k = LineTrace.NearestOf(_spans, mark * _spans[^1] / _count);
            if (!IsWithin(pulled, _trace.Lengths[k]) && !IsBeside(edges, k))
                ducks.Add(k);
        }

        return [.. ducks];
    }

    private static bool IsWithin(IReadOnlyList<(double From, double To)> stretches, double length)
    {
        for (var k = 0; k < stretches.Count; k++)
        {
            if (length > stretches[k].From && length < stretches[k].To)
                return true;
        }

        return false;
    }

    private bool IsBeside(SortedSet<int> edges, int sample)
    {
        foreach (var edge in edges)
        {
            if (Math.Abs(_spans[edge] - _spans[sample]) < NoCloser)
                return true;
        }

        return false;
    }

    // Distance between ducks at every sample.
    private static double[] Apart(LineTrace trace, double most, double turnZone)
    {
        var s = trace.Lengths;
        var apart = new double[s.Count];
        var headings = trace.Headings();
        int from = 0, to = 0;
        for (var k = 0; k < apart.Length; k++)
        {
            while (s[k] - s[from] > most / 4)
                from++;
            while (to < apart.Length - 1 && s[to] - s[k] < most / 4)
                to++;
            var inZone = s[k] < turnZone * trace.Length || s[k] > (1 - turnZone) * trace.Length;
            var turn = Math.Abs(headings[to] - headings[from]);
            apart[k] = inZone && turn > 0 ? Math.Min(most, TurnPerSpan * (s[to] - s[from]) / turn) : most;
        }

        for (var k = 1; k < apart.Length; k++)
            apart[k] = Math.Min(apart[k], apart[k - 1] + (Grading * (s[k] - s[k - 1])));
        for (var k = apart.Length - 2; k >= 0; k--)
            apart[k] = Math.Min(apart[k], apart[k + 1] + (Grading * (s[k + 1] - s[k])));
        return apart;
    }
}
