using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Hull.Fairness;

namespace Lines.Plans.Figures;

/// <summary>A mold as the numbers name it.</summary>
/// <param name="File">Its file in the folder of results.</param>
/// <param name="X">Its station [m].</param>
/// <param name="Face">The side its labeled face looks to: bow, stern, starboard.</param>
public readonly record struct MoldEntry(string File, double X, string Face);

/// <summary>What a verb found out, for programs.</summary>
/// <param name="File">The design file as the user named it.</param>
public sealed record Results(string File)
{
    /// <summary>The figures, in groups.</summary>
    public IReadOnlyList<FigureGroup> Figures { get; init; } = [];

    /// <summary>The judgment of the lines; null where they were not judged.</summary>
    public FairnessReport? Fairness { get; init; }

    /// <summary>The judgment of each outrigger's lines, with what it is called; empty where there is none, or they were not judged.</summary>
    public IReadOnlyList<(string Name, FairnessReport Report)> Outriggers { get; init; } = [];

    /// <summary>The molds; null where none were made.</summary>
    public IReadOnlyList<MoldEntry>? Molds { get; init; }

    /// <summary>The design files compared, as the user named them; null where there is one.</summary>
    public IReadOnlyList<string>? Designs { get; init; }

    /// <summary>The files written, as the user can open them; null where the verb is not one that lists them.</summary>
    public IReadOnlyList<string>? Files { get; init; }

    /// <summary>Faults of the design file, warnings and notes.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; init; } = [];
}

