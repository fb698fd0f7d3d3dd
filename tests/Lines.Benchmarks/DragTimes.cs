using System.Diagnostics;
using System.Globalization;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>How long the drag of three hulls at forty speeds takes, beside a straightforward quadrature of the same wave integral.</summary>
internal static class DragTimes
{
    private const int Speeds = 40;

    private const string Design = "templates/sample-courier.toml";

    /// <summary>Prints the tables.</summary>
    public static void Print()
    {
        var vessel = ShapeOf(Design);
        double[] speeds = [.. Enumerable.Range(1, Speeds).Select(k => 0.25 * k * Standards.Knot)];
        var times = new List<double>();
        for (var k = 0; k < 12; k++)
        {
            var watch = Stopwatch.StartNew();
            var drag = new DragEstimate(vessel, Water.Fresh);
            foreach (var speed in speeds)
                _ = drag.At(speed);
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        Console.WriteLine("| drag of three hulls, 0.25 to 10 kn | time [ms] |\n|---|---:|");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {Speeds} speeds, median of the last nine | {times.Skip(3).Order().ElementAt(4):F0} |"));
        Console.WriteLine("\n| main hull alone, speed [kn] | Lines | dense sum | apart by | Lines [ms] | dense sum [ms] |\n|---:|---:|---:|---:|---:|---:|");
        var main = vessel.Main;
        foreach (var knots in (double[])[2, 3, 4, 6, 8])
        {
            var watch = Stopwatch.StartNew();
            var quick = new WaveResistance([new(main.Side, main.Draft, 0, 0)]).OverDensity(knots * Standards.Knot, 1e-4);
            var first = watch.Elapsed.TotalMilliseconds;
            var dense = PanelWaves.OverDensity(main, knots * Standards.Knot, 800, 240, 1200);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {knots} | {quick:E4} | {dense:E4} | {Math.Abs(quick / dense - 1):E1} | {first:F1} | {watch.Elapsed.TotalMilliseconds - first:F0} |"));
        }
    }

    /// <summary>The vessel of a design.</summary>
    private static VesselShape ShapeOf(string path)
    {
        var vessel = DesignFile.Read(File.ReadAllBytes(path), path).Design!.Vessel;
        return new VesselShape(HullShape.Solve(vessel.MainHull).Surface!, [.. vessel.Outriggers.Select(o => (o, HullShape.Solve(o.Hull).Surface!))]);
    }
}
