using System.Globalization;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;
using Lines.Kernel.Units;

namespace Lines.Design.Studies;

/// <summary>What to make of a design: its main dimensions, and a name.</summary>
public sealed record StretchWish
{
    /// <summary>Length as it is to stand in the file; null keeps it. Everything along the hull follows in proportion.</summary>
    public string? Length { get; init; }

    /// <summary>Beam; null keeps it. Everything across follows in proportion.</summary>
    public string? Beam { get; init; }

    /// <summary>Depth; null keeps it. Every height follows in proportion.</summary>
    public string? Depth { get; init; }

    /// <summary>Draft; null lets it follow the depth. Nothing follows it.</summary>
    public string? Draft { get; init; }

    /// <summary>Title; null keeps it.</summary>
    public string? Title { get; init; }

    /// <summary>Notation of the lengths nobody gave; other than millimeters, every metric length of the design is written in it.</summary>
    public LengthNotation Notation { get; init; }
}

/// <summary>Makes a design of other dimensions from one there is, comments and layout kept.</summary>
/// <remarks>
/// <b>Method.</b> x, y and z are each stretched by one factor. That keeps a fair hull fair and every fullness what it was; angles follow
/// their tangents. What the builder decides (planking, mold spacing, stock) stays.
/// <b>Accuracy.</b> Lengths that follow are rounded to 1 mm or the notation's step, angles to 0.1 degrees.
/// </remarks>
public static class Stretching
{
    private const double Millimeter = 0.001;

    /// <summary>The text of the stretched design.</summary>
    /// <param name="design">The text of a sound design.</param>
    /// <param name="wish">What to make of it.</param>
    /// <returns>The text; whether it is still a sound design is for its reader to say.</returns>
    /// <exception cref="ArgumentException"><paramref name="design"/> is not sound.</exception>
    public static string Stretch(string design, StretchWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        var source = new SourceText(design, "design");
        var faults = new DiagnosticBag(source);
        var tree = TomlReader.Read(source, DesignSchema.TableNames, faults);
        var values = SchemaReader.Read(tree, faults);
        if (!faults.IsEmpty)
            throw new ArgumentException($"not a sound design: {faults.Sorted()[0].Headline}", nameof(design));

        var factors = new Factors(
            Ratio(values, "hull.length", wish.Length), Ratio(values, "hull.beam", wish.Beam), Ratio(values, "hull.depth", wish.Depth));
        var lines = source.Text.Split('\n');
        foreach (var entry in tree.Entries.OrderByDescending(e => e.Value.Place))
        {
            if (NewText(entry, values, wish, factors) is { } text)
                Replace(lines, entry.Value.Place, text);
        }

        return string.Join('\n', lines);
    }

    private static string? NewText(TomlEntry entry, DesignValues values, StretchWish wish, Factors factors)
    {
        var wished = entry.Path switch
        {
            "title" => wish.Title,
            "hull.length" => wish.Length,
            "hull.beam" => wish.Beam,
            "hull.depth" => wish.Depth,
            "hull.draft" => wish.Draft,
            _ => null,
        };
        if (wished is not null)
            return Quoted(wished);
        if (!DesignSchema.ByPath.TryGetValue(entry.Path, out var key) || values.Find(entry.Path) is not { } value)
            return null;
        var rewritten = key.Kind is KeyKind.Length or KeyKind.Lengths
            && value.Notation == LengthNotation.Millimeters && wish.Notation != LengthNotation.Millimeters;
        if (factors.Keep(key.Stretch) && !rewritten)
            return null;
        return key.Kind switch
        {
            KeyKind.Lengths => $"[{string.Join(", ", value.Numbers.Select(n => Quoted(Shown(factors.Length(key.Stretch, n), wish.Notation))))}]",
            KeyKind.Angle => Quoted(new Angle(Math.Round(factors.Angle(key.Stretch, value.Number) * (1800 / Math.PI)) * (Math.PI / 1800)).ToText()),
            _ => Quoted(Shown(factors.Length(key.Stretch, value.Number), wish.Notation)),
        };
    }

    private static double Ratio(DesignValues values, string key, string? wished) =>
        wished is not null && Length.TryParse(wished, out var length, out _) ? length.Meters / values.Number(key) : 1;

    private static string Shown(double meters, LengthNotation notation)
    {
        if (notation != LengthNotation.Millimeters)
            return new Length(meters).ToText(notation);
        var rounded = Math.Round(meters / Millimeter, MidpointRounding.AwayFromZero) * Millimeter;
        return Math.Abs(rounded) >= 1
            ? rounded.ToString("0.00#", CultureInfo.InvariantCulture) + " m"
            : new Length(rounded).ToText(LengthNotation.Millimeters);
    }

    private static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private static void Replace(string[] lines, Place place, string text)
    {
        var line = lines[place.Line - 1];
        lines[place.Line - 1] = string.Concat(line.AsSpan(0, place.Column - 1), text, line.AsSpan(place.Column - 1 + place.Length));
    }

    /// <summary>The three factors of a stretch.</summary>
    private readonly record struct Factors(double Along, double Across, double Up)
    {
        public bool Keep(Stretch stretch) => stretch == Schema.Stretch.None || Factor(stretch) == 1;

        public double Length(Stretch stretch, double value) => value * Factor(stretch);

        public double Angle(Stretch stretch, double value) => Math.Atan(Math.Tan(value) * Factor(stretch));

        private double Factor(Stretch stretch) => stretch switch
        {
            Schema.Stretch.Along => Along,
            Schema.Stretch.Across => Across,
            Schema.Stretch.Up => Up,
            Schema.Stretch.UpOverAcross => Up / Across,
            Schema.Stretch.AcrossOverUp => Across / Up,
            Schema.Stretch.AcrossOverAlong => Across / Along,
            Schema.Stretch.AlongOverUp => Along / Up,
            _ => 1,
        };
    }
}
