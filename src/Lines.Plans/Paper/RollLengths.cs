using Lines.Drawing.Model;
using Lines.Kernel.Polygons;

namespace Lines.Plans.Paper;

/// <summary>Parts laid across a roll of paper, each length of it a page that is cut off where its parts end.</summary>
/// <remarks><b>Method.</b> Parts are nested on the roll as on sheets of stock (<see cref="SheetNesting"/>). One too broad for the roll both ways is printed alone, in lengths to join.</remarks>
internal static class RollLengths
{
    private const double Spacing = 5;

    /// <summary>Besides the window, so that what fits is found to fit [mm].</summary>
    private const double Play = 2;

    /// <summary>Groups of parts, one to a length of the roll.</summary>
    /// <param name="parts">The parts, full size.</param>
    /// <param name="settings">The roll, border and what the printer needs.</param>
    /// <param name="heaviest">Width of the heaviest line [mm].</param>
    public static IReadOnlyList<(PatternGroup Group, IReadOnlyList<PageLayout> Layouts)> Of(IReadOnlyList<Sheet> parts, PrintSettings settings, double heaviest)
    {
        var window = new PageLayout(settings, heaviest).Window;
        var stock = new SheetStock(window.Height - Play, window.Width - Play, 0, Spacing, Grained: false);
        var nest = SheetNesting.Of([.. parts.Select(p => new Silhouette(p, 0).Corners())], stock);
        var lengths = nest.Places.GroupBy(p => p.Sheet).OrderBy(s => s.Key)
            .Select(s => PatternGroup.Of(s.OrderBy(p => p.Shape).Select(p => (parts[p.Shape], p.Quarters, p.Shift))).TurnedLeft());
        return
        [
            .. lengths.Select(g => (g, (IReadOnlyList<PageLayout>)[LayoutFor(g.Height)])),
            .. nest.TooLarge.Select(i => (new PatternGroup(parts[i]), (IReadOnlyList<PageLayout>)[LayoutFor(parts[i].Height), LayoutFor(parts[i].Width)])),
        ];

        PageLayout LayoutFor(double length)
        {
            var roll = settings.Paper;
            // A printer that prints short takes a longer page.
            var room = (length + Play) / Math.Min(1, settings.Correction.ScaleY);
            return new PageLayout(settings with { Paper = roll with { Height = Math.Clamp(Math.Ceiling(room + roll.Height - window.Height), roll.Width / 4, roll.Height) } }, heaviest);
        }
    }
}
