using Lines.Design;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

/// <summary>Every design to start from reads without a fault, builds, and is fair.</summary>
public class TemplatesTests
{
    public static TheoryData<string> All => [.. Directory.EnumerateFiles(Repository.PathOf("templates"), "*.toml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Fact]
    public void There_are_five() => Assert.Equal(5, All.Count);

    [Theory]
    [MemberData(nameof(All))]
    public void It_builds_a_hull_that_is_convex_throughout(string file)
    {
        var reading = DesignFile.Read(File.ReadAllBytes(Repository.PathOf("templates", file)), file);
        Assert.Empty(reading.Diagnostics);
        var solution = HullShape.Solve(reading.Design!.Vessel.MainHull);
        Assert.Empty(solution.Conflicts);
        var report = FairnessReport.Of(HullLines.Of(solution.Surface!));
        Assert.True(report.Fair, report.Verdict);
        Assert.True(report.ConvexThroughout, report.Verdict);
    }
}
