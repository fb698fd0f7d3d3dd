namespace Lines.Kernel.Units;

/// <summary>A way to show a length.</summary>
public enum LengthNotation
{
    /// <summary>Millimeters to a tenth: <c>366.7 mm</c>.</summary>
    Millimeters,

    /// <summary>Inches and fractions to a 32nd: <c>14 7/16 in</c>.</summary>
    Inches,

    /// <summary>Feet, inches and fractions to a 32nd: <c>1' 2 7/16"</c>.</summary>
    FeetInches,

    /// <summary>Feet-inches-eighths, a last + for a sixteenth more: <c>1-2-3+</c>.</summary>
    FeetInchesEighths,
}

/// <summary>The names and steps of the notations.</summary>
public static class LengthNotations
{
    /// <summary>The notations by the names used on the command line, in the order they are offered.</summary>
    public static IReadOnlyList<(string Name, LengthNotation Notation)> ByName { get; } =
    [
        ("mm", LengthNotation.Millimeters),
        ("in", LengthNotation.Inches),
        ("ft-in", LengthNotation.FeetInches),
        ("ft-in-8ths", LengthNotation.FeetInchesEighths),
    ];

    /// <summary>The name of a notation, as on the command line.</summary>
    public static string Name(this LengthNotation notation) => ByName.First(n => n.Notation == notation).Name;

    /// <summary>The smallest difference a notation shows [m]: 0.1 mm, 1/32 in, 1/32 in, 1/16 in.</summary>
    public static double Step(this LengthNotation notation) => notation switch
    {
        LengthNotation.Millimeters => 0.0001,
        LengthNotation.Inches or LengthNotation.FeetInches => Length.Inch / 32,
        LengthNotation.FeetInchesEighths => Length.Inch / 16,
        _ => throw new ArgumentOutOfRangeException(nameof(notation), notation, "not a notation"),
    };
}
