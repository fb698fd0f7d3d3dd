using System.CommandLine;
using System.Globalization;
using System.Text;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Drawing.Pdf;
using Lines.Drawing.Svg;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Kernel.Units;
using Lines.Plans.Comparison;
using Lines.Plans.Figures;
using Lines.Plans.Paper;
using Lines.Plans.Resistance;

namespace Lines.Cli.Verbs;

/// <summary><c>lines compare A B [C ...]</c>: designs beside each other, at equal weight.</summary>
internal static class CompareVerb
{
    /// <summary>Thrust where none is asked, as a part of the first design's weight (common practice, no source).</summary>
    private const double UsualThrust = 0.1;

    /// <summary>Height of the thrust above the water where none is asked and a file has no sail plan [m].</summary>
    private const double UsualHeight = 1;

    public static Command Make()
    {
        var files = new Argument<string[]>("FILE") { Description = $"the design files, two to {ComparisonBook.Most}; differences are from the first", Arity = new ArgumentArity(1, 100) };
        var (json, units, force) = (Common.Json(), Common.Units("how lengths are shown: mm, in, ft-in, ft-in-8ths (left out: as most lengths in the first FILE are written)"), Common.Force());
        var output = Common.OutputTo("the file to write drawings and tables to; its ending says the format: .pdf, or .svg for the drawings alone (left out: prints the tables)");
        var paper = PaperOption.Of("paper of the drawings, laid on its longer side", PaperSize.Tabloid);
        var mass = Quantity("--mass", "MASS", "mass all are floated level under, boat and crew (left out: what the first displaces at her design waterline)", Mass);
        var loadCase = new Option<string?>("--load") { Description = "load case all are compared in, in place of --mass; every FILE must have it", HelpName = "CASE" };
        var thrust = Quantity("--thrust", "FORCE", "forward thrust that puts the bow down, N or lbf (left out: a tenth of the first's weight)", Force);
        var height = Common.Length("--thrust-height", "its height above the water (left out: that of the first's sail plan, else 1 m)", 0, 20);
        var (speeds, water) = (DragVerb.Speeds(Invariant($"speeds in knots, separated by commas (left out: every half knot to a Froude number of {UsualSpeeds.MostFroude} of the shortest)")), Common.Water("the water"));
        var verb = new Command("compare", "Lays designs over each other and tells every difference from the first: form, hydrostatics, drag, where drag curves change places, and what keeps the bow up under a forward thrust.")
        {
            files, output, mass, loadCase, thrust, height, speeds, water, paper, json, units, force,
        };
        verb.SetAction(parsed =>
        {
            var asked = new Asked(
                parsed.GetValue(mass), parsed.GetValue(loadCase), parsed.GetValue(thrust), parsed.GetValue(height), parsed.GetValue(speeds) ?? [], Common.Chosen(parsed, water),
                parsed.GetValue(output), parsed.GetValue(paper) ?? PaperSize.Tabloid, parsed.GetValue(force));
            var paths = parsed.GetValue(files)!;
            return Printed.WithFaults(parsed.GetValue(json), paths[0], () => Compare(paths, asked, parsed.GetValue(json), parsed.GetValue(units)));
        });
        return verb.WithExamples(
            "lines compare runner.toml runner-fine.toml", "lines compare runner.toml blunt.toml fine.toml --mass \"120 kg\" -o bows.pdf",
            "lines compare courier.toml courier-2.toml --load sailing --thrust \"250 N\" --thrust-height \"1.8 m\"", "lines compare a.toml b.toml --json");
    }

    private static int Compare(string[] paths, Asked asked, bool json, LengthNotation? units)
    {
        if (paths.Length is < 2 or > ComparisonBook.Most)
            throw new CommandFailure(ExitCode.Wrong, Invariant($"compare takes 2 to {ComparisonBook.Most} design files, not {paths.Length}"));
        if (asked is { Mass: not null, Case: not null })
            throw new CommandFailure(ExitCode.Wrong, "--mass and --load exclude each other: a load case has a mass of its own");
        var ending = asked.Output is { } target ? Common.Format(target, ".pdf", ".svg") : "";
        if (asked.Output is not null)
            OutputFile.Check(asked.Output, asked.Force);
        var shaped = paths.Select(Shaped.From).ToList();
        var notation = shaped[0].Units(units);
        var book = BookOf(paths, shaped, asked, notation);
        if (asked.Output is { } file)
        {
            OutputFile.Write(file, ending is ".pdf" ? PdfFile.Write("Designs compared", ComparisonPages.Of(book, asked.Paper)) : Encoding.UTF8.GetBytes(SvgFile.Write(ComparisonPages.Overlaid(book, asked.Paper))), asked.Force);
            Streams.Error.WriteLine($"wrote {file}");
        }

        if (json)
            Printed.Json(new Results(paths[0]) { Designs = paths, Figures = book.Groups });
        else if (asked.Output is null)
            Streams.Out.Write(book.Text());
        return ExitCode.Done;
    }

