using Lines.Hull.Form;

namespace Lines.Hull.Sections;

/// <summary>Where the lines of a lines plan are cut.</summary>
/// <param name="Stations">x of the stations [m], each with its number, bow first.</param>
/// <param name="Waterlines">Heights of the waterlines below and above the design waterline [m], lowest first, it included.</param>
/// <param name="Buttocks">Half-breadths of the buttocks [m], innermost first.</param>
/// <param name="Diagonals">The diagonals, lowest first.</param>
public sealed record LinesGrid(
    IReadOnlyList<StationMark> Stations,
    IReadOnlyList<double> Waterlines,
    IReadOnlyList<double> Buttocks,
    IReadOnlyList<DiagonalMark> Diagonals)
{
    /// <summary>Station spaces of the design waterline.</summary>
    public const int StationSpaces = 10;

    /// <summary>Half station spaces of it.</summary>
    internal const int Halves = 2 * StationSpaces;

    /// <summary>The standard grid of a hull.</summary>
    /// <remarks>
    /// Stations 0 to 10 with halves divide the design waterline, 0 forward. Waterlines stand at the quarters of the draft, on the
    /// design waterline, and at the quarters from there to the least height of the sheer. Buttocks stand at the quarters of the
    /// half-beam. The diagonals meet the bilge of the widest section about squarely (see <see cref="DiagonalMark"/>).
    /// </remarks>
    public static LinesGrid For(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var length = hull.WaterlineAft - hull.WaterlineFore;
        var stations = Enumerable.Range(0, Halves + 1)
            .Select(k => new StationMark(NumberOf(k / 2.0), k == Halves ? hull.WaterlineAft : hull.WaterlineFore + (length * k / Halves))).ToArray();
        var sheer = Cut.Sheer(hull).Nodes.Min(p => p.Point.Z);
        double draft = hull.Draft, half = hull.Dials.Beam / 2;
        double[] waterlines = [.. Quarters(0, draft), draft, .. Quarters(draft, sheer).Where(z => z > draft)];
        return new LinesGrid(stations, waterlines, [.. Quarters(0, half)], DiagonalMark.Across(hull));
    }

    private static IEnumerable<double> Quarters(double from, double to) => [.. Enumerable.Range(1, 3).Select(k => from + ((to - from) * k / 4))];

    /// <summary>A station's number as written: "0", "1/2", "3 1/4", "-1/2" before the waterline.</summary>
    /// <param name="spaces">Station spaces from its fore end, in quarters.</param>
    internal static string NumberOf(double spaces)
    {
        var whole = Math.Truncate(spaces);
        var part = Math.Abs(spaces - whole) switch { 0 => "", 0.25 => "1/4", 0.5 => "1/2", _ => "3/4" };
        if (part.Length == 0)
            return Invariant($"{whole}");
        return whole == 0 ? (spaces < 0 ? "-" : "") + part : Invariant($"{whole} {part}");
    }
}

/// <summary>A station of the lines plan.</summary>
/// <param name="Number">Its number as written, "0" to "10" with halves as "1/2", "1 1/2".</param>
/// <param name="X">Its place [m aft of the hull's foremost point].</param>
public readonly record struct StationMark(string Number, double X);

/// <summary>A diagonal of the lines plan.</summary>
/// <param name="Height">Its height on the centerplane [m].</param>
/// <param name="Angle">Its angle below level [rad].</param>
public readonly record struct DiagonalMark(double Height, double Angle)
{
    /// <summary>Three diagonals that meet the bilge of the widest section about squarely.</summary>
    /// <remarks><b>Method.</b> At the points where that section has turned through 1/4, 1/2 and 3/4 of its way from the keel to
    /// its steepest, the normal is drawn back to the centerplane; where it meets that higher than the sheer at the widest station,
    /// the diagonal starts at that height. Heights are rounded to a millimeter, angles to a degree.</remarks>
    public static IReadOnlyList<DiagonalMark> Across(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var sections = Cut.Station(hull, hull.WidestX);
        if (sections.Count == 0)
            return [];
        var section = sections[0];
        double Slope(double t) => section.DirectionAt(t) is var d ? Math.Atan2(d.Z, d.Y) : 0;
        var places = Enumerable.Range(0, 201).Select(k => k / 200.0).ToArray();
        var slopes = places.Select(Slope).ToArray();
        double low = slopes[0], high = Math.Min(slopes.Max(), Math.PI / 2);
        var top = section.End.Point.Z;
        var marks = new List<DiagonalMark>(3);
        for (var k = 1; k <= 3; k++)
        {
            var slope = low + ((high - low) * k / 4);
            var p = section.At(places[Array.FindIndex(slopes, s => s >= slope)]).Point;
            var height = Math.Round(Math.Min(top, p.Z + (p.Y / Math.Tan(slope))), 3);
            var angle = Math.Round(Math.Atan2(height - p.Z, p.Y) * 180 / Math.PI) * Math.PI / 180;
            marks.Add(new DiagonalMark(height, angle));
        }

        return marks;
    }
}
