using Lines.Construction.Molds;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>The table of cleats, bevels, and of what shrinking flat outlines would get wrong: a row for each station mold.</summary>
internal static class AngleTable
{
    /// <summary>The table.</summary>
    /// <param name="notation">How lengths are written.</param>
    public static PageTable Table(LengthNotation notation) => new(
    [
        ("Mold", "", 12, false), ("Line from", "fore end", 20, true), ("Cleat from", "fore end", 20, true), ("Bevel,", "sheer deg", 16, true), ("Bevel,", "bilge deg", 16, true),
        ("Bevel,", "keel deg", 16, true), ("Plain inset", ByUnit(notation), 18, true), ("there, up", "from base", 20, true), ("Sighting", "holes", 14, true),
    ]);

    /// <summary>The cells of a mold's row.</summary>
    /// <param name="mold">A station mold.</param>
    /// <param name="strongback">What it stands on.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IReadOnlyList<string> Cells(Mold mold, Strongback strongback, LengthNotation notation)
    {
        var bevels = mold.Bevels!;
        return
        [
            mold.Name, Shown(strongback.DistanceTo(mold.X)), Shown(strongback.DistanceTo(mold.FarX)), .. bevels.Places.Select(b => Degrees(b.Angle)),
            Proud(bevels.Flattest, notation), Shown(bevels.Flattest.At.Z), mold.Holes.Any(h => h.Kind == MoldHoleKind.Sight) ? "2" : SettingUpTable.None,
        ];

        string Shown(double meters) => new Length(meters).ToCell(notation);
    }

    /// <summary>An angle in degrees.</summary>
    public static string Degrees(double radians) => Invariant($"{radians * 180 / Math.PI:F1}");

    /// <summary>Second line of the heading over <see cref="Proud"/>.</summary>
    /// <param name="notation">How lengths are written.</param>
    public static string ByUnit(LengthNotation notation) => notation == LengthNotation.Millimeters ? "too big, mm" : "too big, in";

    /// <summary>By how much the hull's outline inset plainly in the plane of the mold would be too large at a place, in hundredths of a millimeter or thousandths of an inch.</summary>
    /// <param name="bevel">The place.</param>
    /// <param name="notation">How lengths are written.</param>
    public static string Proud(EdgeBevel bevel, LengthNotation notation) =>
        bevel.FlatError is not { } error ? SettingUpTable.None : notation == LengthNotation.Millimeters ? Invariant($"{1000 * error:F2}") : Invariant($"{error / Length.Inch:F3}");
}
