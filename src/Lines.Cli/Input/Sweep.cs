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
using Lines.Hull.Loading;
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
/// <param name="load">The load case whose figures are told as well; null for none.</param>
internal sealed class Sweep(string path, string design, IReadOnlyList<Variation> varied, IReadOnlyList<double> speeds, Water water, string? load)
{
    private const double IntegralTolerance = 1e-6;

    private static readonly JsonWriterOptions s_line = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>How many variants there are.</summary>
    public int Count => varied.Aggregate(1, (n, v) => n * v.Values.Count);

    /// <summary>Columns of words.</summary>
    public static IReadOnlyList<string> Words { get; } = ["state", "reason", Case];

    /// <summary>Column that says how the load case ends.</summary>
    private const string Case = "case";

    // What is told of a load case, of all that is known of it.
    private static readonly string[] s_told = ["mass", "heel", "trim", "draft_fore", "draft_aft", "freeboard_least", "further_mass", "metacentric_height_free_trim"];

    /// <summary>Names of the figures of the first variant and the last, as far as they are hulls.</summary>
    public IReadOnlyList<string> Figures()
    {
        using var first = JsonDocument.Parse(Row(1));
        using var last = JsonDocument.Parse(Row(Count));
        JsonElement[] built = [.. new[] { first, last }.Select(r => r.RootElement).Where(r => !r.GetProperty("state").ValueEquals("refused"))];
        return [.. built.SelectMany(r => r.EnumerateObject().Select(p => p.Name)).Distinct(StringComparer.Ordinal)];
    }

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
        var (state, reason, ends, figures) = Made(Variation.In(design, [.. varied.Select((v, k) => (v.Key, values[k]))]));
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_line))
        {
            json.WriteStartObject();
            json.WriteNumber("number", number);
            for (var k = 0; k < varied.Count; k++)
                Write(json, ColumnOf(varied[k]), values[k]);
            json.WriteString("state", state);
            json.WriteString("reason", reason);
            if (load is not null)
                json.WriteString(Case, ends);
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

    private (string State, string Reason, string Case, IEnumerable<(string Key, double? Value)> Figures) Made(string text)
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

        var shaped = Shaped.Of(made, hulls);
        var vessel = shaped.Vessel;
        if (made.Outriggers.Zip(hulls.Skip(1)).SelectMany(o => o.First.Source.ExplainSpacing(hulls[0].Dials.Beam, o.Second.Dials.Beam)).FirstOrDefault() is { } close)
            return Refused(close.Key, close.Problem);
        string[] unfair = [.. hulls.Select(FairnessReport.Of).Select((r, k) => r.Fair ? "" : k == 0 ? r.Verdict : $"{made.Outriggers[k - 1].Title}: {r.Verdict}").Where(v => v.Length > 0)];
        var afloat = UprightHydrostatics.Below(hulls[0], hulls[0].Draft, IntegralTolerance);
        var figures = HullFigures.Of(hulls[0], afloat).SelectMany(g => g.Figures).Select(f => (FigureJson.KeyOf(f), f.Value));
        var outriggers = vessel.Outriggers.Select((o, k) => new HullOfVessel(VesselFigures.NameOf(k + 1, o.Outrigger.Side), o.Surface, UprightHydrostatics.Below(o.Surface, o.Surface.Draft, IntegralTolerance), o.Outrigger));
        var theirs = VesselFigures.Of([.. outriggers]).SelectMany(g => g.Figures, (g, f) => ($"{g.Key}_{FigureJson.KeyOf(f)}", f.Value));
        var (ends, told) = load is null ? ("", []) : InCase(shaped, load);
        return (unfair.Length == 0 ? "fair" : "not fair", unfair.FirstOrDefault() ?? "", ends, [.. figures, .. theirs, .. Drags("", vessel, made, WaterPlane.LevelAt(hulls[0].Draft)), .. told]);
    }

    // How the load case ends, and its figures: empty where she does not float in it.
    private (string Ends, IEnumerable<(string Key, double? Value)> Figures) InCase(Shaped shaped, string name)
    {
        var study = LoadCaseStudy.Of(shaped.Vessel, shaped.Design.Vessel, shaped.Structure!, shaped.UsualSettings with { Water = water }, Shaped.CaseOf(shaped.Design, path, name));
        var (afloat, floats) = (study.Afloat, study.Afloat.State == FloatState.Floats);
        var figures = LoadCaseFigures.Afloat(shaped.Hull, study, LoadSettings.UsualFreeboard).Figures.Where(f => s_told.Contains(f.Key, StringComparer.Ordinal)).Select(f => (FigureJson.KeyOf(f), f.Value))
            .Append(("range" + UnitEnding.Of(Quantity.Angle), floats ? study.Arms.Min(a => a.Range) : null))
            .Select(f => ($"{Case}_{f.Item1}", f.Item2));
        return (LoadCaseFigures.StateOf(afloat), [.. figures, .. Drags(Case + "_", shaped.Vessel, shaped.Design, floats ? afloat.HeldUpright(Craft.Of(shaped.Vessel)) : null)]);
    }

    private IEnumerable<(string Key, double? Value)> Drags(string before, VesselShape vessel, VesselDesign made, WaterPlane? plane)
    {
        DragEstimate? drag = null;
        try
        {
            drag = plane is null ? null : new DragEstimate(vessel, water, plane, appendage: made.Vessel.Appendage);
        }
        catch (DownfloodingException)
        {
            // A float under water to its sheer has no drag at this waterline: its cells stay empty.
        }

        return [.. speeds.Select(v => (before + DragAt(v), drag?.At(v).Total))];
    }

    private static (string State, string Reason, string Case, IEnumerable<(string Key, double? Value)> Figures) Refused(string what, string why) =>
        ("refused", what.Length == 0 ? why : $"{what}: {why}", "", []);
}
