using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary><c>lines print FILE</c>: full-size patterns tiled onto the paper of a home printer, or of a shop's.</summary>
internal static class PrintVerb
{
    /// <summary>Papers a home printer takes.</summary>
    public static readonly PaperSize[] Papers = [PaperSize.Letter, PaperSize.A4];

    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the PDF to write (left out: named after FILE)");
        var paper = PaperOption.AnySize("paper in the printer", PaperSize.Letter);
        var printer = new PrinterOptions();
        var halves = new Option<bool>("--half") { Description = "molds that are the same on both sides as halves, to fold or turn over at the centerline" };
        var guard = Common.Length("--guard", "a second line this far outside the line to cut, 1 mm to 20 mm: the saw takes the one, the other is left (left out: none)", 0.001, 0.02);
        var hull = Common.Hull();
        var verb = new Command("print", "Writes every mold full size, tiled onto the paper in the printer, with a calibration page; exit code 1 if a mold asked for cannot be made, bulkheads or openings clash, or a piece does not go into the storage given.")
        {
            file, hull, output, paper, halves, guard,
        };
        foreach (var option in (Option[])[.. printer.All, units, force])
            verb.Add(option);
        verb.SetAction(parsed => Print(
            parsed.GetValue(file)!,
            parsed.GetValue(hull),
            parsed.GetValue(output),
            printer.Of(parsed, parsed.GetValue(paper) ?? PaperSize.Letter) with { Halves = parsed.GetValue(halves), Guard = 1000 * parsed.GetValue(guard) },
            parsed.GetValue(units),
            parsed.GetValue(force)));
        return verb.WithExamples(
            "lines print tender.toml", "lines print tender.toml --paper a4 --half --guard \"3 mm\"", "lines print tender.toml --paper \"36 in roll\"", "lines print tender.toml --scale-x 1.004 --scale-y 0.998 --skew 0.001");
    }

    private static int Print(string path, string? hull, string? output, PrintSettings settings, LengthNotation? units, bool force)
    {
        var target = output ?? Common.NamedAfter(path, $"-{Common.PatternsFile(settings.Paper)}", hull);
        Common.Format(target, ".pdf");
        OutputFile.Check(target, force);
        var shaped = Shaped.From(path, hull);
        var products = new Products(shaped, shaped.Units(units));
        OutputFile.Write(target, products.Patterns(settings), force);
        var pages = products.PatternPages(settings).Count;
        var warned = shaped.Warned();
        Streams.Error.WriteLine(Invariant($"wrote {target}, {pages} pages; print page 1 at 100 % and measure its square before printing the rest"));
        shaped.TellMissing(products.Units);
        return warned;
    }
}
