using System.Text;
using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Offsets;

namespace Lines.Plans.Resistance;

/// <summary>The resistance of a vessel against speed in figures.</summary>
/// <param name="Speeds">The figures of every speed, slowest first.</param>
/// <param name="Hulls">Hulls in the water.</param>
/// <param name="Slenderness">Waterline length over the cube root of the volume, of each.</param>
/// <param name="Crew">What the crew reaches.</param>
/// <param name="Lies">How the boat lies in the water, in words.</param>
/// <param name="Wind">The wind, in words.</param>
/// <param name="Notation">How lengths are written; forces follow it.</param>
public sealed record DragBook(IReadOnlyList<FigureGroup> Speeds, int Hulls, IReadOnlyList<HullSlenderness> Slenderness, CrewBook Crew, string Lies, string Wind, LengthNotation Notation)
{
    private const string OfWaves = "Froude numbers of 0.2 to 1 without planing";

    private static readonly string s_ofForm = Invariant($"waterline length over cube root of volume {SlenderForm.LeastMeasured} to {SlenderForm.GreatestMeasured}");

    /// <summary>Where the parts are valid, one short line for a chart.</summary>
    public static string Range { get; } = $"Valid for {s_ofForm} (form) and {OfWaves} (waves); lines drag tells the hulls outside.";

    /// <summary>The resistance of a vessel at speeds.</summary>
    /// <param name="drag">The estimate.</param>
    /// <param name="speeds">Speeds [m/s]; empty for the <see cref="UsualSpeeds"/>.</param>
    /// <param name="crew">What the crew reaches.</param>
    /// <param name="lies">How the boat lies in the water, in words.</param>
    public static DragBook Of(DragEstimate drag, IReadOnlyList<double> speeds, CrewBook crew, string lies)
    {
        ArgumentNullException.ThrowIfNull(drag);
        ArgumentNullException.ThrowIfNull(crew);
        ArgumentNullException.ThrowIfNull(speeds);
        return new DragBook(At(drag, speeds.Count > 0 ? speeds : UsualSpeeds.Of(drag.Length), crew.Power), drag.Hulls, drag.Slenderness, crew, lies, WindOf(drag), crew.Notation);
    }

    /// <summary>The figures of every speed, slowest first.</summary>
    /// <param name="drag">The estimate.</param>
    /// <param name="speeds">Speeds [m/s].</param>
    /// <param name="crew">Who drives the boat, and how.</param>
    public static IReadOnlyList<FigureGroup> At(DragEstimate drag, IReadOnlyList<double> speeds, CrewPower crew)
    {
        ArgumentNullException.ThrowIfNull(drag);
        return [.. speeds.Order().Select((v, k) => Group(drag.At(v), k + 1, crew, WindOf(drag)))];
    }

    /// <summary>All groups: the speeds, then what the crew reaches.</summary>
    public IReadOnlyList<FigureGroup> Groups => [.. Speeds, .. Crew.Reached];

    /// <summary>Every speed a row.</summary>
    public FigureTable Table => new(
        $"Resistance in calm deep water, {Lies}, {Wind}: estimates",
        [.. Shown(0).Select(f => new FigureColumn(f.Name, FigureText.UnitOf(f.Quantity, Notation).Name))],
        [.. Enumerable.Range(0, Speeds.Count).Select(k => (IReadOnlyList<string>)[.. Shown(k).Select(f => CrewBook.Cell(f, Notation))])]);

