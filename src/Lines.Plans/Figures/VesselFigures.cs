using System.Text;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Plans.Figures;

/// <summary>One hull of a vessel with what it displaces at its own design waterline.</summary>
/// <param name="Name">What it is called; a pair is one.</param>
/// <param name="Hull">The hull.</param>
/// <param name="Afloat">What it displaces.</param>
/// <param name="Outrigger">Where it stands; null for the main hull.</param>
public sealed record HullOfVessel(string Name, HullSurface Hull, Buoyancy Afloat, Outrigger? Outrigger);

/// <summary>The hulls of a vessel beside each other: a group of figures for each outrigger, and a short table of all.</summary>
public static class VesselFigures
{
    /// <summary>Relative error of an enclosed volume: far below what any output shows.</summary>
    private const double EnclosedTolerance = 1e-9;

    /// <summary>What an outrigger is called: its number, and its side; a pair is one.</summary>
    /// <param name="number">Its number in the design, from 1.</param>
    /// <param name="side">Where it stands.</param>
    public static string NameOf(int number, OutriggerSide side) =>
        Invariant($"outrigger {number}, {(side == OutriggerSide.Both ? "port and starboard, each" : side.ToString().ToLowerInvariant())}");

    /// <summary>A group of figures for every outrigger.</summary>
    /// <param name="hulls">The hulls, main hull first.</param>
    public static IReadOnlyList<FigureGroup> Of(IReadOnlyList<HullOfVessel> hulls)
    {
        ArgumentNullException.ThrowIfNull(hulls);
        return [.. hulls.Where(h => h.Outrigger is not null).Select((h, k) => Group(h, k + 1))];
    }

    /// <summary>The hulls as a table for a terminal; nothing for a boat of one.</summary>
    /// <param name="hulls">The hulls, main hull first.</param>
    /// <param name="notation">How lengths are shown.</param>
    public static string Table(IReadOnlyList<HullOfVessel> hulls, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(hulls);
        if (hulls.Count < 2)
            return "";
        var width = hulls.Max(h => h.Name.Length);
        var text = new StringBuilder("Hulls, each at its own design waterline\n  ").Append(new string(' ', width)).Append("        length        beam       draft   displaces, fresh water\n");
        foreach (var hull in hulls)
        {
            text.Append("  ").Append(hull.Name.PadRight(width));
            foreach (var figure in Measures(hull))
                text.Append(FigureText.Show(figure, notation).PadLeft(figure.Key is "length" ? 14 : 12));
            text.Append('\n');
        }

        return text.ToString();
    }

    private static FigureGroup Group(HullOfVessel hull, int number)
    {
        var place = hull.Outrigger!;
        var deck = UprightHydrostatics.Enclosed(hull.Hull, EnclosedTolerance) is { } whole ? HullFigures.Deck(hull.Hull, whole).Figures : [];
        return new FigureGroup(Invariant($"outrigger_{number}"), FigureText.Capital(hull.Name),
        [
            new("spacing", "Spacing", place.Spacing, Quantity.Length) { Note = "its centerplane from the main hull's" },
            new("height", "Height", place.Height, Quantity.Length) { Note = "its base line above the main hull's" },
            new("aft", "Aft", place.Aft, Quantity.Length) { Note = "its foremost point aft of the main hull's" },
            .. Measures(hull),
            .. deck,
        ]);
    }

    private static IEnumerable<Figure> Measures(HullOfVessel hull)
    {
        var dimensions = HullFigures.Dimensions(hull.Hull, hull.Afloat).Figures.Where(f => f.Key is "length" or "beam" or "draft");
        return dimensions.Append(HullFigures.Afloat(hull.Afloat).Figures.First(f => f.Key is "displacement_fresh"));
    }
}
