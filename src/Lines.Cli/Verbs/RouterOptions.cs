using System.CommandLine;
using Lines.Construction.Molds;
using Lines.Drawing.Dxf;

namespace Lines.Cli.Verbs;

/// <summary>The options that fit DXF files to a router and its controller.</summary>
internal sealed class RouterOptions
{
    /// <summary>Greatest distance of straight lines from the arcs in whose place they stand [mm]: half the shop tolerance, the fit of the arcs takes the other half.</summary>
    private const double Chord = 1000 * MoldShaping.FitTolerance;

    private static readonly (string Name, DxfVersion Version)[] Versions = [("2000", DxfVersion.R2000), ("r12", DxfVersion.R12)];

    private static readonly (string Name, DxfUnit Unit)[] Units = [("mm", DxfUnit.Millimeter), ("in", DxfUnit.Inch)];

    private readonly Option<DxfVersion?> _version = Named("--dxf", "VERSION", "version of the DXF files: 2000, or r12 for old controllers (left out: 2000)", Versions);
    private readonly Option<DxfUnit?> _unit = Named("--dxf-units", "UNIT", "unit of the lengths in the DXF files: mm or in, full size in either (left out: mm)", Units);
    private readonly Option<bool> _straight = new("--no-arcs") { Description = "straight lines within 0.01 mm in place of arcs, for programs that pass over the bulges of polylines" };
    private readonly Option<bool> _halves = new("--half") { Description = "molds that are the same on both sides as halves, to turn over at the centerline" };

    private readonly Option<double?> _tool = Common.Length(
        "--tool", "diameter of the router's tool, 0.5 mm to 25 mm: inside corners of notches are cut out round for it (left out: corners stay sharp)", 0.0005, 0.025);

    /// <summary>The options, in the order help lists them.</summary>
    public IReadOnlyList<Option> All => [_version, _unit, _straight, _tool, _halves];

    /// <summary>How the command line asks for the files.</summary>
    public DxfSettings Dxf(ParseResult parsed) => new()
    {
        Version = parsed.GetValue(_version) ?? DxfVersion.R2000,
        Unit = parsed.GetValue(_unit) ?? DxfUnit.Millimeter,
        Chords = parsed.GetValue(_straight) ? Chord : null,
    };

    /// <summary>What it asks of the molds.</summary>
    public CutSettings Cuts(ParseResult parsed) => new(parsed.GetValue(_tool), parsed.GetValue(_halves));

    private static Option<T?> Named<T>(string name, string value, string description, (string Name, T Value)[] choices)
        where T : struct
    {
        var option = new Option<T?>(name)
        {
            Description = description,
            HelpName = value,
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                foreach (var (known, choice) in choices)
                {
                    if (known.Equals(text, StringComparison.OrdinalIgnoreCase))
                        return choice;
                }

                result.AddError($"{name} does not know \"{text}\"; it takes {string.Join(", ", choices.Select(c => c.Name))}");
                return null;
            },
        };
        option.CompletionSources.Add([.. choices.Select(c => c.Name)]);
        return option;
    }
}
