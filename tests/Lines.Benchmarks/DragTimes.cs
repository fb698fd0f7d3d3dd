using System.Globalization;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>How long the drag of three hulls at forty speeds takes, without and with a transom, beside a straightforward quadrature of the same wave integral.</summary>
internal static class DragTimes
{
    private const int Speeds = 40, Repeats = 15;

    private const string Outriggers = "templates/sample-courier.toml", Transom = "templates/silt-sampler.toml";

    /// <summary>Prints the tables.</summary>
    public static void Print()
    {
        Console.WriteLine("| three hulls, 40 speeds from 0.25 to 10 kn | hulls and waterlines cut [ms] | all [ms] |\n|---|---:|---:|");
        var courier = ShapeOf(Outriggers);
        var cut = HullShape.Solve(DesignFile.Read(File.ReadAllBytes(Transom), Transom).Design!.Vessel.MainHull).Surface!;
        Row("Sample Courier", courier);
        Row("Silt Sampler between the Courier's floats", new VesselShape(cut, courier.Outriggers));
        Console.WriteLine("\n| main hull alone, speed [kn] | Lines | dense sum | apart by | Lines [ms] | dense sum [ms] |\n|---:|---:|---:|---:|---:|---:|");
        var main = courier.Main;
        foreach (var knots in (double[])[2, 3, 4, 6, 8])
        {
            double quick = 0, dense = 0;
            var first = ProcessorTime.Of(() => quick = new WaveResistance([new(main.Side, main.Draft, 0, 0)]).OverDensity(knots * Standards.Knot, 1e-4), Repeats);
            var second = ProcessorTime.Of(() => dense = PanelWaves.OverDensity(main, knots * Standards.Knot, 800, 240, 1200), 1);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {knots} | {quick:E4} | {dense:E4} | {Math.Abs(quick / dense - 1):E1} | {first:F1} | {second:F0} |"));
        }
    }

    private static void Row(string name, VesselShape vessel)
    {
        double[] speeds = [.. Enumerable.Range(1, Speeds).Select(k => 0.25 * k * Standards.Knot)];
        var cut = ProcessorTime.Of(() => new DragEstimate(vessel, Water.Fresh), Repeats);
        var all = ProcessorTime.Of(
            () =>
            {
                var drag = new DragEstimate(vessel, Water.Fresh);
                return speeds.Sum(v => drag.At(v).Total);
            },
            Repeats);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {cut:F0} | {all:F0} |"));
    }

    /// <summary>The vessel of a design.</summary>
    private static VesselShape ShapeOf(string path)
    {
        var vessel = DesignFile.Read(File.ReadAllBytes(path), path).Design!.Vessel;
        return new VesselShape(HullShape.Solve(vessel.MainHull).Surface!, [.. vessel.Outriggers.Select(o => (o, HullShape.Solve(o.Hull).Surface!))]);
    }
}
