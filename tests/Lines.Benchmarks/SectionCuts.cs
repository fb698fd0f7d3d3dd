using System.Diagnostics;
using System.Globalization;
using System.Text;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Exchange;

namespace Lines.Benchmarks;

/// <summary>The same 21 stations of the same surface, cut by Lines and by OpenCASCADE in turn, to points with chords of 0.1 mm.</summary>
/// <remarks>Processor time on both sides, which what else the machine does changes least.</remarks>
internal static class SectionCuts
{
    private const double ChordError = 1e-4;

    private const int Stations = 21, Repeats = 9;

    /// <summary>Until the runtime has compiled for good what is measured.</summary>
    private static readonly TimeSpan s_warmUp = TimeSpan.FromSeconds(5);

    private static readonly string[] s_ways = ["intersector", "section"];

    /// <summary>Prints the times as a table.</summary>
    /// <param name="program">The program of section-cutter.cpp.</param>
    public static void Print(string program)
    {
        Console.WriteLine("| design | Lines [ms] | OpenCASCADE, intersector [ms] | OpenCASCADE, section [ms] | faster by | farthest apart [mm] |");
        Console.WriteLine("|---|---:|---:|---:|---:|---:|");
        foreach (var file in Directory.EnumerateFiles("templates", "*.toml").Order(StringComparer.Ordinal))
        {
            var hull = HullShape.Solve(DesignFile.Read(File.ReadAllBytes(file), file).Design!.Vessel.MainHull).Surface!;
            double[] places = [.. Enumerable.Range(0, Stations).Select(k => hull.WaterlineFore + ((hull.WaterlineAft - hull.WaterlineFore) * k / (Stations - 1)))];
            for (var watch = Stopwatch.StartNew(); watch.Elapsed < s_warmUp;)
                Own(hull, places);
            var own = Median(Enumerable.Range(0, Repeats).Select(_ => Own(hull, places)).ToList());
            var lines = Outside(program, hull, places);
            var outside = s_ways.Select(w => Median([.. lines.Where(l => l[0] == w).Select(l => Number(l[1]))])).ToList();
            var laid = places.Select(x => Cut.Station(hull, x).Select(l => l.ToPolyline(1e-7)).ToList()).ToList();
            var apart = lines.Where(l => l[0] == "point").Max(l => Apart(laid[int.Parse(l[2], CultureInfo.InvariantCulture)], l));
            Console.WriteLine(Invariant(
                $"| {Path.GetFileNameWithoutExtension(file)} | {own:F2} | {outside[0]:F0} | {outside[1]:F0} | {outside.Min() / own:F0} times | {1000 * apart:F4} |"));
        }
    }

    /// <summary>Lines' processor time [ms] on a surface that it has not seen, so that nothing is kept from the last repeat.</summary>
    private static double Own(HullSurface hull, double[] places)
    {
        var fresh = new HullSurface(hull.Side, hull.Dials, hull.WidestU, hull.WaterlineV);
        var start = Environment.CpuUsage.TotalTime;
        foreach (var x in places)
        {
            foreach (var line in Cut.Station(fresh, x))
                _ = line.ToPolyline(ChordError);
        }

        return (Environment.CpuUsage.TotalTime - start).TotalMilliseconds;
    }

    private static List<string[]> Outside(string program, HullSurface hull, double[] places)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, StepFile.Write(hull, "hull"), Encoding.ASCII);
            string[] words = [file, Invariant($"{Repeats}"), Invariant($"{1000 * ChordError}"), .. places.Select(x => Invariant($"{1000 * x:R}"))];
            using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true, UseShellExecute = false })!;
            var lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(' ')).ToList();
            process.WaitForExit();
            return process.ExitCode == 0 ? lines : throw new InvalidOperationException(Invariant($"{program} ended with {process.ExitCode}"));
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Distance of a point of OpenCASCADE's from Lines' section, finely laid out [m].</summary>
    private static double Apart(List<IReadOnlyList<LinePoint>> section, string[] point)
    {
        var p = new Point3(Number(point[3]) / 1000, Number(point[4]) / 1000, Number(point[5]) / 1000);
        return section.Min(line => Enumerable.Range(1, line.Count - 1).Min(k => Distance(p, line[k - 1].Point, line[k].Point)));
    }

    private static double Distance(Point3 p, Point3 a, Point3 b)
    {
        var chord = b - a;
        var t = Math.Clamp((p - a).Dot(chord) / chord.Dot(chord), 0, 1);
        return p.DistanceTo(a + (t * chord));
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
