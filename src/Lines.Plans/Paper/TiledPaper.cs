using Lines.Drawing.Model;
using Lines.Kernel.Units;

namespace Lines.Plans.Paper;

/// <summary>Full-size parts cut up onto the paper a home printer takes.</summary>
/// <remarks>
/// <para><b>Frame.</b> Millimeters at 1:1 on every page.</para>
/// <para><b>Method.</b> First the calibration page, then the index, then each part's tiles, rows from the top. Neighbors carry a common
/// strip of 8 mm with the seam in its middle. Lines and arcs are cut at the edges of the window as lines and arcs. Parts share pages where that saves
/// some (<see cref="SharedPages"/>, on a roll <see cref="RollLengths"/>); they are turned, their pages are read upright or sideways, and their grid is moved, whichever takes the fewest.</para>
/// <para><b>Accuracy.</b> Assembled, every line of a part is where the part has it to rounding; with a printer's correction, once
/// printed, arcs are within <see cref="PrinterCorrection.ArcTolerance"/>. No line's middle or ink is nearer to the paper's edge than <see cref="PrintSettings.Border"/>.</para>
/// </remarks>
public static class TiledPaper
{
    /// <summary>Tiles parts onto pages.</summary>
    /// <param name="parts">The parts, each a sheet at full size; its title is printed on its pages. What lies outside a sheet's edges is printed too.</param>
    /// <param name="settings">Paper, border and what the printer needs.</param>
    /// <param name="isFair">Whether the hull the parts are of is fair; the index of one that is not is marked so.</param>
    /// <param name="notMade">The parts that are missing among them and why, a sentence each; the index tells them.</param>
    /// <param name="notation">In which units the printer is measured first; the others stand beside them.</param>
    /// <returns>The pages in order, each of the paper's size; they are drawn while they are read.</returns>
    public static IReadOnlyList<Sheet> Of(
        IReadOnlyList<Sheet> parts, PrintSettings settings, bool isFair = true, IReadOnlyList<string>? notMade = null, LengthNotation notation = LengthNotation.Millimeters)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(settings);
        var correction = settings.Correction;
        var guard = settings.Guard is { } away ? Length.FromMillimeters(away).ToSize(notation) : null;
        var heaviest = parts.SelectMany(p => p.Marks).Select(m => m.Layer.Ink.Width).Append(PageLayout.UsualInk).Max();
        // What is read before anything is cut stands on a square piece of a roll.
        var head = settings.Paper.IsRoll ? settings with { Paper = settings.Paper with { Height = settings.Paper.Width } } : settings;
        IReadOnlyList<PageLayout> layouts = [new(head, heaviest), new(head, heaviest, sideways: true)];
        var groups = settings.Paper.IsRoll ? RollLengths.Of(parts, settings, heaviest) : SharedPages.Of(parts, layouts);
        var grids = new TileGrid[groups.Count];
        Parallel.For(0, grids.Length, i => grids[i] = TileGrid.Over(groups[i].Group, groups[i].Layouts));
        var next = 2 + IndexPages.CountFor(grids.Length);
        var numbered = new List<PartPages>();
        foreach (var grid in grids)
        {
            numbered.Add(new PartPages(grid, next));
            next += numbered[^1].Count;
        }

        var count = next - 1;
        return new DrawnAhead(
        [
            () => correction.Corrected(CalibrationPage.Of(head, count, notation)),
            .. Enumerable.Range(0, IndexPages.CountFor(grids.Length))
                .Select(i => (Func<Sheet>)(() => correction.Corrected(IndexPages.Of(layouts[0], numbered, i, count, isFair, notMade ?? [], guard)))),
            .. numbered.SelectMany(p => p.Grid.Tiles, (p, t) => (Func<Sheet>)(() => correction.Corrected(TilePage.Of(p, t.Row, t.Column, count)))),
        ]);
    }
}
