using Lines.Design;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

/// <summary>Every design to start from reads without a fault, builds, and is fair.</summary>
public class TemplatesTests
{
    public static TheoryData<string> All => [.. Directory.EnumerateFiles(Repository.PathOf("templates"), "*.toml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Fact]
    public void There_are_six() => Assert.Equal(6, All.Count);

    [Theory]
    [MemberData(nameof(All))]
    public void It_builds_hulls_that_are_convex_throughout(string file)
    {
        var reading = DesignFile.Read(File.ReadAllBytes(Repository.PathOf("templates", file)), file);
        Assert.Empty(reading.Diagnostics);
        var vessel = reading.Design!.Vessel;
        foreach (var dials in vessel.Outriggers.Select(o => o.Hull).Prepend(vessel.MainHull))
        {
            var solution = HullShape.Solve(dials);
            Assert.Empty(solution.Conflicts);
            var report = FairnessReport.Of(HullLines.Of(solution.Surface!));
            Assert.True(report.Fair, report.Verdict);
            Assert.True(report.ConvexThroughout, report.Verdict);
        }
    }

    [Fact]
    public void The_outrigger_canoe_floats_near_her_design_waterline_in_every_case_but_the_heaviest()
    {
        // All hulls on one level waterline, by the integrals of each alone: at the design waterline they carry the solo and the sailing case, and with
        // two up the water is at most 40 mm over it.
        var vessel = DesignFile.Read(File.ReadAllBytes(Repository.PathOf("templates", "sample-courier.toml")), "sample-courier.toml").Design!.Vessel;
        var main = HullShape.Solve(vessel.MainHull).Surface!;
        var pair = Assert.Single(vessel.Outriggers);
        var floats = HullShape.Solve(pair.Hull).Surface!;
        Assert.Equal(["solo", "two up", "sailing"], vessel.Cases.Select(c => c.Name), StringComparer.Ordinal);
        double Carried(double z) => Water.Fresh.Density * (UprightHydrostatics.Below(main, z, 1e-6).Volume + (2 * UprightHydrostatics.Below(floats, z - pair.Height, 1e-6).Volume));
        foreach (var loadCase in vessel.Cases)
        {
            var mass = loadCase.Mass + vessel.Structure!.Mass;
            Assert.InRange(mass, Carried(main.Draft - 0.02), Carried(main.Draft + (loadCase.Name is "two up" ? 0.04 : 0)));
        }
    }
}
