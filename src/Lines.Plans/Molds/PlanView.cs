using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>The molds on the strongback seen from above, bow to the left, to the scale of the side view.</summary>
internal static class PlanView
{
    private const int Steps = 120;
    private const double Letters = 2.2;
    private const double Names = 4.5;

    /// <summary>Draws the view.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="plan">Its molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="room">Where; its top is the view's.</param>
    /// <param name="scale">The view is 1 : this.</param>
    /// <returns>Lower end of the view [mm].</returns>
    public static double Draw(PageMarks marks, HullSurface hull, MoldPlan plan, LengthNotation notation, Box2 room, int scale)
    {
        var s = plan.Strongback;
        var k = 1000.0 / scale;
        var half = Math.Max(s.Width, plan.Molds.Where(m => m.Kind == MoldKind.Station).Select(m => 2 * m.Outline.Bounds().Right).Max()) / 2 * k;
        var zero = new Point2(room.Center.X - (s.Length * k / 2), room.Top - Names - half);
        Point2 At(double distance, double aside) => zero + new Vector2(distance * k, aside * k);

        Point2 low = At(0, -s.Width / 2), high = At(s.Length, s.Width / 2);
        var beam = new Box2(low.X, low.Y, high.X, high.Y);
        marks.Box(SettingUpInks.Pale, beam, filled: true);
        marks.Box(SettingUpInks.Heavy, beam);
        marks.Line(SettingUpInks.Waterline, At(0, 0), At(s.Length, 0));
        foreach (var side in (int[])[1, -1])
        {
            marks.Path(SettingUpInks.Hull, [.. Enumerable.Range(0, Steps + 1).Select(i => hull.Side.PointAt((double)i / Steps, 1)).Select(p => At(s.DistanceTo(p.X), side * p.Y))]);
        }

        foreach (var mold in plan.Molds)
        {
            var breadth = mold.Kind == MoldKind.Station ? mold.Outline.Bounds().Right : mold.Heights.HalfBreadth;
            if (mold.Kind is MoldKind.Stem or MoldKind.Stern)
            {
                Point2 a = At(mold.Foot.Fore, -breadth), b = At(mold.Foot.Aft, breadth);
                marks.Box(SettingUpInks.Heavy, new Box2(a.X, a.Y, b.X, b.Y));
                continue;
            }

            marks.Line(SettingUpInks.Heavy, At(mold.Foot.Fore, -breadth), At(mold.Foot.Fore, breadth));
            if (mold.Kind == MoldKind.Station)
                marks.Text(SettingUpInks.Text, mold.Name, new Point2(At(mold.Foot.Fore, 0).X, room.Top - Letters), Letters, anchor: Anchor.Center);
        }

        var bottom = zero.Y - half - Names;
        var size = $"Strongback {new Length(s.Length).ToText(notation)} long, {new Length(s.Width).ToText(notation)} broad, {new Length(s.Depth).ToText(notation)} deep; seen from above, starboard down";
        marks.Text(SettingUpInks.Text, Invariant($"{size}. Scale 1:{scale}. Lengths in {SettingUpSheet.Unit(notation)}."), new Point2(room.Left, bottom), Letters, room.Width);
        return bottom;
    }
}
