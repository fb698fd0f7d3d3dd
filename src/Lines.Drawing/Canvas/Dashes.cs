using Lines.Kernel.Geometry;

namespace Lines.Drawing.Canvas;

/// <summary>Cuts a polyline into dashes.</summary>
internal static class Dashes
{
    /// <summary>Hands on every dash of a polyline, in order.</summary>
    /// <param name="points">The polyline.</param>
    /// <param name="pattern">Lengths of dash, gap, dash, gap ...; an odd count takes two turns until it repeats. Same unit as the points.</param>
    /// <param name="draw">Takes each dash's points; they are not kept.</param>
    /// <exception cref="ArgumentException">A length is negative, or all are 0.</exception>
    public static void Draw(IReadOnlyList<Point2> points, IReadOnlyList<double> pattern, Action<IReadOnlyList<Point2>> draw)
    {
        if (!(pattern.All(d => d >= 0) && pattern.Sum() > 0))
            throw new ArgumentException(Invariant($"a dash pattern of {pattern.Count} lengths, sum {pattern.Sum()}: none may be negative, one must be positive"), nameof(pattern));
        var dash = new List<Point2> { points[0] };
        var (turn, left) = (0, pattern[0]);
        for (var i = 1; i < points.Count; i++)
        {
            var (from, leg) = (points[i - 1], points[i] - points[i - 1]);
            var (length, done) = (leg.Length, 0.0);
            while (length - done > left)
            {
                done += left;
                var at = from + (done / length * leg);
                if (turn % 2 == 0)
                {
                    dash.Add(at);
                    draw(dash);
                }

                dash.Clear();
                dash.Add(at);
                left = pattern[++turn % pattern.Count];
            }

            left -= length - done;
            if (turn % 2 == 0)
                dash.Add(points[i]);
        }

        if (turn % 2 == 0)
            draw(dash);
    }
}
