using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>The table of the setting-up sheet: one row for each mold and end pattern.</summary>
internal static class SettingUpTable
{
    /// <summary>Least height of a row [mm].</summary>
    public const double LeastRow = 3.6;

    /// <summary>Greatest height of a row [mm].</summary>
    public const double GreatestRow = 4.8;

    /// <summary>Height of the heading [mm].</summary>
    public const double Head = 9.5;

    private const double Letters = 2.3;
    private const double HeadLetters = 1.9;

    /// <summary>What stands in a cell without a figure.</summary>
    public const string None = "-";

    /// <summary>A far face prouder than this takes a stroke of the plane [m].</summary>
    private const double Noticeable = 0.0002;

    private static readonly (string First, string Second, double Width, bool Figures)[] s_columns =
    [
        ("Mold", "", 22, false), ("Labeled face", "looks to", 26, false), ("Stock stands", "", 34, false),
        ("Station face from", "strongback fore end", 42, true), ("Sheer", "above top", 24, true), ("Waterline", "above top", 24, true),
        ("Keel, inside", "above top", 27, true), ("Half-breadth", "at sheer", 27, true), ("Far face", "proud", 22, true),
    ];

    /// <summary>A length as figures: millimeters with their tenth, so that the points stand below each other.</summary>
    public static string Figure(double meters, LengthNotation notation) =>
        notation == LengthNotation.Millimeters ? Invariant($"{meters * 1000:F1}") : new Length(meters).ToFigure(notation);

    /// <summary>Draws the heading and rows.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="room">Where; its top is the table's.</param>
    /// <param name="molds">The molds of the rows.</param>
    /// <param name="row">Height of a row [mm].</param>
    /// <param name="notation">How lengths are written.</param>
    public static void Draw(PageMarks marks, Box2 room, IEnumerable<Mold> molds, double row, LengthNotation notation)
    {
        var stretch = room.Width / s_columns.Sum(c => c.Width);
        var y = room.Top;
        marks.Line(SettingUpInks.Heavy, new Point2(room.Left, y), new Point2(room.Right, y));
        var x = room.Left;
        foreach (var column in s_columns)
        {
            Cell(marks, column.First, x, stretch * column.Width, y - 3.6, column.Figures, HeadLetters);
            Cell(marks, column.Second, x, stretch * column.Width, y - 7.4, column.Figures, HeadLetters);
            x += stretch * column.Width;
        }

        y -= Head;
        marks.Line(SettingUpInks.Heavy, new Point2(room.Left, y), new Point2(room.Right, y));
        foreach (var mold in molds)
        {
            x = room.Left;
            foreach (var (text, column) in Cells(mold, notation).Zip(s_columns))
            {
                Cell(marks, text, x, stretch * column.Width, y - row + ((row - Letters) / 2), column.Figures, Letters);
                x += stretch * column.Width;
            }

            y -= row;
            marks.Line(SettingUpInks.Fine, new Point2(room.Left, y), new Point2(room.Right, y));
        }
    }

    private static void Cell(PageMarks marks, string text, double x, double width, double y, bool figures, double height)
    {
        if (text.Length > 0)
            marks.Text(SettingUpInks.Text, text, new Point2(figures ? x + width - 2 : x + 1, y), height, width - 2, figures ? Anchor.Right : Anchor.Left);
    }

    // Less than the notation's least step is said so: a stroke or two of the plane.
    private static string ProudBy(double proud, LengthNotation notation) =>
        proud < notation.Step() / 2 ? "under " + Figure(notation.Step(), notation) : Figure(proud, notation);

    /// <summary>The headings of the columns.</summary>
    public static IEnumerable<string> Headings => s_columns.Select(c => $"{c.First} {c.Second}".TrimEnd());

    /// <summary>The cells of a mold's row.</summary>
    public static IEnumerable<string> Cells(Mold mold, LengthNotation notation)
    {
        string Figure(double? meters) => meters is { } m ? SettingUpTable.Figure(m, notation) : None;
        var (face, stock) = mold.Face switch
        {
            MoldFace.Bow => ("bow", "aft of the line"),
            MoldFace.Stern => ("stern", "forward of the line"),
            _ => ("starboard", "half to each side"),
        };
        yield return mold.Name;
        yield return face;
        yield return stock;
        yield return mold.Foot.Fore == mold.Foot.Aft
            ? Figure(mold.Foot.Fore)
            : mold.Kind == MoldKind.Transom ? $"foot {Figure(mold.Foot.Fore)}, sheer {Figure(mold.Foot.Aft)}" : $"{Figure(mold.Foot.Fore)} to {Figure(mold.Foot.Aft)}";
        yield return Figure(mold.Heights.Sheer);
        yield return Figure(mold.Heights.Waterline);
        yield return mold.LapFloor is null ? Figure(mold.Heights.Keel) : $"level top {Figure(mold.Heights.Keel)}";
        yield return Figure(mold.Heights.HalfBreadth);
        yield return mold.Proud is not { } proud ? None : proud < Noticeable ? "clear" : ProudBy(proud, notation);
    }
}
