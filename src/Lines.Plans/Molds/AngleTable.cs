using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>The table of bevels, cleats, and of what shrinking flat outlines would get wrong: a row for each station mold.</summary>
internal static class AngleTable
{
    private const double Degree = Math.PI / 180;
    private const double Head = 9.5;
    private const double Row = 3.5;
    private const double Letters = 2.2;
    private const double HeadLetters = 1.9;
    private const double CellGap = 1.2;

    private static readonly (string First, string Second, double Width)[] s_columns =
    [
        ("Mold", "", 12), ("Line from", "fore end", 20), ("Cleat from", "fore end", 20), ("Bevel,", "sheer deg", 16), ("Bevel,", "bilge deg", 16), ("Bevel,", "keel deg", 16),
        ("Flat proud", "by mm", 18), ("there, up", "from base", 20), ("Sighting", "holes", 14),
    ];

    /// <summary>Headings of the columns.</summary>
    public static IEnumerable<string> Headings => s_columns.Select(c => $"{c.First} {c.Second}".TrimEnd());

    /// <summary>How many rows go into a height [mm].</summary>
    public static int Rows(double height) => (int)((height - Head) / Row);

    /// <summary>The cells of a mold's row.</summary>
    /// <param name="mold">A station mold.</param>
    /// <param name="strongback">What it stands on.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IReadOnlyList<string> Cells(Mold mold, Strongback strongback, LengthNotation notation)
    {
        var angles = mold.Angles!;
        var line = strongback.DistanceTo(mold.X);
        return
        [
            mold.Name, Shown(line), Shown(strongback.DistanceTo(mold.FarX)),
            Invariant($"{angles.Sheer / Degree:F1}"), Invariant($"{angles.Bilge / Degree:F1}"), Invariant($"{angles.Keel / Degree:F1}"),
            Invariant($"{1000 * angles.FlatError:F2}"), Shown(angles.FlatErrorHeight), mold.Holes.Any(h => h.Kind == MoldHoleKind.Sight) ? "2" : "-",
        ];

        string Shown(double meters) => new Length(meters).ToCell(notation);
    }

    /// <summary>Draws the table.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="room">Where; its top is the table's.</param>
    /// <param name="strongback">What the molds stand on.</param>
    /// <param name="molds">The molds of the rows.</param>
    /// <param name="notation">How lengths are written.</param>
    public static void Draw(PageMarks marks, Box2 room, Strongback strongback, IReadOnlyList<Mold> molds, LengthNotation notation)
    {
        var stretch = room.Width / s_columns.Sum(c => c.Width);
        var y = room.Top;
        marks.Line(SettingUpInks.Heavy, new Point2(room.Left, y), new Point2(room.Right, y));
        Write([.. s_columns.Select(c => c.First)], y - 3.6, HeadLetters);
        Write([.. s_columns.Select(c => c.Second)], y - 7.4, HeadLetters);
        y -= Head;
        marks.Line(SettingUpInks.Heavy, new Point2(room.Left, y), new Point2(room.Right, y));
        foreach (var mold in molds)
        {
            Write(Cells(mold, strongback, notation), y - Row + ((Row - Letters) / 2), Letters);
            y -= Row;
            marks.Line(SettingUpInks.Fine, new Point2(room.Left, y), new Point2(room.Right, y));
        }

        void Write(IReadOnlyList<string> cells, double at, double height)
        {
            var x = room.Left;
            for (var i = 0; i < cells.Count; i++)
            {
                var width = stretch * s_columns[i].Width;
                if (cells[i].Length > 0)
                    marks.Text(SettingUpInks.Text, cells[i], new Point2(i == 0 ? x + CellGap : x + width - CellGap, at), height, width - (2 * CellGap), i == 0 ? Anchor.Left : Anchor.Right);
                x += width;
            }
        }
    }
}
