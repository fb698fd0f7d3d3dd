using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>Waves of a main hull and the equilibrium of three hulls beside the same by numpy and scipy from points on the skin, processor time.</summary>
internal static class ScipyTimes
{
    private const string Design = "templates/sample-courier.toml";

    /// <summary>Points of a patch each way for scipy's columns, and panels for its waves.</summary>
    private const int Columns = 200, Along = 500, Up = 150;

    private const double Mass = 226;

    private static readonly double[] s_knots = [2, 3, 4, 6, 8];

    /// <summary>Prints the tables.</summary>
    /// <param name="python">A Python that has numpy and scipy.</param>
    public static void Print(string python)
    {
        var vessel = DesignFile.Read(File.ReadAllBytes(Design), Design).Design!.Vessel;
        var shape = new VesselShape(HullShape.Solve(vessel.MainHull).Surface!, [.. vessel.Outriggers.Select(o => (o, HullShape.Solve(o.Hull).Surface!))]);
        var center = new Point3(2.71, 0.01, 0.375);
        double[] speeds = [.. s_knots.Select(k => k * Standards.Knot)];
        var given = JsonSerializer.Serialize(new
        {
            panels = PanelWaves.Panels(shape.Main, Along, Up).Select(p => (double[])[p.X, p.Z, p.Source]),
            speeds,
            columns = shape.Hulls.SelectMany(ColumnsOf),
            volume = Mass / Water.Sea.Density,
            center = (double[])[center.X, center.Y, center.Z],
        });
        using var process = Process.Start(new ProcessStartInfo(python, "tests/Lines.Benchmarks/with-scipy.py") { RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false })!;
        process.StandardInput.Write(given);
        process.StandardInput.Close();
        using var theirs = JsonDocument.Parse(process.StandardOutput.ReadToEnd());
        process.WaitForExit();
        double[] Of(string key) => [.. theirs.RootElement.GetProperty(key).EnumerateArray().Select(v => v.GetDouble())];
        Console.WriteLine("| main hull alone, speed [kn] | Lines | scipy | apart by | Lines [ms] | scipy [ms] |\n|---:|---:|---:|---:|---:|---:|");
        for (var k = 0; k < speeds.Length; k++)
        {
            var speed = speeds[k];
            var own = new WaveResistance([new(shape.Main.Side, shape.Main.Draft, 0, 0)]).OverDensity(speed, 1e-4);
            var time = ProcessorTime.Of(() => new WaveResistance([new(shape.Main.Side, shape.Main.Draft, 0, 0)]).OverDensity(speed, 1e-4), 15);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {s_knots[k]} | {own:E4} | {Of("waves")[k]:E4} | {Math.Abs((own / Of("waves")[k]) - 1):E1} | {time:F1} | {Of("waves_ms")[k]:F0} |"));
        }

        var craft = Craft.Of(shape);
        var weight = new Weight(Mass, center);
        var afloat = Equilibrium.Free(craft, weight, Water.Sea.Density, default)!.Water;
        var ours = ProcessorTime.Of(() => Equilibrium.Free(craft, weight, Water.Sea.Density, default), 51);
        Console.WriteLine("\n| equilibrium of three hulls | level [m] | trim [rad] | heel [rad] | [ms] |\n|---|---:|---:|---:|---:|");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| Lines | {afloat.Level:F6} | {afloat.Trim:F6} | {afloat.Heel:F6} | {ours:F2} |"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| scipy | {Of("afloat")[0]:F6} | {Of("afloat")[1]:F6} | {Of("afloat")[2]:F6} | {theirs.RootElement.GetProperty("afloat_ms").GetDouble():F0} |"));
    }

    // Points of both halves of every patch with their outward areas.
    private static IEnumerable<double[]> ColumnsOf(PlacedHull hull)
    {
        foreach (var patch in hull.Surface.Patches)
        {
            for (var i = 0; i < Columns; i++)
            {
                for (var j = 0; j < Columns; j++)
                {
                    var jet = patch.JetAt((i + 0.5) / Columns, (j + 0.5) / Columns);
                    var (p, n) = (jet.Point + hull.Place, (1.0 / (Columns * Columns)) * jet.V.Cross(jet.U));
                    yield return [p.X, p.Y, p.Z, n.X, n.Y, n.Z];
                    yield return [p.X, hull.Place.Y - jet.Point.Y, p.Z, n.X, -n.Y, n.Z];
                }
            }
        }
    }
}
