using System.Globalization;
using System.Text;
using Lines.Kernel.Units;

namespace Lines.Plans.Figures;

/// <summary>Shows figures to people, in the unit system of a notation: metric with mm, else feet and pounds.</summary>
public static class FigureText
{
    /// <summary>Kilograms in a pound, exact (international pound, 1959).</summary>
    private const double Pound = 0.45359237;

    /// <summary>A figure's value with its unit; a dash where it is unknown.</summary>
    public static string Show(Figure figure, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(figure);
        if (figure.Value is not { } value)
            return "unknown";
        var metric = notation == LengthNotation.Millimeters;
        return figure.Quantity switch
        {
            Quantity.Length => new Length(value).ToText(notation),
            Quantity.Area => metric ? Fixed(value, 3, "m²") : Fixed(value / (Length.Foot * Length.Foot), 2, "ft²"),
            Quantity.Volume => metric ? Fixed(value, 4, "m³") : Fixed(value / (Length.Foot * Length.Foot * Length.Foot), 3, "ft³"),
            Quantity.Mass => metric ? Fixed(value, 1, "kg") : Fixed(value / Pound, 1, "lb"),
            Quantity.MassPerLength => metric ? Fixed(value / 100, 2, "kg/cm") : Fixed(value * Length.Inch / Pound, 1, "lb/in"),
            Quantity.SecondMoment => metric ? Fixed(value, 4, "m⁴") : Fixed(value / Math.Pow(Length.Foot, 4), 2, "ft⁴"),
            Quantity.Angle => Fixed(new Angle(value).Degrees, 1, "deg"),
            Quantity.Fraction => Fixed(value * 100, 1, "%"),
            Quantity.Count => value.ToString("0", CultureInfo.InvariantCulture),
            _ => Fixed(value, 3, ""),
        };
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

    private static string Fixed(double value, int decimals, string unit)
    {
        var shown = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        var number = (shown == 0 ? 0 : shown).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }
}