    /// <summary>The tables for a terminal, with what they are worth.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        foreach (var table in (FigureTable[])[Table, Crew.Table])
            text.Append(table.Title).Append("\n\n").Append(OffsetsText.Write(table)).Append('\n');
        foreach (var line in Worth().Concat(CrewBook.Worth))
            text.Append(line).Append('\n');
        return text.ToString();
    }

    /// <summary>The speeds as comma-separated values, as <see cref="FigureJson.Csv"/> has them.</summary>
    public string Csv() => FigureJson.Csv(Speeds);

    /// <summary>What the figures are worth and where they end.</summary>
    public IEnumerable<string> Worth()
    {
        yield return $"Friction: ITTC 1957 on the wetted area. Form: a fit to slender round-bilge hulls, {s_ofForm} (Molland, Turnock and Hudson). Waves: thin-ship theory (Michell) for {OfWaves}, whose humps come out too high by tens of per cent.";
        if (Hulls > 1)
            yield return Invariant($"{Hulls} hulls; interference is what their waves add to each other, negative where they help.");
        yield return Invariant($"Air: topsides by ITTC 1978, each of the crew that drives her ({Crew.Power.Crew}) as a seated person of 0.56 m² (6 ft²) drag area (Hoerner, from memory), nobody else whatever the load case, {Wind}. Appendages only where [appendage] tells them. Not counted: leeway, spray, and what a moving hull sinks and trims beyond her place at rest. Towing power is what moves the boat, not what the crew gives.");
        if (Has("transom"))
            yield return "Transom: slow, the suction of a blunt base (Hoerner); where it runs dry, from 2.5 times the root of gravity times its immersion on, the water's whole pressure (both from memory); between, our blend: a rough figure. Its face has no friction. Trimmed so that the transom comes out of the water it costs nothing.";
        foreach (var alike in Slenderness.Where(s => s.Ratio is < SlenderForm.LeastMeasured or > SlenderForm.GreatestMeasured).GroupBy(s => Invariant($"{s.Ratio:F2}"), StringComparer.Ordinal))
            yield return Invariant($"Waterline length over cube root of volume is {alike.Key} for {string.Join(" and ", alike.Select(s => s.Hull))}, outside the {SlenderForm.LeastMeasured} to {SlenderForm.GreatestMeasured} that the form was measured over: less sure.");
        if (Speeds.Any(s => s.Figures[1].Value > 1))
            yield return "Froude numbers over 1: hulls begin to plane there, which is not reckoned with.";
    }

    private IEnumerable<Figure> Shown(int k) => Speeds[k].Figures.Where(f => f.Key switch
    {
        "interference" => Hulls > 1,
        "transom" or "appendages" => Has(f.Key),
        _ => true,
    });

    private bool Has(string part) => Speeds.Any(s => s.Figures.Any(f => f.Value > 0 && string.Equals(f.Key, part, StringComparison.Ordinal)));

    private static FigureGroup Group(DragAtSpeed d, int number, CrewPower crew, string wind) => new(Invariant($"drag_{number:00}"), "Resistance",
    [
        new("speed", "Speed", d.Speed, Quantity.Speed),
        new("froude", "Froude", d.Froude, Quantity.Ratio) { Note = "speed over the square root of gravity times the main hull's waterline length" },
        Estimate("friction", "Friction", d.Friction, Quantity.Drag, "ITTC 1957, smooth hull"),
        Estimate("form", "Form", d.Form, Quantity.Drag, "2.76 (L/V^(1/3))^-0.4 - 1 of friction, measured for 6 to 9.5"),
        Estimate("wave", "Waves", d.Wave, Quantity.Drag, "thin-ship theory at the level and trim of rest, Froude number 0.2 to 1, each hull alone"),
        Estimate("interference", "Interference", d.Interference, Quantity.Drag, "thin-ship theory"),
        Estimate("transom", "Transom", d.Transom, Quantity.Drag, "pressure lacking on a transom in the water"),
        Estimate("appendages", "Appendages", d.Appendages, Quantity.Drag, "friction of both sides, Hoerner's thickness factor"),
        Estimate("air", "Air", d.Air, Quantity.Drag, "topsides by ITTC 1978, crew seated, " + wind),
        Estimate("total", "Total", d.Total, Quantity.Drag, "of the parts told; without leeway, spray"),
        Estimate("towing_power", "Towing power", d.TowingPower, Quantity.Power, "total times speed"),
        .. CrewBook.At(crew, d),
    ]);

    private static string WindOf(DragEstimate drag) => drag.HeadWind switch
    {
        0 => "no wind",
        > 0 and var wind => Invariant($"head wind of {wind / Standards.Knot:0.#} kn"),
        var wind => Invariant($"wind of {-wind / Standards.Knot:0.#} kn from astern"),
    };

    private static Figure Estimate(string key, string name, double value, Quantity quantity, string note) => new(key, name, value, quantity) { IsEstimate = true, Note = note };
}
