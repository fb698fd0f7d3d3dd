using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>A full-size measuring bar: 100 mm above, 4 in below, one line between.</summary>
internal static class ScaleBar
{
    private const double Inch = 25.4;

    /// <summary>Draws the bar.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="zero">The common zero of both scales, at the bar's middle height [mm].</param>
    public static void Draw(PageMarks marks, Point2 zero)
    {
        marks.Line(PageInks.Rule, zero, zero + new Vector2(4 * Inch, 0));
        for (var mm = 0; mm <= 100; mm += mm < 10 ? 1 : 10)
            Tick(mm, mm % 50 == 0 ? 3 : mm % 10 == 0 ? 2.2 : mm == 5 ? 1.6 : 1);
        for (var eighth = 0; eighth <= 32; eighth += eighth < 8 ? 1 : 4)
            Tick(eighth * Inch / 8, eighth % 8 == 0 ? -3 : eighth % 4 == 0 ? -2.2 : -1.2);
        foreach (var mm in new[] { 0, 50, 100 })
            marks.Text(PageInks.Small, mm == 0 ? "0" : Invariant($"{mm} mm"), zero + new Vector2(mm, 3.7), 2, anchor: Anchor.Center);
        for (var inch = 0; inch <= 4; inch++)
            marks.Text(PageInks.Small, inch == 4 ? "4 in" : Invariant($"{inch}"), zero + new Vector2((inch * Inch) + 0.7, -3), 1.6);

        void Tick(double along, double length) => marks.Line(PageInks.Rule, zero + new Vector2(along, 0), zero + new Vector2(along, length));
    }
}