/// <summary>Writes results as one JSON object, SI units in the names of its keys.</summary>
/// <remarks>
/// Numbers have nine significant digits: more would differ between machines in their last place. An unknown is null beside a
/// key of the same name with <c>_why</c>.
/// </remarks>
public static class FigureJson
{
    private static readonly JsonWriterOptions s_indented = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // it stands in a file or on a terminal, never in a web page
    };

    /// <summary>The object, UTF-8, ended by a line feed.</summary>
    /// <param name="results">What to write.</param>
    /// <param name="version">Version of the program.</param>
    public static byte[] Write(Results results, string version)
    {
        ArgumentNullException.ThrowIfNull(results);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_indented))
        {
            json.WriteStartObject();
            json.WriteString("version", version);
            json.WriteString("file", results.File);
            Files(json, "designs", results.Designs);
            Figures(json, results.Figures);
            json.WritePropertyName("fairness");
            Fairness(json, results.Fairness, DesignSchema.Vessel);
            HollowBetween(json, results.Fairness);
            Outriggers(json, results.Outriggers);
            Molds(json, results.Molds);
            Files(json, "files", results.Files);
            Diagnostics(json, results.Diagnostics);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>A figure's key with its unit.</summary>
    public static string KeyOf(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return figure.Key + UnitEnding.Of(figure.Quantity);
    }

    /// <summary>Groups of the same figures as comma-separated values: SI, the same names and digits as the numbers for programs, a row for each group.</summary>
    /// <remarks>RFC 4180: a header, records ended by a carriage return and a line feed; a cell without value is empty.</remarks>
    /// <param name="groups">The groups, one at least.</param>
    public static string Csv(IReadOnlyList<FigureGroup> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var text = new StringBuilder().AppendJoin(',', groups[0].Figures.Select(KeyOf)).Append("\r\n");
        foreach (var group in groups)
            text.AppendJoin(',', group.Figures.Select(f => f.Value?.ToString("G9", CultureInfo.InvariantCulture))).Append("\r\n");
        return text.ToString();
    }

    private static void Figures(Utf8JsonWriter json, IReadOnlyList<FigureGroup> groups)
    {
        json.WriteStartObject("figures");
        foreach (var group in groups)
        {
            json.WriteStartObject(group.Key);
            foreach (var figure in group.Figures)
            {
                Number(json, KeyOf(figure), figure.Value);
                if (figure.Value is not { } value)
                    json.WriteString(KeyOf(figure) + "_why", figure.Why);
                else if (!double.IsFinite(value))
                    json.WriteString(KeyOf(figure) + "_why", Invariant($"it came out as {value}"));
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Outriggers(Utf8JsonWriter json, IReadOnlyList<(string Name, FairnessReport Report)> outriggers)
    {
        if (outriggers.Count == 0)
            return;
        json.WriteStartArray("outriggers");
        foreach (var (name, report) in outriggers)
        {
            json.WriteStartObject();
            json.WriteString("name", name);
            json.WriteBoolean("fair", report.Fair);
            json.WritePropertyName("fairness");
            Fairness(json, report, DesignSchema.Outrigger);
            HollowBetween(json, report);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Fairness(Utf8JsonWriter json, FairnessReport? report, SchemaForm form)
    {
        json.WriteStartArray();
        foreach (var line in report?.Lines ?? [])
        {
            json.WriteStartObject();
            json.WriteString("line", line.Name);
            json.WriteString("kind", line.Line.Kind.ToString().ToLowerInvariant());
            json.WriteBoolean("fair", line.Fair);
            json.WriteNumber("inflections", line.Inflections);
            json.WriteNumber("inflections_not_asked_for", line.UnaskedInflections);
            json.WriteNumber("monotone_pieces", line.MonotonePieces);
            Blemish(json, "hollow", line.Hollow, line.HollowLimit);
            Blemish(json, "batten", line.Batten, line.BattenLimit);
            if (line.IsMeantHollow)
            {
                Number(json, "meant_hollow_m", line.Meant.Depth);
                Placed(json, "meant_hollow", line.Meant);
                json.WriteString("meant_hollow_because", line.MeantBecause);
            }

            if (line.Ease is { } dial)
                Ease(json, form.Shown(DesignSchema.ByDial[dial].Path), report!.Trials.FirstOrDefault(t => t.Dial == dial));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The deepest hollow nobody asked for on many lines between those judged, where it was looked for.</summary>
    private static void HollowBetween(Utf8JsonWriter json, FairnessReport? report)
    {
        if (report?.Between is not { } between)
            return;
        json.WriteStartObject("hollow_between_lines");
        json.WriteString("line", between.Subject);
        Number(json, "hollow_m", between.Depth);
        Number(json, "hollow_limit_m", between.Limit);
        json.WriteEndObject();
    }

    private static void Ease(Utf8JsonWriter json, string key, EasingTrial? trial)
    {
        json.WriteString("ease", key);
        if (trial is null)
            return;
        json.WriteNumber("ease_toward", trial.Toward);
        if (trial.Fair is null)
            return;
        Number(json, "ease_fair_at", trial.Fair);
        json.WriteString("ease_fair_at_shown", trial.Shown);
    }

    private static void Blemish(Utf8JsonWriter json, string name, Blemish blemish, double limit)
    {
        Number(json, name + "_m", blemish.Depth);
        Number(json, name + "_limit_m", limit);
        if (blemish.Depth > 0)
            Placed(json, name, blemish);
    }

    private static void Placed(Utf8JsonWriter json, string name, Blemish blemish)
    {
        json.WritePropertyName(name + "_at_m");
        json.WriteRawValue($"[{Digits(blemish.Place.X)}, {Digits(blemish.Place.Y)}, {Digits(blemish.Place.Z)}]");
        json.WriteString(name + "_station", blemish.Station);
    }

    private static void Molds(Utf8JsonWriter json, IReadOnlyList<MoldEntry>? molds)
    {
        json.WriteStartArray("molds");
        foreach (var mold in molds ?? [])
        {
            json.WriteStartObject();
            json.WriteString("file", mold.File);
            Number(json, "x_m", mold.X);
            json.WriteString("face", mold.Face);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Files(Utf8JsonWriter json, string key, IReadOnlyList<string>? files)
    {
        if (files is null)
            return;
        json.WriteStartArray(key);
        foreach (var file in files)
            json.WriteStringValue(file);
        json.WriteEndArray();
    }

    private static void Diagnostics(Utf8JsonWriter json, IReadOnlyList<Diagnostic> faults)
    {
        json.WriteStartArray("diagnostics");
        foreach (var fault in faults)
        {
            json.WriteStartObject();
            json.WriteString("file", fault.File);
            json.WriteNumber("line", fault.Place.Line);
            json.WriteNumber("column", fault.Place.Column);
            json.WriteString("severity", fault.SeverityName);
            json.WriteString("key", fault.Key);
            json.WriteString("problem", fault.Problem);
            json.WriteString("remedy", fault.Remedy);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string key, double? value)
    {
        json.WritePropertyName(key);
        if (value is { } number && double.IsFinite(number))
            json.WriteRawValue(Digits(number));
        else
            json.WriteNullValue();
    }

    private static string Digits(double value) =>
        double.IsFinite(value) ? (value == 0 ? 0 : value).ToString("G9", CultureInfo.InvariantCulture) : "null";
}
