namespace Lines.Kernel.Geometry;

/// <summary>Parallel lines that fill a region.</summary>
public static class Hatching
{
    /// <summary>The parts of equally spaced parallel lines inside a region.</summary>
    /// <remarks><b>Method.</b> Even-odd: a place is inside when a ray from it crosses the borders an odd number of times. The lines
    /// are those of one fixed family through the origin, so neighboring regions are hatched alike.</remarks>
    /// <param name="borders">Borders of the region, closed polygons; a hole is a border too.</param>
    /// <param name="spacing">Distance between the lines, above 0, in the unit of the borders.</param>
    /// <param name="angle">Direction of the lines [rad], counter-clockwise from +x.</param>
    /// <returns>The parts, line by line.</returns>
    public static IReadOnlyList<(Point2 From, Point2 To)> Lines(IReadOnlyList<IReadOnlyList<Point2>> borders, double spacing, double angle)
    {
        ArgumentNullException.ThrowIfNull(borders);
        if (!(spacing > 0))
            throw new ArgumentOutOfRangeException(nameof(spacing), spacing, "the spacing of hatching must be above 0");
        var (sin, cos) = Math.SinCos(angle);
        Vector2 along = new(cos, sin), across = along.TurnedLeft;
        var crossings = new SortedDictionary<int, List<double>>();
        foreach (var border in borders)
        {
            for (var k = 0; k < border.Count; k++)
                Side(border[k], border[(k + 1) % border.Count]);
        }

        var parts = new List<(Point2, Point2)>();
        foreach (var (line, places) in crossings)
        {
            places.Sort();
            for (var k = 0; k + 1 < places.Count; k += 2)
                parts.Add((On(line, places[k]), On(line, places[k + 1])));
        }

        return parts;

        Point2 On(int line, double place) => new Point2(0, 0) + (place * along) + (line * spacing * across);

        // A side owns the lines from its lower end up to, but not including, its upper end: no corner counts twice.
        void Side(Point2 from, Point2 to)
        {
            Vector2 a = from - new Point2(0, 0), b = to - new Point2(0, 0);
            double low = a.Dot(across) / spacing, high = b.Dot(across) / spacing;
            if (low > high)
                (a, b, low, high) = (b, a, high, low);
            for (var line = (int)Math.Ceiling(low); line < high; line++)
            {
                if (!crossings.TryGetValue(line, out var places))
                    crossings.Add(line, places = []);
                places.Add((a + ((line - low) / (high - low) * (b - a))).Dot(along));
            }
        }
    }
}
