namespace Lines.Kernel.Geometry;

/// <summary>The line at a fixed distance outside a closed path.</summary>
public static class OuterParallel
{
    /// <summary>Greatest distance by which the line may stand too near to the path, of its distance.</summary>
    private const double Play = 1e-4;

    /// <summary>Places looked at along each piece, at least, and how far apart they are at most, of the distance.</summary>
    private const int LeastPlaces = 8;
    private const double Spacing = 0.25;

    private const int Halvings = 40;

    /// <summary>The line outside a path.</summary>
    /// <remarks>
    /// <para><b>Sign.</b> The path is counter-clockwise: outside is on its right.</para>
    /// <para><b>Method.</b> Every line moves out by the distance, every arc keeps its middle, and an arc about it joins what parts at a corner. What then lies
    /// nearer to the path than the distance, in inside corners and slots, is cut off where it comes near, found by halving.</para>
    /// <para><b>Accuracy.</b> Every point is at the distance from the path, less a ten-thousandth of it at most. A slot narrower than twice the distance
    /// has no line in it.</para>
    /// </remarks>
    /// <param name="path">The path, closed and counter-clockwise.</param>
    /// <param name="distance">The distance, same unit as the path, positive.</param>
    /// <returns>One closed path; open ones where ends do not meet.</returns>
    /// <exception cref="ArgumentException">The path is open.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not positive.</exception>
    public static IReadOnlyList<ArcPath> Of(ArcPath path, double distance)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!path.Closed)
            throw new ArgumentException("only a closed path has an outside", nameof(path));
        if (!(distance > 0 && double.IsFinite(distance)))
            throw new ArgumentOutOfRangeException(nameof(distance), distance, "the distance must be positive");
        List<ArcSegment> segments = [.. path.Segments().Where(s => s.From != s.To)];
        var near = segments.ConvertAll(s => (Segment: s, Bounds: s.Bounds()));
        var runs = new List<List<ArcSegment>>();
        for (var i = 0; i < segments.Count; i++)
        {
            foreach (var piece in Moved(segments[i], distance).Concat(Corner(segments[i], segments[(i + 1) % segments.Count], distance)))
            {
                foreach (var clear in Clear(piece))
                    Add(clear);
            }
        }

        if (runs.Count > 0 && Meet(runs[^1][^1].To, runs[0][0].From))
        {
            if (runs.Count == 1)
                return [new ArcPath([.. runs[0].Select(s => new ArcVertex(s.From, s.Bulge))], true)];
            runs[0].InsertRange(0, runs[^1]);
            runs.RemoveAt(runs.Count - 1);
        }

        return [.. runs.Select(r => new ArcPath([.. r.Select(s => new ArcVertex(s.From, s.Bulge)), new ArcVertex(r[^1].To, 0)], false))];

        bool Meet(Point2 a, Point2 b) => a.DistanceTo(b) <= 10 * Play * distance;

        void Add(ArcSegment piece)
        {
            if (runs.Count > 0 && Meet(runs[^1][^1].To, piece.From))
                runs[^1].Add(piece);
            else
                runs.Add([piece]);
        }

        // The stretches of a piece that keep the distance.
        IEnumerable<ArcSegment> Clear(ArcSegment piece)
        {
            var places = Math.Max(LeastPlaces, (int)Math.Ceiling(piece.Length / (Spacing * distance)));
            double? from = Keeps(0) ? 0 : null;
            for (var k = 1; k <= places; k++)
            {
                double before = (double)(k - 1) / places, here = (double)k / places;
                if (Keeps(here) == from is not null)
                    continue;
                var edge = Edge(before, here);
                if (from is { } start)
                    yield return piece.Between(start, edge);
                from = from is null ? edge : null;
            }

            if (from is { } last && last < 1)
                yield return piece.Between(last, 1);

            bool Keeps(double fraction)
            {
                var p = piece.PointAt(fraction);
                var least = (1 - Play) * distance;
                var around = new Box2(p.X, p.Y, p.X, p.Y).Grown(least);
                return !near.Exists(n => n.Bounds.Touches(around) && n.Segment.DistanceTo(p) < least);
            }

            double Edge(double one, double other)
            {
                var keeps = Keeps(one);
                for (var i = 0; i < Halvings; i++)
                {
                    var middle = (one + other) / 2;
                    if (Keeps(middle) == keeps)
                        one = middle;
                    else
                        other = middle;
                }

                return keeps ? one : other;
            }
        }
    }

    // An arc that bulges inward by no more than the distance has nothing outside it.
    private static IEnumerable<ArcSegment> Moved(ArcSegment s, double distance)
    {
        if (!s.IsLine && s.Bulge < 0 && s.Radius <= distance)
            yield break;
        yield return new ArcSegment(s.From - (distance * s.StartDirection.TurnedLeft), s.To - (distance * s.EndDirection.TurnedLeft), s.Bulge);
    }

    private static IEnumerable<ArcSegment> Corner(ArcSegment before, ArcSegment after, double distance)
    {
        Vector2 a = before.EndDirection, b = after.StartDirection;
        var turn = Math.Atan2(a.Cross(b), a.Dot(b));
        if (turn > Play)
            yield return new ArcSegment(after.From - (distance * a.TurnedLeft), after.From - (distance * b.TurnedLeft), Math.Tan(turn / 4));
    }
}
