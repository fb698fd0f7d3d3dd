using System.Diagnostics;
using System.Globalization;
using Lines.Benchmarks;
using Lines.Design;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;

// One thread, warm: medians of repeated runs in one process. Usage: [folder of designs] [repeats], or detection, or scaling, or sweep, or drag, or afloat, or patterns, or scipy PYTHON, or outlines PYTHON, or cuts PROGRAM,
// or hulls COUNT SEED SPREAD EXPLAINED.
switch (args)
{
    case ["detection"]:
        DetectionLimits.Print();
        return 0;
    case ["hulls", var count, var seed, var spread, var explained]:
        RandomHulls.Print(
            int.Parse(count, CultureInfo.InvariantCulture), int.Parse(seed, CultureInfo.InvariantCulture), double.Parse(spread, CultureInfo.InvariantCulture), int.Parse(explained, CultureInfo.InvariantCulture));
        return 0;
    case ["scaling"]:
        Scaling.Print();
        return 0;
    case ["sweep"]:
        SweepTimes.Print();
        return 0;
    case ["drag"]:
        DragTimes.Print();
        return 0;
    case ["afloat"]:
        FloatTimes.Print("templates", 15);
        return 0;
    case ["patterns"]:
        PatternTimes.Print();
        return 0;
    case ["scipy", var python]:
        ScipyTimes.Print(python);
        return 0;
    case ["outlines", var python]:
        OutlineTimes.Print(python);
        return 0;
    case ["cuts", var program]:
        SectionCuts.Print(program);
        return 0;
}

var folder = args.Length > 0 ? args[0] : "templates";
var repeats = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 15;

(string Name, HullDials Dials)[] designs =
[
    .. Directory.EnumerateFiles(folder, "*.toml").Order(StringComparer.Ordinal)
        .Select(f => (Path.GetFileNameWithoutExtension(f), DesignFile.Read(File.ReadAllBytes(f), f).Design!.Vessel.MainHull)),
];

// The first design must not pay for what is compiled while it runs.
foreach (var (_, dials) in designs.SelectMany(d => Enumerable.Repeat(d, 6)))
{
    var hull = HullShape.Solve(dials).Surface!;
    _ = FairnessReport.Of(HullLines.Of(HullShape.Preview(dials, hull)));
    _ = UprightHydrostatics.Below(hull, hull.Draft, 1e-6);
}

Console.WriteLine("| design | shape [ms] | lines [ms] | fairness [ms] | hydrostatics [ms] | all [ms] | preview, all [ms] |");
Console.WriteLine("|---|---:|---:|---:|---:|---:|---:|");
foreach (var (name, dials) in designs)
{
    var times = new List<double[]>();
    for (var k = 0; k < repeats + 3; k++)
    {
        var watch = Stopwatch.StartNew();
        var hull = HullShape.Solve(dials).Surface!;
        var shape = watch.Elapsed.TotalMilliseconds;
        var lines = HullLines.Of(hull);
        var cut = watch.Elapsed.TotalMilliseconds;
        _ = FairnessReport.Of(lines);
        var fair = watch.Elapsed.TotalMilliseconds;
        _ = UprightHydrostatics.Below(hull, hull.Draft, 1e-6);
        var all = watch.Elapsed.TotalMilliseconds;

        // The same again from that hull with one dial moved, the widest station kept.
        var seen = HullShape.Preview(dials with { Bow = dials.Bow with { EntryFullness = dials.Bow.EntryFullness + 0.002 } }, hull);
        _ = FairnessReport.Of(HullLines.Of(seen));
        _ = UprightHydrostatics.Below(seen, seen.Draft, 1e-4);
        var preview = watch.Elapsed.TotalMilliseconds - all;
        if (k >= 3)
            times.Add([shape, cut - shape, fair - cut, all - fair, all, preview]);
    }

    var medians = Enumerable.Range(0, 6).Select(c => times.Select(t => t[c]).Order().ElementAt(repeats / 2).ToString("F1", CultureInfo.InvariantCulture));
    Console.WriteLine($"| {name} | {string.Join(" | ", medians)} |");
}

return 0;
