using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Lines.Drawing.Model;
using Lines.Drawing.Svg;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Drawing.Svg;

public class SvgFileTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    private static readonly XElement Root = XDocument.Parse(SvgFile.Write(SampleSheets.Everything)).Root!;

    [Fact]
    public void It_is_well_formed_in_millimeters_and_says_what_it_shows()
    {
        Assert.Equal(Ns + "svg", Root.Name);
        Assert.Equal(("297mm", "210mm", "0 0 297 210"), ((string?)Root.Attribute("width"), (string?)Root.Attribute("height"), (string?)Root.Attribute("viewBox")));
        Assert.Equal("Rail & <bench> \"é\"", (string?)Root.Element(Ns + "title"));
        Assert.Equal(("img", "Rail & <bench> \"é\""), ((string?)Root.Attribute("role"), (string?)Root.Attribute("aria-label")));
    }

    [Fact]
    public void Every_mark_is_there_in_order_on_its_layer()
    {
        var drawn = Root.Descendants().Where(e => e.Name == Ns + "path" || e.Name == Ns + "text").ToList();
        Assert.Equal(SampleSheets.Everything.Marks.Select(m => m.Layer.Name), drawn.Select(e => (string?)e.Parent!.Attribute("class")));
        Assert.Equal(SampleSheets.Everything.Marks.OfType<TextMark>().Select(t => t.Text), drawn.Where(e => e.Name == Ns + "text").Select(e => e.Value));
    }

    [Fact]
    public void Inks_are_attributes_of_the_groups()
    {
        var hidden = Root.Descendants(Ns + "g").First(g => (string?)g.Attribute("class") == "hidden");
        Assert.Equal(("6 2 1", "0.25", "#000000"), ((string?)hidden.Attribute("stroke-dasharray"), (string?)hidden.Attribute("stroke-width"), (string?)hidden.Attribute("stroke")));
        Assert.Equal("#666666", (string?)Root.Descendants(Ns + "g").First(g => (string?)g.Attribute("class") == "thin-1").Attribute("stroke"));
    }

    /// <summary>The center of an arc from its SVG parameters: W3C SVG 1.1, appendix F.6.5, equal radii, no rotation.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(-0.3)]
    [InlineData(1.4)]
    [InlineData(-2.5)]
    [InlineData(1)]
    public void An_arc_has_the_center_the_standard_computes(double bulge)
    {
        var segment = new ArcSegment(new(20, 30), new(60, 45), bulge);
        var path = new ArcPath([new(segment.From, bulge), new(segment.To, 0)], false);
        var data = (string?)XDocument.Parse(SvgFile.Write(new Sheet("arc", 100, 80, [new PathMark(SampleSheets.Outline, path)]))).Descendants(Ns + "path").Single().Attribute("d");
        var n = Regex.Matches(data!, "-?[0-9.]+", RegexOptions.None, TimeSpan.FromSeconds(1)).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture)).ToArray();
        var (x1, y1, r, large, sweep, x2, y2) = (n[0], n[1], n[2], n[5], n[6], n[7], n[8]);
        var (hx, hy) = ((x1 - x2) / 2, (y1 - y2) / 2);
        var square = (hx * hx) + (hy * hy);
        var factor = (large.Equals(sweep) ? -1 : 1) * Math.Sqrt(Math.Max(0, (r * r / square) - 1));
        var center = new Point2((factor * hy) + ((x1 + x2) / 2), 80 - ((-factor * hx) + ((y1 + y2) / 2)));
        // Near a half circle the center moves as the square root of the radius's rounding: 1e-4 mm rounded off 21 mm, 0.05 mm moved.
        Assert.InRange(center.DistanceTo(segment.Center), 0, Math.Abs(Math.Abs(bulge) - 1) < 0.01 ? 0.1 : 0.002);
    }

    [Fact]
    public void Lettering_is_as_wide_as_its_strokes_and_stands_at_its_anchor()
    {
        var text = Root.Descendants(Ns + "text").Single(t => t.Value == "right");
        Assert.Equal(StrokeLettering.Width("right", 3.5), double.Parse((string?)text.Attribute("textLength") ?? "", CultureInfo.InvariantCulture), 1e-4);
        Assert.Equal(("280", "20", "end"), ((string?)text.Attribute("x"), (string?)text.Attribute("y"), (string?)text.Attribute("text-anchor")));
    }

    [Fact]
    public void Runs_of_spaces_are_kept()
    {
        var sheet = new Sheet("spaces", 10, 10, [new TextMark(SampleSheets.Lettering, "1  2", new(1, 1), 3), new TextMark(SampleSheets.Lettering, "1 2", new(1, 1), 3)]);
        var texts = XDocument.Parse(SvgFile.Write(sheet)).Descendants(Ns + "text").ToList();
        Assert.Equal(["preserve", null], texts.Select(t => (string?)t.Attribute(XNamespace.Xml + "space")));
    }

    [Fact]
    public void A_sign_that_XML_forbids_does_not_break_the_file()
    {
        var sheet = new Sheet("bell \u0007", 10, 10, [new TextMark(SampleSheets.Lettering, "a\u0001b", new(1, 1), 3)]);
        Assert.Equal("a\uFFFDb", XDocument.Parse(SvgFile.Write(sheet)).Descendants(Ns + "text").Single().Value);
    }

    [Fact]
    public void Two_runs_write_the_same_text() => Assert.Equal(SvgFile.Write(SampleSheets.Everything), SvgFile.Write(SampleSheets.Everything));
}
