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
    public const double LeastRow = 3.4;

    /// <summary>Greatest height of a row [mm].</summary>
    public const double GreatestRow = 4.8;

    /// <summary>Height of the heading [mm].</summary>
    public const double Head = 9.5;

    private const double Letters = 2.3;
    private const double HeadLetters = 1.9;

    /// <summary>Clear distance of a cell's text to the cell's sides [mm].</summary>
    private const double CellGap = 1.5;

    /// <summary>What stands in a cell without a figure.</summary>
    public const string None = "-";

    /// <summary>A far face prouder than this takes a stroke of the plane [m].</summary>
    private const double Noticeable = 0.0002;

    private static readonly (string First, string Second, double Width, bool Figures)[] s_columns =
    [
        ("Mold", "", 21, false), ("Labeled face", "looks to", 20, false), ("Stock stands", "", 32, false),
        ("Face or foot", "from fore end", 26, true), ("Foot aft, or", "transom sheer", 26, true), ("Sheer", "above top", 24, true), ("Waterline", "above top", 24, true),
        ("Keel, inside", "above top", 24, true), ("Level top", "above top", 22, true), ("Half-breadth", "at sheer", 25, true), ("Far", "face", 14, false), ("Far face", "proud by", 22, true),
    ];

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
            marks.Text(SettingUpInks.Text, text, new Point2(figures ? x + width - CellGap : x + CellGap, y), height, width - (2 * CellGap), figures ? Anchor.Right : Anchor.Left);
    }

    /// <summary>The headings of the columns.</summary>
    public static IEnumerable<string> Headings => s_columns.Select(c => $"{c.First} {c.Second}".TrimEnd());

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
