using System.Globalization;
using Lines.Plans.Exchange;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Exchange;

/// <summary>The form of the records as IGES 5.3, chapter 2, lays it down.</summary>
public class IgesFileTests
{
    [Theory]
    [InlineData(false, null, 1)]
    [InlineData(true, null, 2)]
    [InlineData(false, 0.04, 2)]
    [InlineData(true, 0.04, 4)]
    public void Every_record_has_80_columns_and_its_section_and_number(bool transom, double? crown, int entities)
    {
        var lines = Lines(IgesFile.Write(CrownedHulls.With(transom ? SampleHulls.TransomBoat() : SampleHulls.DoubleEnder(), crown), "Gauge Tender"));
        Assert.All(lines, l => Assert.Equal(80, l.Length));
        Assert.Equal("SGDPT", string.Concat(lines.Select(l => l[72]).Distinct()));
        foreach (var section in lines.GroupBy(l => l[72]))
            Assert.Equal(Enumerable.Range(1, section.Count()), section.Select(l => Number(l[73..])));
        int Count(char section) => lines.Count(l => l[72] == section);
        Assert.Equal(2 * entities, Count('D'));
        Assert.Equal(Invariant($"S{Count('S'),7}G{Count('G'),7}D{Count('D'),7}P{Count('P'),7}"), lines[^1][..32]);
    }

    [Fact]
    public void The_directory_points_to_the_parameters_and_they_point_back()
    {
        var lines = Lines(IgesFile.Write(SampleHulls.TransomBoat(), "Gauge Tender"));
        var directory = lines.Where(l => l[72] == 'D').ToList();
        var parameters = lines.Where(l => l[72] == 'P').ToList();
        var next = 1;
        for (var k = 0; k < directory.Count; k += 2)
        {
            Assert.Equal(["128", "128"], directory.Slice(k, 2).Select(l => l[..8].Trim()), StringComparer.Ordinal);
            Assert.Equal(next, Number(directory[k][8..16]));
            var own = parameters.Slice(next - 1, Number(directory[k + 1][24..32]));
            Assert.All(own, l => Assert.Equal(k + 1, Number(l[65..72])));
            Assert.StartsWith("128,", own[0], StringComparison.Ordinal);
            Assert.EndsWith(";", own[^1][..64].TrimEnd(), StringComparison.Ordinal);
            next += own.Count;
        }

        Assert.Equal(parameters.Count, next - 1);
    }

    [Fact]
    public void The_global_section_has_26_parameters_and_says_millimeters_and_version_5_3()
    {
        var text = string.Concat(Lines(IgesFile.Write(SampleHulls.DoubleEnder(), "Fårö; 渡")).Where(l => l[72] == 'G').Select(l => l[..72])).TrimEnd();
        Assert.StartsWith("1H,,1H;,7HF?r?; ?,8Hhull.igs,", text, StringComparison.Ordinal);
        string[] parameters = [.. text["1H,,1H;,7HF?r?; ?".Length..].TrimEnd(';').Split(',').Select(p => p.Trim())];
        Assert.Equal(26 - 3, parameters.Length - 1);
        Assert.Equal(["1.", "2", "2HMM"], parameters[10..13], StringComparer.Ordinal);
        Assert.Equal("11", parameters[20]);
    }

    [Fact]
    public void The_same_hull_gives_the_same_bytes()
    {
        var text = IgesFile.Write(SampleHulls.TransomBoat(), "Gauge Tender");
        Assert.Equal(text, IgesFile.Write(SampleHulls.TransomBoat(), "Gauge Tender"));
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
    }

    private static List<string> Lines(string text) => [.. text.TrimEnd('\n').Split('\n')];

    private static int Number(string text) => int.Parse(text, NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture);
}
