using System.Text;
using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Design;
using Lines.Drawing.Dxf;
using Lines.Drawing.Pdf;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Nesting;
using Lines.Plans.Paper;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>Molds, router files, sheets and tiled paper of every template: processor time, segments, and sheets against shelves of boxes.</summary>
internal static class PatternTimes
{
    private const int Repeats = 9;

    /// <summary>Prints the two tables.</summary>
    public static void Print()
    {
        // The size the goal is set for, a template stretched to it, beside all of them.
        var texts = Directory.EnumerateFiles("templates", "*.toml").Order(StringComparer.Ordinal).Select(f => (Name: Path.GetFileNameWithoutExtension(f), Text: File.ReadAllText(f))).ToList();
        var six = texts.Single(t => t.Name is "gauge-runner").Text.Replace("length = \"5.20 m\"", "length = \"6.00 m\"", StringComparison.Ordinal);
        var designs = texts.Append((Name: "gauge-runner at 6 m", Text: six)).Select(t => (t.Name, Design: DesignFile.Read(Encoding.UTF8.GetBytes(t.Text), t.Name).Design!)).ToList();
        var hulls = designs.ConvertAll(d => HullShape.Solve(d.Design.Vessel.MainHull).Surface!);
        for (var k = 0; k < 3 * designs.Count; k++)
            _ = Times(designs[k % designs.Count].Design, hulls[k % designs.Count]);
        Console.WriteLine("| design | molds | shaped [ms] | router files and sheets [ms] | tiled paper [ms] | these [ms] | nesting [ms] |");
        Console.WriteLine("|---|---:|---:|---:|---:|---:|---:|");
        for (var i = 0; i < designs.Count; i++)
        {
            var runs = Enumerable.Range(0, Repeats).Select(_ => Times(designs[i].Design, hulls[i])).ToList();
            var medians = Enumerable.Range(0, 4).Select(c => runs.Select(r => r[c]).Order().ElementAt(Repeats / 2)).ToList();
            Console.WriteLine(Invariant($"| {designs[i].Name} | {MoldPlan.Of(hulls[i], designs[i].Design.Build).Molds.Count} | {medians[0]:F0} | {medians[1]:F0} | {medians[2]:F0} | {medians[0] + medians[1] + medians[2]:F0} | {medians[3]:F0} |"));
        }

        Console.WriteLine();
        Console.WriteLine("| design | lines and arcs | chords | ratio | arcs | chords for them | ratio | sheets | shelves of boxes | less by | used |");
        Console.WriteLine("|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|");
        for (var i = 0; i < designs.Count; i++)
            PrintCounts(designs[i].Name, designs[i].Design.Build, MoldPlan.Of(hulls[i], designs[i].Design.Build));
    }

    // Processor time [ms]: molds, DXF files of molds and sheets, tiled PDF, nesting. Pages are drawn on a second thread, which counts too.
    private static double[] Times(VesselDesign design, HullSurface hull)
    {
        var start = Environment.CpuUsage.TotalTime;
        var plan = MoldPlan.Of(hull, design.Build);
        var shaped = Environment.CpuUsage.TotalTime;
        var cutting = CuttingPlan.Of(plan, design.Build);
        var nested = Environment.CpuUsage.TotalTime;
        foreach (var mold in plan.Parts)
            _ = DxfFile.Write(MoldSheets.ForRouter(design.Title, mold, LengthNotation.Millimeters));
        foreach (var sheet in cutting.Sheets)
            _ = DxfFile.Write(NestedSheets.ForRouter(design.Title, cutting, sheet, LengthNotation.Millimeters));
        var written = Environment.CpuUsage.TotalTime;
        _ = PdfFile.Write(design.Title, TiledPaper.Of([.. plan.Parts.Select(m => MoldSheets.ForPaper(design.Title, m, LengthNotation.Millimeters))], new(PaperSize.Letter)));
        var tiled = Environment.CpuUsage.TotalTime;
        return [(shaped - start).TotalMilliseconds, (written - nested).TotalMilliseconds, (tiled - written).TotalMilliseconds, (nested - shaped).TotalMilliseconds];
    }

    private static void PrintCounts(string name, BuildDials build, MoldPlan plan)
    {
        var (lines, arcs) = (plan.Parts.Sum(m => m.Outline.Segments().Count(s => s.IsLine)), plan.Parts.Sum(m => m.Outline.Segments().Count(s => !s.IsLine)));
        var chords = plan.Parts.Sum(m => Chords(m.Outline));
        var cutting = CuttingPlan.Of(plan, build);
        var taken = cutting.Sheets.GroupBy(s => s.Thickness).Sum(g => g.Count() - 1 + (g.Last().UsedLength / build.SheetLength));
        var shelves = plan.Parts.GroupBy(m => (m.Stock, m.Kind == MoldKind.Bulkhead)).Sum(g => ShelfPacking.Best([.. g.Select(m => m.Outline.Flattened(5e-5))], cutting.Stock, randomOrders: 300));
        Console.WriteLine(Invariant($"| {name} | {lines + arcs} | {lines + chords} | {(double)(lines + chords) / (lines + arcs):F1} | {arcs} | {chords} | {(double)chords / arcs:F1} | {taken:F2} | {shelves:F2} | {100 * (1 - (taken / shelves)):F0} % | {100 * cutting.Utilization:F0} % |"));
    }

    // The fewest chords with their ends on the curved runs of an outline, none farther from it than the fit of the arcs.
    private static int Chords(ArcPath outline)
    {
        var count = 0;
        var run = new List<ArcSegment>();
        foreach (var s in outline.Segments().Append(new ArcSegment(default, new Point2(1, 0), 0)))
        {
            if (!s.IsLine)
            {
                run.Add(s);
            }
            else if (run.Count > 0)
            {
                count += Longest(new ArcPath([.. run.Select(r => new ArcVertex(r.From, r.Bulge)), new ArcVertex(run[^1].To, 0)], false).Flattened(1e-9));
                run.Clear();
            }
        }

        return count;
    }

    private static int Longest(IReadOnlyList<Point2> points)
    {
        var count = 0;
        for (var i = 0; i < points.Count - 1; count++)
        {
            var k = i + 1;
            while (k + 1 < points.Count && Keeps(points, i, k + 1))
                k++;
            i = k;
        }

        return count;
    }

    private static bool Keeps(IReadOnlyList<Point2> points, int from, int to)
    {
        var chord = new ArcSegment(points[from], points[to], 0);
        for (var i = from + 1; i < to; i++)
        {
            if (chord.DistanceTo(points[i]) > MoldShaping.FitTolerance)
                return false;
        }

        return true;
    }
}
