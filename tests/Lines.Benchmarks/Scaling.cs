using System.Diagnostics;
using System.Globalization;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>How the sweep of random craft gains by cores beside a loop that does nothing but count, and how cutting stations grows with their number.</summary>
internal static class Scaling
{
    private const int Craft = 120;

    private const int Repeats = 5;

    private const string Design = "templates/gauge-runner.toml";

    /// <summary>Prints both tables.</summary>
    public static void Print()
    {
        var craft = new RandomCraft(new Random(3), 0.5);
        var dials = Enumerable.Range(0, Craft).Select(_ => craft.Next()).ToArray();
        foreach (var d in dials.Take(20))
            _ = HullAttempt.Make(d);
        double empty = Gain(_ => Spin()), sweep = Gain(i => _ = HullAttempt.Make(dials[i]));
        Console.WriteLine("| loop | gain on " + Invariant($"{Environment.ProcessorCount} cores |\n|---|---:|"));
        Console.WriteLine(Invariant($"| counting | {empty:F2} |\n| random craft | {sweep:F2} |\n| part kept | {sweep / empty:F2} |"));

        var hull = HullShape.Solve(DesignFile.Read(File.ReadAllBytes(Design), Design).Design!.Vessel.MainHull).Surface!;
        Console.WriteLine("\n| stations | all [ms] | each [µs] |\n|---:|---:|---:|");
        foreach (var count in (int[])[25, 50, 100, 200, 400, 800])
        {
            var time = Median(() =>
            {
                for (var k = 0; k < count; k++)
                    _ = Cut.Station(hull, hull.Dials.Length * (k + 0.5) / count);
            });
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {count} | {time:F2} | {1000 * time / count:F1} |"));
        }
    }

    private static double Gain(Action<int> work)
    {
        double alone = Median(() =>
        {
            for (var i = 0; i < Craft; i++)
                work(i);
        }), together = Median(() => Parallel.For(0, Craft, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, work));
        return alone / together;
    }

    // About as long as one hull.
    private static void Spin()
    {
        var sum = 0.0;
        for (var k = 0; k < 20_000_000; k++)
            sum += k;
        if (sum < 0)
            Console.WriteLine(sum);
    }

    private static double Median(Action work)
    {
        var times = new double[Repeats];
        for (var k = 0; k < Repeats; k++)
        {
            var watch = Stopwatch.StartNew();
            work();
            times[k] = watch.Elapsed.TotalMilliseconds;
        }

        Array.Sort(times);
        return times[Repeats / 2];
    }
}
