using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>A mold's foot on the strongback, seen from its midship side: the cleat it is screwed to, with all sizes.</summary>
internal static class FootDetail
{
    private const double Letters = 2.2;
    private const double Figures = 22;
    private const double Tick = 1.2;
    private const double FromTick = 0.6;
    private const double Aside = 4.5;

    /// <summary>Height of a cleat in the height of its screws over the strongback.</summary>
    private const double CleatOverScrew = 2;

    /// <summary>Height of the cleats, and their depth along the strongback [m].</summary>
    public static double Cleat(Mold station) => CleatOverScrew * station.Holes.First(h => h.Kind == MoldHoleKind.Screw).At.Y;

    /// <summary>Draws the detail.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="plan">The molds.</param>
    /// <param name="stations">Its station molds, one at least.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="room">Where.</param>
    /// <returns>Lower end of the detail [mm].</returns>
    public static double Draw(PageMarks marks, MoldPlan plan, IReadOnlyList<Mold> stations, LengthNotation notation, Box2 room)
    {
        string Shown(double meters) => new Length(meters).ToText(notation);
        var s = plan.Strongback;
        var screws = stations[0].Holes.Where(h => h.Kind == MoldHoleKind.Screw).OrderBy(h => h.At.X).ToList();
        double up = screws[0].At.Y, cleat = Cleat(stations[0]), shown = 1.6 * cleat;
        var k = Math.Min((room.Width - (2 * Figures)) / s.Width, (room.Height - 14) / (shown + s.Depth));
        var zero = new Point2(room.Left + Figures + (s.Width * k / 2), room.Top - 7 - (shown * k));
        Point2 At(double across, double height) => zero + new Vector2(across * k, height * k);
        Box2 Box(double left, double bottom, double right, double top) => new(At(left, bottom).X, At(left, bottom).Y, At(right, top).X, At(right, top).Y);

        marks.Text(SettingUpInks.Text, "Foot and cleat, from the midship side", new Point2(room.Left, room.Top - Letters), Letters, room.Width);
        double half = s.Width / 2, lean = half * 0.15;
        marks.Box(SettingUpInks.Pale, Box(-half, -s.Depth, half, 0), filled: true);
        marks.Box(SettingUpInks.Heavy, Box(-half, -s.Depth, half, 0));
        marks.Path(SettingUpInks.Hull, [At(-half, 0), At(-half - lean, shown)]);
        marks.Path(SettingUpInks.Hull, [At(half, 0), At(half + lean, shown)]);
        marks.Box(SettingUpInks.Heavy, Box(-half, 0, half, cleat));
        marks.Line(SettingUpInks.Waterline, At(0, -s.Depth), At(0, cleat + ((shown - cleat) / 4)));
        foreach (var screw in screws)
            marks.Add([new PathMark(SettingUpInks.Heavy, ArcPath.Circle(At(screw.At.X, screw.At.Y), Math.Max(0.6, screw.Diameter * k / 2), clockwise: false))]);

        Level(screws[0].At.X, screws[^1].At.X, At(0, (cleat + shown) / 2).Y, Shown(screws[^1].At.X - screws[0].At.X));
        Level(-half, half, At(0, -s.Depth).Y - 4, Shown(s.Width));
        Upright(At(half + lean, 0).X + Aside, 0, up, Shown(up), Anchor.MiddleLeft);
        Upright(At(half + lean, 0).X + Aside, -s.Depth, 0, Shown(s.Depth), Anchor.MiddleLeft);
        Upright(At(-half - lean, 0).X - Aside, 0, cleat, Shown(cleat), Anchor.MiddleRight);
        return At(0, -s.Depth).Y - 4 - Tick;

        void Level(double from, double to, double y, string text)
        {
            Point2 a = new(At(from, 0).X, y), b = new(At(to, 0).X, y);
            marks.Line(SettingUpInks.Fine, a, b);
            foreach (var end in (Point2[])[a, b])
                marks.Line(SettingUpInks.Fine, end - new Vector2(0, Tick), end + new Vector2(0, Tick));

            // Over the line's middle, or beyond its end where it is longer.
            if (StrokeLettering.Width(text, Letters) + (2 * Tick) < b.X - a.X)
                marks.Text(SettingUpInks.Text, text, new Point2(At(0, 0).X, y + 0.8), Letters, anchor: Anchor.Center);
            else
                marks.Text(SettingUpInks.Text, text, b + new Vector2(Tick + FromTick, 0), Letters, Figures, Anchor.MiddleLeft);
        }

        // Figures stand level beside their lines, so that none reaches over its ends.
        void Upright(double x, double from, double to, string text, Anchor anchor)
        {
            Point2 a = new(x, At(0, from).Y), b = new(x, At(0, to).Y);
            marks.Line(SettingUpInks.Fine, a, b);
            foreach (var end in (Point2[])[a, b])
                marks.Line(SettingUpInks.Fine, end - new Vector2(Tick, 0), end + new Vector2(Tick, 0));
            const double away = Tick + FromTick;
            marks.Text(SettingUpInks.Text, text, new Point2(x + (anchor == Anchor.MiddleLeft ? away : -away), (a.Y + b.Y) / 2), Letters, Figures - Aside - away, anchor);
        }
    }
}
