using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Hull.Form;
using Lines.Hull.Offsets;
using Lines.Hull.Sections;
using Lines.Kernel.Units;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Offsets;

public class OffsetsBookTests
{
    private static readonly HullLines s_lines = HullLines.Of(SampleHulls.TransomBoat());

    // Raked ends whose keel leaves the water: the design waterline is three fifths of the length.
    private static readonly HullLines s_overhanging = HullLines.Of(HullAttempt.Make(new HullDials
    {
        Length = 4.4,
        Beam = 0.7,
        Depth = 0.33,
        Draft = 0.105,
        Bow = new BowDials(0.60, 0.125, 0.47, 0.9, Profile: StemProfile.Raked),
        Stern = new PointedStern(0.59, 0.09, 0.43, 0.8, Profile: StemProfile.Raked),
        Midship = new MidshipDials(7 * FormDials.Degree, 0.76, 8 * FormDials.Degree),
    }).Surface!);

    public static TheoryData<LengthNotation> Notations => [.. LengthNotations.ByName.Select(n => n.Notation)];

    [Theory]
    [MemberData(nameof(Notations))]
    public void Every_figure_reads_back_within_half_a_step(LengthNotation notation)
    {
        var table = TableOfOffsets.Outside(s_lines);
        var book = OffsetsBook.Of(table, "Silt Sampler", notation);
        var sheet = book.Tables[1];
        for (var line = 0; line < table.HalfBreadths.Count; line++)
        {
            for (var i = 0; i < table.Stations.Count; i++)
            {
                var cell = sheet.Rows[i][line + 1];
                if (table.HalfBreadths[line].Values[i] is not { } value)
                {
                    Assert.Equal("", cell);
                    continue;
                }

                var unit = notation switch { LengthNotation.Millimeters => " mm", LengthNotation.Inches => " in", _ => "" };
                Assert.Equal(value, Length.Parse(cell + unit).Meters, (notation.Step() / 2) + 1e-12);
            }
        }
    }

