using System.Diagnostics;
using System.Globalization;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Benchmarks;

/// <summary>The same 21 closed outlines of 400 points written as DXF by Lines and by ezdxf, processor time.</summary>
internal static class OutlineTimes
{
    private const int Outlines = 21, Points = 400, Repeats = 15;

    private static readonly TimeSpan s_warmUp = TimeSpan.FromSeconds(3);

    /// <summary>Prints the medians.</summary>
    /// <param name="python">A Python that has ezdxf.</param>
    public static void Print(string python)
    {
        var cut = new Layer("cut", new Ink(0.5), 1);
        var sheet = new Sheet("outlines", 22000, 500, [.. Enumerable.Range(0, Outlines).Select(k => new PathMark(cut, Outline(k)))]);
        for (var watch = Stopwatch.StartNew(); watch.Elapsed < s_warmUp;)
            _ = Own(sheet);
        var own = Median([.. Enumerable.Range(0, Repeats).Select(_ => Own(sheet))]);
        using var process = Process.Start(new ProcessStartInfo(python, ["tests/Lines.Benchmarks/write-outlines.py", Invariant($"{Repeats}")]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var theirs = Median([.. process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, CultureInfo.InvariantCulture))]);
        process.WaitForExit();
        Console.WriteLine("| Lines [ms] | ezdxf [ms] | faster by |");
        Console.WriteLine("|---:|---:|---:|");
        Console.WriteLine(Invariant($"| {own:F2} | {theirs:F1} | {theirs / own:F0} times |"));
    }

    private static double Own(Sheet sheet)
    {
        var start = Environment.CpuUsage.TotalTime;
        _ = DxfFile.Write(sheet);
        return (Environment.CpuUsage.TotalTime - start).TotalMilliseconds;
    }

    private static ArcPath Outline(int k) => ArcPath.Through(
        Enumerable.Range(0, Points).Select(i => 2 * Math.PI * i / Points).Select(a => new Point2((1000 * k) + ((300 + k) * Math.Cos(a)), 200 + (200 * Math.Sin(a)))), closed: true);

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);
}