    private static ComparisonBook BookOf(string[] paths, List<Shaped> shaped, Asked asked, LengthNotation notation)
    {
        var density = asked.Water.Density;
        var mass = asked.Mass ?? density * Craft.Of(shaped[0].Vessel).Below(WaterPlane.LevelAt(shaped[0].Hull.Draft), 1e-9).Volume;
        ComparedDesign[] designs = [.. shaped.Select((s, k) => asked.Case is { } name ? InCase(paths[k], s, name, asked) : AtMass(paths[k], s, mass, density))];
        var thrust = new ForwardThrust(
            asked.Thrust ?? UsualThrust * designs[0].Weight.Mass * Standards.Gravity,
            asked.Height ?? (shaped[0].Design.Vessel.Rig is { } rig ? rig.Height - designs[0].Vessel.Main.Draft : UsualHeight));
        return ComparisonBook.Of(designs, new ComparisonSettings(asked.Water, thrust, asked.Case, notation), [.. asked.Speeds.Select(k => k * Standards.Knot)]);
    }

    private static ComparedDesign AtMass(string path, Shaped shaped, double mass, double density) =>
        Dry(path, mass, () => ComparedDesign.Level(shaped.Design.Title, path, shaped.Vessel, mass, density) with { Appendage = shaped.Design.Vessel.Appendage });

    private static ComparedDesign InCase(string path, Shaped shaped, string name, Asked asked)
    {
        var settings = shaped.UsualSettings with { Water = asked.Water };
        var (found, afloat) = shaped.FloatingCase(path, name, asked.Water);
        return Dry(path, afloat.Weight.Mass, () => ComparedDesign.In(
            shaped.Design.Title, path, shaped.Vessel, LoadCaseStudy.Of(shaped.Vessel, shaped.Design.Vessel, shaped.Structure!, settings, found), settings) with
        { Appendage = shaped.Design.Vessel.Appendage });
    }

    private static ComparedDesign Dry(string path, double mass, Func<ComparedDesign> make)
    {
        try
        {
            return make();
        }
        catch (DownfloodingException)
        {
            throw new CommandFailure(ExitCode.Wrong, Invariant($"{path}: level under {mass:0.#} kg her sheer is under water; compare at less"));
        }
    }

    private static Option<double?> Quantity(string name, string help, string description, Func<string, (double Value, string? Fault)> read) => new(name)
    {
        Description = description,
        HelpName = help,
        CustomParser = result =>
        {
            var (value, fault) = read(result.Tokens[0].Value);
            if (fault is null)
                return value;
            result.AddError($"{name}: {fault}");
            return null;
        },
    };

    private static (double Value, string? Fault) Mass(string text) =>
        Kernel.Units.Mass.TryParse(text, out var mass, out _, out var fault) && mass.Kilograms is >= 1 and <= 10000 ? (mass.Kilograms, null) : (0, fault?.ToString() ?? "1 to 10000 kg is possible");

    private static (double Value, string? Fault) Force(string text)
    {
        var number = text.TrimEnd('N', 'l', 'b', 'f', ' ');
        double? unit = text[number.Length..].Trim() switch
        {
            "N" => 1,
            "lbf" => Kernel.Units.Mass.Pound * Standards.Gravity,
            _ => null,
        };
        return unit is { } size && double.TryParse(number, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out var value) && value * size is > 0 and <= 100_000
            ? (value * size, null)
            : (0, $"\"{text}\" is not a force; write it like 150 N or 35 lbf, up to 100000 N");
    }

    /// <summary>What was asked for.</summary>
    private sealed record Asked(double? Mass, string? Case, double? Thrust, double? Height, IReadOnlyList<double> Speeds, Water Water, string? Output, PaperSize Paper, bool Force);
}
