using System.Globalization;
using System.Text.RegularExpressions;
using Lines.Plans.Exchange;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Exchange;

public partial class StepFileTests
{
    [Theory]
    [InlineData(false, null, 1)]
    [InlineData(true, null, 2)]
    [InlineData(false, 0.04, 2)]
    [InlineData(true, 0.04, 3)]
    public void Every_reference_is_to_an_entity_and_only_the_roots_are_not_referred_to(bool transom, double? crown, int faces)
    {
        var text = StepFile.Write(CrownedHulls.With(transom ? SampleHulls.TransomBoat() : SampleHulls.DoubleEnder(), crown), "Gauge Tender");
        var entities = Entity().Matches(text).ToDictionary(m => m.Groups["n"].Value, m => m.Groups["e"].Value, StringComparer.Ordinal);
        var used = entities.Values.SelectMany(e => Reference().Matches(e).Select(m => m.Value)).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(used.Except(entities.Keys, StringComparer.Ordinal));
        var roots = entities.Where(e => !used.Contains(e.Key)).Select(e => e.Value[..e.Value.IndexOf('(', StringComparison.Ordinal)]).Order(StringComparer.Ordinal);
        Assert.Equal(["APPLICATION_PROTOCOL_DEFINITION", "PRODUCT_RELATED_PRODUCT_CATEGORY", "SHAPE_DEFINITION_REPRESENTATION"], roots, StringComparer.Ordinal);
        Assert.Equal(faces, entities.Values.Count(e => e.StartsWith("ADVANCED_FACE", StringComparison.Ordinal)));
    }

    [Fact]
    public void Poles_are_written_in_millimeters_and_read_back_as_the_same_doubles()
    {
        var side = SampleHulls.DoubleEnder().Side;
        var text = StepFile.Write(SampleHulls.DoubleEnder(), "x");
        var points = Point().Matches(text).Select(m => m.Groups["c"].Value.Split(',').Select(Number).ToArray()).ToList();
        for (var i = 0; i < side.U.Count; i++)
        {
            for (var j = 0; j < side.V.Count; j++)
            {
                var pole = side.PoleAt(i, j);
                Assert.Contains(points, p => p[0] == 1000 * pole.X && p[1] == 1000 * pole.Y && p[2] == 1000 * pole.Z);
            }
        }
    }

    [Fact]
    public void A_title_in_any_script_becomes_the_code_points_of_the_standard()
    {
        // ISO 10303-21: an apostrophe and a backslash are doubled, other characters are \X2\ or \X4\ and their code points.
        var text = StepFile.Write(SampleHulls.DoubleEnder(), "Fårö's \\ 渡 🛶\n");
        Assert.Contains(@"'F\X2\00E5\X0\r\X2\00F6\X0\''s \\ \X2\6E21\X0\ \X4\0001F6F6\X0\\X2\000A\X0\'", text, StringComparison.Ordinal);
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
    }

    [Fact]
    public void Coordinates_have_the_point_that_the_format_asks_for()
    {
        var text = StepFile.Write(SampleHulls.TransomBoat(), "x");
        var coordinates = Point().Matches(text).SelectMany(m => m.Groups["c"].Value.Split(','));
        Assert.All(coordinates, c => Assert.Matches(@"^-?\d+\.\d*(E[+-]\d+)?$", c));
    }

    [Fact]
    public void The_same_hull_gives_the_same_bytes_and_no_time()
    {
        var text = StepFile.Write(SampleHulls.TransomBoat(), "Gauge Tender");
        Assert.Equal(text, StepFile.Write(SampleHulls.TransomBoat(), "Gauge Tender"));
        Assert.Contains("FILE_NAME('Gauge Tender','',", text, StringComparison.Ordinal);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<n>#\d+)=(?<e>.*);$", RegexOptions.Multiline | RegexOptions.NonBacktracking)]
    private static partial Regex Entity();

    [GeneratedRegex(@"CARTESIAN_POINT\('',\((?<c>[^)]*)\)", RegexOptions.NonBacktracking)]
    private static partial Regex Point();

    [GeneratedRegex(@"#\d+", RegexOptions.NonBacktracking)]
    private static partial Regex Reference();
}
