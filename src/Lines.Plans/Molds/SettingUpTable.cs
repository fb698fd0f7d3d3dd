using Lines.Construction.Molds;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>The table of the setting-up sheet: one row for each mold and end pattern.</summary>
internal static class SettingUpTable
{
    /// <summary>Greatest height of a row [mm].</summary>
    public const double GreatestRow = 4.8;

    /// <summary>What stands in a cell without a figure.</summary>
    public const string None = "-";

    /// <summary>A far face prouder than this takes a stroke of the plane [m].</summary>
    private const double Noticeable = 0.0002;

    /// <summary>The table.</summary>
    public static PageTable Table { get; } = new(
    [
        ("Mold", "", 21, false), ("Labeled face", "looks to", 20, false), ("Stock stands", "", 32, false),
        ("Face or foot", "from fore end", 26, true), ("Foot aft, or", "transom sheer", 26, true), ("Sheer", "above top", 24, true), ("Waterline", "above top", 24, true),
        ("Keel, inside", "above top", 24, true), ("Level top", "above top", 22, true), ("Half-breadth", "at sheer", 25, true), ("Far", "face", 14, false), ("Far face", "proud by", 22, true),
    ]);

    /// <summary>The cells of a mold's row.</summary>
    public static IEnumerable<string> Cells(Mold mold, LengthNotation notation)
    {
        string Figure(double? meters) => meters is { } m ? new Length(m).ToCell(notation) : None;
        var (face, stock) = mold.Face switch
        {
            MoldFace.Bow => ("bow", "aft of the line"),
            MoldFace.Stern => ("stern", "forward of the line"),
            _ => ("starboard", "half to each side"),
        };
        yield return mold.Name;
        yield return face;
        yield return stock;
        yield return Figure(mold.Foot.Fore);
        yield return Figure(mold.Foot.Fore == mold.Foot.Aft ? null : mold.Foot.Aft);
        yield return Figure(mold.Heights.Sheer);
        yield return Figure(mold.Heights.Waterline);
        yield return Figure(mold.LapFloor is null ? mold.Heights.Keel : null);
        yield return Figure(mold.LapFloor is null ? null : mold.Heights.Keel);
        yield return Figure(mold.Heights.HalfBreadth);
        var (farFace, proud) = mold.Proud switch
        {
            null => (None, (double?)null),
            < Noticeable => ("clear", null),
            { } p when p < notation.Step() / 2 => ("a stroke", null),
            { } p => ("plane", p),
        };
        yield return farFace;
        yield return Figure(proud);
    }
}
