using System.CommandLine;
using System.Globalization;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary><c>lines print FILE</c>: full-size patterns tiled onto the paper of a home printer.</summary>
internal static class PrintVerb
{
    /// <summary>Papers a home printer takes.</summary>
    public static readonly PaperSize[] Papers = [PaperSize.Letter, PaperSize.A4];

    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the PDF to write (left out: named after FILE)");
        var paper = Common.Paper("paper in the printer", PaperSize.Letter, Papers);
        var printer = new PrinterOptions();
        var hull = Common.Hull();
        var verb = new Command("print", "Writes every mold full size, tiled onto letter or A4 paper, with a calibration page; exit code 1 if a mold asked for cannot be made.")
        {
            file, hull, output, paper, printer.ScaleX, printer.ScaleY, printer.Skew, units, force,
        };
        verb.SetAction(parsed => Print(
            parsed.GetValue(file)!, parsed.GetValue(hull), parsed.GetValue(output), parsed.GetValue(paper) ?? PaperSize.Letter, printer.Of(parsed), parsed.GetValue(units), parsed.GetValue(force)));
        return verb.WithExamples("lines print tender.toml", "lines print tender.toml --paper a4 --scale-x 1.004 --scale-y 0.998 --skew 0.001");
    }

    private static int Print(string path, string? hull, string? output, PaperSize paper, PrinterCorrection correction, LengthNotation? units, bool force)
    {
        var target = output ?? Common.NamedAfter(path, $"-templates-{Common.NameOf(paper)}.pdf", hull);
        Common.Format(target, ".pdf");
        OutputFile.Check(target, force);
        var shaped = Shaped.From(path, hull);
        var products = new Products(shaped, shaped.Units(units));
        OutputFile.Write(target, products.Patterns(paper, correction), force);
        var pages = products.PatternPages(paper, correction).Count;
        var warned = shaped.Warned();
        Streams.Error.WriteLine(Invariant($"wrote {target}, {pages} pages; print page 1 at 100 % and measure its square before printing the rest"));
        shaped.TellMissing(products.Units);
        return warned;
    }
}

/// <summary>The options that correct a printer measured with the calibration page.</summary>
internal sealed class PrinterOptions
{
    public Option<double?> ScaleX { get; } = Number("--scale-x", "printed length over true length across the page, as the calibration page gives it", 0.9, 1.1);

    public Option<double?> ScaleY { get; } = Number("--scale-y", "printed length over true length up the page, the same way", 0.9, 1.1);

    public Option<double?> Skew { get; } = Number("--skew", "lean of an upright line to the right per unit of height, as the calibration page gives it", -0.05, 0.05);

    /// <summary>The correction a command line asks for.</summary>
    public PrinterCorrection Of(ParseResult parsed) =>
        new(parsed.GetValue(ScaleX) ?? 1, parsed.GetValue(ScaleY) ?? 1, parsed.GetValue(Skew) ?? 0);

    private static Option<double?> Number(string name, string description, double least, double greatest) => new(name)
    {
        Description = description,
        HelpName = "NUMBER",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= greatest)
                return value;
            result.AddError(Invariant($"{name} takes a number from {least} to {greatest}, not \"{text}\""));
            return null;
        },
    };
}
