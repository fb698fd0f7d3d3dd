using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Lines.Design;
using Lines.Design.Schema;
using Lines.Design.Studies;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Plans.Figures;

namespace Lines.Cli.Input;

/// <summary>A design with some keys varied over ranges, every value with every other.</summary>
/// <param name="path">The file as the user named it.</param>
/// <param name="design">Its text.</param>
/// <param name="varied">The keys and their values; the last one changes fastest.</param>
/// <param name="speeds">Speeds for the drag [m/s].</param>
/// <param name="water">The water.</param>
internal sealed class Sweep(string path, string design, IReadOnlyList<Variation> varied, IReadOnlyList<double> speeds, Water water)
{
    private const double IntegralTolerance = 1e-6;

    private static readonly JsonWriterOptions s_line = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>How many variants there are.</summary>
    public int Count => varied.Aggregate(1, (n, v) => n * v.Values.Count);

    /// <summary>Column of the drag at a speed.</summary>
    public static string DragAt(double speed) => Invariant($"drag_at_{speed / Standards.Knot:0.###}_kn_n");

    /// <summary>Column of a key that is varied, in SI.</summary>
    public static string ColumnOf(Variation variation) => variation.Key.Path + UnitEnding.Of(variation.Key.Key.Kind switch
    {
        KeyKind.Length => Quantity.Length,
        KeyKind.Angle => Quantity.Angle,
        KeyKind.Mass => Quantity.Mass,
        KeyKind.Area => Quantity.Area,
        _ => Quantity.Ratio,
    });

    /// <summary>Makes variants on several cores, each handed out alone: they take unlike times, and of a batch the last ones would wait for one core.</summary>
    /// <param name="numbers">Their numbers, from 1.</param>
    /// <param name="cores">How many cores.</param>
    /// <param name="keep">Takes each with its line; called from any thread, in any order.</param>
    /// <returns>That all are made.</returns>
    public ParallelLoopResult Each(IEnumerable<int> numbers, int cores, Action<int, string> keep) =>
        Parallel.ForEach(Partitioner.Create(numbers, EnumerablePartitionerOptions.NoBuffering), new ParallelOptions { MaxDegreeOfParallelism = cores }, n => keep(n, Row(n)));

    /// <summary>One variant as a line of JSON: its number, the varied keys, whether there is a hull and a fair one, and the figures; SI, nine digits.</summary>
    /// <param name="number">Its number, from 1.</param>
    public string Row(int number)
    {
        var values = ValuesOf(number);
        var (state, reason, figures) = Made(Variation.In(design, [.. varied.Select((v, k) => (v.Key, values[k]))]));
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_line))
        {
            json.WriteStartObject();
            json.WriteNumber("number", number);
            for (var k = 0; k < varied.Count; k++)
                Write(json, ColumnOf(varied[k]), values[k]);
            json.WriteString("state", state);
            json.WriteString("reason", reason);
            foreach (var (key, value) in figures)
                Write(json, key, value);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Write(Utf8JsonWriter json, string key, double? value)
    {
        json.WritePropertyName(key);
        if (value is double v && double.IsFinite(v))
            json.WriteRawValue((v + 0.0).ToString("G9", CultureInfo.InvariantCulture));
        else
            json.WriteNullValue();
    }

    private double[] ValuesOf(int number)
    {
        var values = new double[varied.Count];
        var left = number - 1;
        for (var k = varied.Count - 1; k >= 0; k--)
        {
            values[k] = varied[k].Values[left % varied[k].Values.Count];
            left /= varied[k].Values.Count;
        }

        return values;
    }

    private (string State, string Reason, IEnumerable<(string Key, double? Value)> Figures) Made(string text)
    {
        var reading = DesignFile.Read(text, path);
        if (reading.Design is not { } made)
            return Refused(reading.Diagnostics[0].Key, reading.Diagnostics[0].Problem);
        List<HullSurface> hulls = [];
        foreach (var hull in (VesselDesign[])[made, .. made.Outriggers])
        {
            var solution = HullShape.Try(hull.Vessel, hull.Source.AsTold, hull.Source.AsTold);
            var faults = hull.Source.Explain(solution);
            if (solution.Surface is not { } surface || faults.Count > 0)
                return Refused(hull == made ? "" : hull.Title, faults.Count > 0 ? faults[0].Problem : "no hull");
            hulls.Add(surface);
        }

        var vessel = new VesselShape(hulls[0], [.. made.Vessel.Outriggers.Zip(hulls.Skip(1))]);
        if (made.Outriggers.Zip(hulls.Skip(1)).SelectMany(o => o.First.Source.ExplainSpacing(hulls[0].Dials.Beam, o.Second.Dials.Beam)).FirstOrDefault() is { } close)
            return Refused(close.Key, close.Problem);
        string[] unfair = [.. hulls.Select(FairnessReport.Of).Select((r, k) => r.Fair ? "" : k == 0 ? r.Verdict : $"{made.Outriggers[k - 1].Title}: {r.Verdict}").Where(v => v.Length > 0)];
        var afloat = UprightHydrostatics.Below(hulls[0], hulls[0].Draft, IntegralTolerance);
        var figures = HullFigures.Of(hulls[0], afloat).SelectMany(g => g.Figures).Select(f => (FigureJson.KeyOf(f), f.Value));
        var outriggers = vessel.Outriggers.Select((o, k) => new HullOfVessel(VesselFigures.NameOf(k + 1, o.Outrigger.Side), o.Surface, UprightHydrostatics.Below(o.Surface, o.Surface.Draft, IntegralTolerance), o.Outrigger));
        var theirs = VesselFigures.Of([.. outriggers]).SelectMany(g => g.Figures, (g, f) => ($"{g.Key}_{FigureJson.KeyOf(f)}", f.Value));
        return (unfair.Length == 0 ? "fair" : "not fair", unfair.FirstOrDefault() ?? "", [.. figures, .. theirs, .. Drags(vessel, made)]);
    }

    private IEnumerable<(string Key, double? Value)> Drags(VesselShape vessel, VesselDesign made)
    {
        DragEstimate? drag = null;
        try
        {
            drag = new DragEstimate(vessel, water, appendage: made.Vessel.Appendage);
        }
        catch (DownfloodingException)
        {
            // A float under water to its sheer has no drag at this waterline: its cells stay empty.
        }

        return [.. speeds.Select(v => (DragAt(v), drag?.At(v).Total))];
    }

    private static (string State, string Reason, IEnumerable<(string Key, double? Value)> Figures) Refused(string what, string why) =>
        ("refused", what.Length == 0 ? why : $"{what}: {why}", []);
}
