using System.Globalization;
using System.Text;
using Lines.Kernel.Units;

namespace Lines.Plans.Figures;

/// <summary>Shows figures to people, in the unit system of a notation: metric with mm, else feet and pounds.</summary>
public static class FigureText
{
    /// <summary>Exact: a pound times standard gravity [N].</summary>
    private const double PoundForce = Mass.Pound * Standards.Gravity;

    /// <summary>A figure's value with its unit; "unknown" where it has none.</summary>
    public static string Show(Figure figure, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(figure);
        if (figure is { Quantity: Quantity.Length, Value: { } length })
            return new Length(length).ToText(notation);
        var unit = UnitOf(figure.Quantity, notation).Name;
        return figure.Value is null || unit.Length == 0 ? Number(figure, notation) : $"{Number(figure, notation)} {unit}";
    }

    /// <summary>A figure's value less its unit, for tables that name the unit once; lengths in feet keep their marks.</summary>
    internal static string Number(Figure figure, LengthNotation notation)
    {
        if (figure.Value is not { } value)
            return "unknown";
        if (figure.Quantity == Quantity.Length)
            return new Length(value).ToCell(notation);
        var unit = UnitOf(figure.Quantity, notation);
        return Fixed(value / unit.Size, unit.Decimals);
    }

    /// <summary>The unit a quantity is shown in: its size in SI, the decimals shown and its name; an empty name for a pure number.</summary>
    internal static (double Size, int Decimals, string Name) UnitOf(Quantity quantity, LengthNotation notation)
    {
        var metric = notation == LengthNotation.Millimeters;
        return quantity switch
        {
            Quantity.Length => metric ? (0.001, 1, "mm") : (Length.Inch, 2, "in"),
            Quantity.Area => metric ? (1, 3, "m²") : (Length.Foot * Length.Foot, 2, "ft²"),
            Quantity.SectionArea => metric ? (1e-4, 0, "cm²") : (Length.Inch * Length.Inch, 1, "in²"),
            Quantity.Volume => metric ? (1, 4, "m³") : (Length.Foot * Length.Foot * Length.Foot, 3, "ft³"),
            Quantity.Mass => metric ? (1, 1, "kg") : (Mass.Pound, 1, "lb"),
            Quantity.MassPerLength => metric ? (100, 2, "kg/cm") : (Mass.Pound / Length.Inch, 1, "lb/in"),
            Quantity.SecondMoment => metric ? (1, 4, "m⁴") : (Math.Pow(Length.Foot, 4), 2, "ft⁴"),
            Quantity.Angle => (Math.PI / 180, 1, "deg"),
            Quantity.MassMoment => metric ? (1, 2, "kg m") : (Mass.Pound * Length.Foot, 1, "ft lb"),
            Quantity.TrimMoment => metric ? (1, 2, "kg m/cm") : (Mass.Pound * Length.Foot * 0.01 / Length.Inch, 1, "ft lb/in"),
            Quantity.Force => metric ? (1, 0, "N") : (PoundForce, 0, "lbf"),
            Quantity.Drag => metric ? (1, 1, "N") : (PoundForce, 2, "lbf"),
            Quantity.Power => (1, 0, "W"),
            Quantity.Duration => (60, 0, "min"),
            Quantity.Run => metric ? (1, 1, "m") : (Length.Foot, 0, "ft"),
            Quantity.Distance => (Standards.NauticalMile, 1, "nm"),
            Quantity.Moment => metric ? (1, 0, "N m") : (PoundForce * Length.Foot, 0, "ft lbf"),
            Quantity.RightingArea => metric ? (1, 4, "m rad") : (Length.Foot, 4, "ft rad"),
            Quantity.Speed => (Standards.Knot, 2, "kn"),
            Quantity.Wind => (Standards.Knot, 1, "kn"),
            Quantity.Fraction => (0.01, 1, "%"),
            Quantity.Count => (1, 0, ""),
            _ => (1, 3, ""),
        };
    }

    /// <summary>A name as it begins a sentence.</summary>
    public static string Capital(string name)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        return char.ToUpperInvariant(name[0]) + name[1..];
    }

    /// <summary>Groups of figures as a text for a terminal: title, then name and value in columns.</summary>
    public static string Table(IReadOnlyList<FigureGroup> groups, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var text = new StringBuilder();
        var width = groups.SelectMany(g => g.Figures).Max(f => f.Name.Length) + 2;
        foreach (var group in groups)
        {
            text.Append(text.Length > 0 ? "\n" : "").Append(group.Title).Append('\n');
            foreach (var figure in group.Figures)
            {
                text.Append("  ").Append(figure.Name.PadRight(width)).Append(Show(figure, notation).PadLeft(14));
                var note = figure.Value is null ? figure.Why : figure.Note;
                text.Append(note.Length > 0 ? $"   {(figure.IsEstimate ? "estimate: " : "")}{note}" : "").Append('\n');
            }
        }

        return text.ToString();
    }

    private static string Fixed(double value, int decimals)
    {
        var shown = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (shown == 0 ? 0 : shown).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
