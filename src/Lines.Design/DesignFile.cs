using System.Text;
using Lines.Construction;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;
using Lines.Hull.Form;

namespace Lines.Design;

/// <summary>A checked design.</summary>
/// <param name="Title">Its name, printed on every sheet.</param>
/// <param name="Vessel">The boat.</param>
/// <param name="Build">How it is built.</param>
/// <param name="Source">The file it was read from, for what is found out later about its dials.</param>
public sealed record VesselDesign(string Title, Vessel Vessel, BuildDials Build, DialSource Source)
{
    /// <summary>Each outrigger as a design of its own, a boat of one hull built like the main one but in one piece, with even mold spacing.</summary>
    public IReadOnlyList<VesselDesign> Outriggers { get; init; } = [];

    /// <summary>Openings through the deck, as far as water is concerned.</summary>
    public IReadOnlyList<DeckOpening> DeckOpenings =>
        [.. Build.Openings.Where(o => o.InDeck).Select(o => new DeckOpening(o.Name, o.From, o.To, o.Breadth, o.Aside, o.IsSealed))];

    /// <summary>Whether it is one of a pair of outriggers, to be built twice.</summary>
    public bool IsOneOfPair { get; init; }
}

/// <summary>What reading a file gave: a design, or its faults.</summary>
/// <param name="Design">The design; null where there is any fault, for a bad file is never half read.</param>
/// <param name="Diagnostics">All faults, sorted by place; empty where there is a design.</param>
public sealed record DesignReading(VesselDesign? Design, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>Reads design files.</summary>
public static class DesignFile
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a design from text and reports every fault at once.</summary>
    /// <remarks>Time grows with the length of the text and no faster, whatever is in it.</remarks>
    /// <param name="text">The text of the file.</param>
    /// <param name="path">The path as the user named it; only shown.</param>
    /// <returns>The design or the faults.</returns>
    public static DesignReading Read(string text, string path)
    {
        var source = new SourceText(text, path);
        var faults = new DiagnosticBag(source);
        if (!TextCheck.Pass(source, faults))
            return new DesignReading(null, faults.Sorted());

        var tree = TomlReader.Read(source, DesignSchema.Heads, faults);
        var values = SchemaReader.Read(tree, faults);
        foreach (var form in values.All)
            Contradictions.Find(form, faults);
        VesselChecks.Find(values, faults);
        return faults.IsEmpty ? new DesignReading(Design(source, values), []) : new DesignReading(null, faults.Sorted());
    }

    private static VesselDesign Design(SourceText source, FileValues values)
    {
        var (title, vessel, build) = (values.Main.Find("title")!.Text, VesselBuilder.Vessel(values), VesselBuilder.Build(values));
        var floats = vessel.Outriggers.Zip(values.Of(DesignSchema.Outrigger)).Select((o, k) => new VesselDesign(
            Invariant($"{title}, outrigger {k + 1}"),
            new Vessel(o.First.Hull) { Targets = o.First.Targets },
            build with { Joints = [], Bulkheads = [], Openings = [], MoldAt = null, StrongbackTop = null },
            new DialSource(source, o.Second, values.Main))
        { IsOneOfPair = o.First.Side == OutriggerSide.Both });
        return new VesselDesign(title, vessel, build, new DialSource(source, values.Main, values.Main) { Repeated = values.Repeated }) { Outriggers = [.. floats] };
    }

    /// <summary>Reads a design from the bytes of a file.</summary>
    /// <param name="bytes">The bytes, UTF-8 with or without byte order mark.</param>
    /// <param name="path">The path as the user named it; only shown.</param>
    /// <returns>The design or the faults; bytes that are not UTF-8 are a fault.</returns>
    public static DesignReading Read(ReadOnlySpan<byte> bytes, string path)
    {
        string text;
        try
        {
            text = Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            // The replacement characters this leaves behind show the reader where the first bad byte stands.
            text = Encoding.UTF8.GetString(bytes);
        }

        return Read(text, path);
    }
}
