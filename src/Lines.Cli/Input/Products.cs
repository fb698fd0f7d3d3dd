using System.Text;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Drawing.Pdf;
using Lines.Drawing.Png;
using Lines.Drawing.Svg;
using Lines.Hull.Offsets;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;

namespace Lines.Cli.Input;

/// <summary>The files a shaped design gives, as bytes; verbs and the build of everything take them from here.</summary>
/// <param name="shaped">The design with its hull.</param>
/// <param name="units">How lengths are shown.</param>
internal sealed class Products(Shaped shaped, LengthNotation units)
{
    /// <summary>Width of a PNG [pixels].</summary>
    private const int PngWidth = 3000;

    private readonly Dictionary<PaperSize, Sheet> _plans = [];

    /// <summary>The lines plan in the format of an ending.</summary>
    public byte[] LinesPlan(PaperSize paper, string ending)
    {
        var plan = Plan(paper);
        return ending switch
        {
            ".pdf" => PdfFile.Write([plan]),
            ".svg" => Text(SvgFile.Write(plan)),
            ".dxf" => Text(DxfFile.Write(plan)),
            ".png" => PngFile.Write(plan, PngWidth),
            _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of drawings"),
        };
    }

    /// <summary>The lines plan.</summary>
    public Sheet Plan(PaperSize paper)
    {
        if (!_plans.TryGetValue(paper, out var plan))
            _plans[paper] = plan = LinesPlanSheet.Of(shaped.Lines, new LinesPlanSettings(shaped.Design.Title, paper, units) { Particulars = Particulars() });
        return plan;
    }

    /// <summary>The table of offsets in the format of an ending.</summary>
    /// <param name="inside">Whether to the inside of planking rather than the outside.</param>
    /// <param name="paper">Paper of a PDF.</param>
    /// <param name="ending">.txt, .csv or .pdf.</param>
    public byte[] Offsets(bool inside, PaperSize paper, string ending)
    {
        var table = inside ? TableOfOffsets.Inside(shaped.Lines, shaped.Design.Build.Planking) : TableOfOffsets.Outside(shaped.Lines);
        var book = OffsetsBook.Of(table, shaped.Design.Title, units);
        return ending switch
        {
            ".txt" => Text(OffsetsText.Write(book)),
            ".csv" => Text(OffsetsCsv.Write(book, units)),
            ".pdf" => PdfFile.Write(OffsetsSheets.Draw(book, paper)),
            _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of tables"),
        };
    }

    /// <summary>The hull as STEP.</summary>
    public byte[] Step() => Text(StepFile.Write(shaped.Hull, shaped.Design.Title));

    private List<(string Name, string Value)> Particulars()
    {
        string[] wanted = ["displacement_fresh", "prismatic", "entry_fullness", "run_fullness"];
        return [.. shaped.Figures.SelectMany(g => g.Figures).Where(f => wanted.Contains(f.Key, StringComparer.Ordinal)).Select(f => (f.Name, FigureText.Show(f, units)))];
    }

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);
}
