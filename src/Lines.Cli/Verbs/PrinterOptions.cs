using System.CommandLine;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary>The options that fit patterns to a printer: the border it keeps clear, and what its calibration page measured.</summary>
internal sealed class PrinterOptions
{
    private readonly Option<double?> _border = Common.Length(
        "--border", "what the printer keeps clear at the edges of the paper, 0 mm to 15 mm (left out: 6.4 mm)", 0, PrintSettings.WidestBorder / 1000);

    private readonly Option<double?> _scaleX = Common.Number("--scale-x", "NUMBER", "printed length over true length across the page, as the calibration page gives it", 0.9, 1.1);

    private readonly Option<double?> _scaleY = Common.Number("--scale-y", "NUMBER", "printed length over true length up the page, the same way", 0.9, 1.1);

    private readonly Option<double?> _skew = Common.Number("--skew", "NUMBER", "lean of an upright line to the right per unit of height, as the calibration page gives it", -0.05, 0.05);

    /// <summary>The options, in the order help lists them.</summary>
    public IReadOnlyList<Option> All => [_border, _scaleX, _scaleY, _skew];

    /// <summary>What a command line asks for.</summary>
    public PrintSettings Of(ParseResult parsed, PaperSize paper) => new(paper)
    {
        Border = 1000 * parsed.GetValue(_border) ?? PrintSettings.UsualBorder,
        Correction = new(parsed.GetValue(_scaleX) ?? 1, parsed.GetValue(_scaleY) ?? 1, parsed.GetValue(_skew) ?? 0),
    };
}
