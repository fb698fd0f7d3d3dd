using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Units;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Tests.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans;

/// <summary>Every word and figure printed on a lines plan and on tiled pages, sheet by sheet.</summary>
public class PrintedWordsGolden
{
    [Fact]
    public void Words_on_the_sheets_are_those_of_the_golden_file()
    {
        var lines = HullLines.Of(SampleHulls.DoubleEnder());
        var pages = TiledPaper.Of([TiledPaperTests.Part], new(PaperSize.Letter) { Correction = new(1.002, 0.998, 0.001) });
        IEnumerable<Sheet> sheets = [LinesPlanSheet.Of(lines, SampleHulls.Figures(lines.Hull), new LinesPlanSettings("Trial", PaperSize.A3, LengthNotation.FeetInchesEighths)), .. pages];
        var words = string.Concat(sheets.Select(s => $"# {s.Title}\n{string.Concat(s.Marks.OfType<TextMark>().Select(t => t.Text + "\n"))}\n"));
        var file = Repository.PathOf("tests", "data", "golden", "printed-words.txt");
        if (Repository.Regenerate)
            File.WriteAllText(file, words);
        Assert.Equal(File.ReadAllText(file), words);
    }
}