    [Fact]
    public void The_text_names_title_unit_spacing_side_and_signs_and_reads_bow_first()
    {
        var text = OffsetsText.Write(OffsetsBook.Of(TableOfOffsets.Outside(s_lines), "Silt Sampler", LengthNotation.FeetInchesEighths));
        var lines = text.Split('\n');
        Assert.Equal("Table of offsets: Silt Sampler", lines[0]);
        Assert.Contains("To the outside of planking. Feet-inches-eighths; a + is a sixteenth more.", text, StringComparison.Ordinal);
        Assert.Contains(" into ten equal spaces, 0 forward", text, StringComparison.Ordinal);
        Assert.Contains("half-breadths from the centerplane", text, StringComparison.Ordinal);
        var first = Array.FindIndex(lines, l => l.StartsWith("0 ", StringComparison.Ordinal));
        Assert.StartsWith("1/4 ", lines[first + 1], StringComparison.Ordinal);
        Assert.StartsWith("10 ", lines[first + 30], StringComparison.Ordinal);
        Assert.All(lines, l => Assert.InRange(l.Length, 0, 130));
        Assert.Contains("0.236 in (6 mm) deducted square to the surface", OffsetsText.Write(OffsetsBook.Of(TableOfOffsets.Inside(s_lines, 0.006), "x", LengthNotation.Inches)), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Notations))]
    public void The_csv_keeps_to_its_standard_and_holds_nothing_a_spreadsheet_would_turn_into_a_formula_or_a_date(LengthNotation notation)
    {
        var csv = OffsetsCsv.Write(OffsetsBook.Of(TableOfOffsets.Outside(s_lines), "=1+1, \"quoted\"\r\n@x", notation), notation);
        Assert.Equal('\uFEFF', csv[0]);
        Assert.EndsWith("\r\n", csv, StringComparison.Ordinal);
        var records = Records(csv[1..]);
        Assert.Single(records.Select(r => r.Count).Distinct());
        Assert.Equal("Table of offsets: =1+1, \"quoted\"\r\n@x", records[0][0]);
        foreach (var cell in records.SelectMany(r => r).Where(c => c.Length > 0))
        {
            Assert.DoesNotContain(cell[0], "=+@\t\r");
            Assert.DoesNotMatch("^-[^0-9]", cell);
            Assert.DoesNotMatch(@"^\d+[-/]\d+([-/]\d+)?$", cell);
        }
    }

    [Theory]
    [MemberData(nameof(Notations))]
    public void The_sheets_keep_every_mark_on_the_page_and_every_letter_in_the_alphabet(LengthNotation notation)
    {
        foreach (var paper in new[] { PaperSize.Letter, PaperSize.A4 })
        {
            AreWhole(OffsetsBook.Of(TableOfOffsets.Inside(s_lines, 0.006), "Silt Sampler", notation), paper, 5);
            AreWhole(OffsetsBook.Of(TableOfOffsets.Outside(s_overhanging), "Overhangs", notation), paper, 9);
        }

        // With stations in its overhangs a table is longer than a page and goes on on the next.
        static void AreWhole(OffsetsBook book, PaperSize paper, int most)
        {
            var sheets = OffsetsSheets.Draw(book, paper);
            Assert.InRange(sheets.Count, 2, most);
            foreach (var sheet in sheets)
            {
                Assert.True(sheet.Width > sheet.Height);
                foreach (var mark in sheet.Marks.OfType<TextMark>())
                {
                    Assert.All(mark.Text.EnumerateRunes(), (Rune r) => Assert.True(StrokeLettering.Has(r), mark.Text));
                    foreach (var point in StrokeLettering.Strokes(mark).SelectMany(s => s.Vertices).Select(v => v.Point))
                    {
                        Assert.InRange(point.X, 12, sheet.Width - 12);
                        Assert.InRange(point.Y, 12, sheet.Height - 12);
                    }
                }
            }

            // Every figure of the book is on paper.
            var shown = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(m => m.Text).GroupBy(t => t, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
            foreach (var cells in book.Tables.SelectMany(t => t.Rows).SelectMany(r => r).Where(c => c.Length > 0).GroupBy(c => c, StringComparer.Ordinal))
                Assert.InRange(shown[cells.Key], cells.Count(), int.MaxValue);
        }
    }

    [Fact]
    public void Overhangs_have_stations_numbered_on_from_the_waterlines_ends()
    {
        var table = TableOfOffsets.Outside(s_overhanging);
        Assert.InRange(table.Stations.Count, 36, 60);
        Assert.Equal("0", table.Stations.Single(s => Math.Abs(s.X - s_overhanging.Hull.WaterlineFore) < 1e-9).Number);
        Assert.StartsWith("-", table.Stations[0].Number, StringComparison.Ordinal);
        Assert.StartsWith("1", table.Stations[^1].Number, StringComparison.Ordinal);
        Assert.InRange(table.Stations[0].X, 0, table.StationSpacing / 2);
        Assert.InRange(table.Length - table.Stations[^1].X, 0, table.StationSpacing / 2);
        Assert.All(table.HalfBreadths[0].Values, v => Assert.NotNull(v));
    }

    [Fact]
    public void A_long_title_of_wide_letters_stays_on_the_page()
    {
        var book = OffsetsBook.Of(TableOfOffsets.Outside(s_lines), new string('W', 60), LengthNotation.Millimeters);
        foreach (var sheet in OffsetsSheets.Draw(book, PaperSize.Letter))
            Assert.All(sheet.Marks.OfType<TextMark>(), t => Assert.InRange(Lettered.Box(t).Right, 0, sheet.Width - 12));
    }

    [Fact]
    public void Fractions_are_written_as_on_every_other_sheet_and_only_the_spreadsheet_puts_a_whole_number_before_them()
    {
        var book = OffsetsBook.Of(TableOfOffsets.Outside(s_lines), "Silt Sampler", LengthNotation.Inches);
        Assert.All(book.Tables.SelectMany(t => t.Rows).SelectMany(r => r), c => Assert.DoesNotMatch("^-?0 ", c));
        Assert.Contains(book.Tables.SelectMany(t => t.Rows).SelectMany(r => r), c => c.StartsWith("1/", StringComparison.Ordinal));
        Assert.Contains("\r\n0 1/2,", OffsetsCsv.Write(book, LengthNotation.Inches), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Notations))]
    public void Spreadsheet_and_text_show_the_same_figures(LengthNotation notation)
    {
        var book = OffsetsBook.Of(TableOfOffsets.Outside(s_lines), "Silt Sampler", notation);
        var text = OffsetsText.Write(book).Split('\n').Select(l => string.Join(' ', l.Split(' ', StringSplitOptions.RemoveEmptyEntries))).ToHashSet(StringComparer.Ordinal);
        // The no-break hyphen of feet-inches-eighths looks like the hyphen of the text; only a spreadsheet needs a whole number before a fraction.
        var rows = Records(OffsetsCsv.Write(book, notation)[1..])
            .Select(r => string.Join(' ', r.Where(c => c.Length > 0).Select(c => c.StartsWith("0 ", StringComparison.Ordinal) ? c[2..] : c)).Replace('\u2011', '-')).Where(r => r.Length > 0);
        Assert.All(rows, r => Assert.Contains(r, text));
    }

    // A reader of RFC 4180 of our own: quotes, doubled quotes, line breaks within quotes.
    private static List<List<string>> Records(string text)
    {
        var records = new List<List<string>> { new() { "" } };
        var quoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            var fields = records[^1];
            if (text[i] == '"' && quoted && i + 1 < text.Length && text[i + 1] == '"')
                fields[^1] += text[i++];
            else if (text[i] == '"')
                quoted = !quoted;
            else if (!quoted && text[i] == ',')
                fields.Add("");
            else if (!quoted && text[i] == '\r' && text[i + 1] == '\n')
                (records, i) = ([.. records, [""]], i + 1);
            else
                fields[^1] += text[i];
        }

        records.RemoveAt(records.Count - 1);
        return records;
    }
}
