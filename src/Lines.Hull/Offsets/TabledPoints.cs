using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>The points a table of offsets has of one line, flat: x and its height, half-breadth or distance along the diagonal.</summary>
internal static class TabledPoints
{
    /// <summary>The points of a row of heights: at the stations, between them, and where the profile says so at the ends.</summary>
    public static List<Point2> OfHeights(TableOfOffsets table, OffsetRow row)
    {
        var points = AlongRow(table, row);
        if (row.Kind == LineKind.Keel)
        {
            points.Add(new Point2(table.Forefoot.AftOfFore, table.Forefoot.Height));
            points.Add(new Point2(table.Length - table.Heel.ForwardOfAft, table.Heel.Height));
        }
        else if (row.Kind == LineKind.Sheer && table.Ends[0] is { AftOfFore: { } fore, ForwardOfAft: { } aft } sheer)
        {
            points.Add(new Point2(fore, sheer.Fore));
            points.Add(new Point2(table.Length - aft, sheer.Aft));
        }

        return points;
    }

    /// <summary>The points of a row of half-breadths, those of stem, sternpost, keel or transom with them.</summary>
    public static List<Point2> OfHalfBreadths(TableOfOffsets table, OffsetRow row)
    {
        var points = AlongRow(table, row);
        var end = table.Ends.First(e => string.Equals(e.Label, row.Label, StringComparison.Ordinal));
        var onTransom = table.Transom.FirstOrDefault(t => string.Equals(t.Label, row.Label, StringComparison.Ordinal));
        if (end.AftOfFore is { } fore)
            points.Add(new Point2(fore, 0));
        if (end.ForwardOfAft is { } aft)
            points.Add(new Point2(table.Length - aft, onTransom?.HalfBreadth ?? 0));
        return points;
    }

    /// <summary>The points of a row at the stations and between them.</summary>
    public static List<Point2> AlongRow(TableOfOffsets table, OffsetRow row)
    {
        var points = new List<Point2>();
        for (var k = 0; k < table.Stations.Count; k++)
        {
            if (row.Values[k] is { } v)
                points.Add(new Point2(table.Stations[k].X, v));
        }

        points.AddRange(row.Between.Select(b => b.Flat));
        return points;
    }
}
