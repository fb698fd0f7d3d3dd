using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Offsets;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Offsets;

public class OffsetsRefitTests
{
    [Theory]
    [InlineData(2.0)]
    [InlineData(5.2)]
    [InlineData(12.0)]
    public void Wigleys_lengthwise_lines_come_back_within_a_step_in_every_rounding(double length)
    {
        var lines = HullLines.Of(WigleyHull.Of(length, length / 8, length / 16));
        foreach (var step in new[] { 0.0001, 0.0254 / 32, 0.0254 / 16 })
        {
            var refit = OffsetsRefit.Of(lines, step);
            foreach (var line in refit.Lines.Where(l => l.Kind is LineKind.Waterline or LineKind.Sheer or LineKind.Keel or LineKind.Diagonal))
            {
                Assert.InRange(line.AtStations, 0, (step / 2) + 1e-9);
                Assert.True(line.Between <= step, line.Name);
                Assert.True(line.Moved <= step);
            }
        }
    }

    [Theory]
    [InlineData("gauge-runner")]
    [InlineData("gauge-runner-blunt")]
    [InlineData("gauge-runner-fine")]
    [InlineData("line-layer")]
    [InlineData("silt-sampler")]
    public void The_table_of_every_template_holds_in_tenths_of_a_millimeter_and_in_32nds_of_an_inch(string template)
    {
        var path = Repository.PathOf("templates", template + ".toml");
        var design = DesignFile.Read(File.ReadAllBytes(path), path).Design!;
        var lines = HullLines.Of(HullShape.Solve(design.Vessel.MainHull, design.Source.AsTold).Surface!);
        foreach (var step in new[] { LengthNotation.Millimeters.Step(), LengthNotation.Inches.Step() })
        {
            var refit = OffsetsRefit.Of(lines, step);
            Assert.DoesNotContain(refit.Lines, l => !refit.Within(l));
            Assert.True(refit.Holds);
        }
    }

    // The whole of a buttock is judged, from the sheer or transom at one end to the other: steep ends are where tables lack most.
    [Fact]
    public void A_buttock_has_its_ends_in_the_table_and_its_points_lie_on_it()
    {
        var lines = HullLines.Of(SampleHulls.DoubleEnder());
        foreach (var row in TableOfOffsets.Outside(lines).Heights.Where(r => r.Kind == LineKind.Buttock))
        {
            var buttock = Assert.Single(lines.Parts(row.Kind, row.Label));
            Assert.Equal(buttock.Start.Point.X, row.Between[0].X, 1e-9);
            Assert.Equal(buttock.End.Point.X, row.Between[^1].X, 1e-9);
            Assert.All(row.Between.Skip(1).SkipLast(1), p => Assert.Equal(buttock.FirstCrossingWith(Plane.AtX(p.X))!.Value.Point.Z, p.Value, 1e-8));
        }
    }

    [Fact]
    public void Without_rounding_a_parabola_comes_back_to_a_hundredth_of_a_millimeter() =>
        Assert.All(
            OffsetsRefit.Of(HullLines.Of(WigleyHull.Of(5, 0.5, 0.3125)), 1e-9).Lines.Where(l => l.Kind == LineKind.Waterline),
            l => Assert.InRange(l.Between, 0, 1e-5));

    [Fact]
    public void A_table_that_does_not_hold_is_said_with_line_and_place()
    {
        // A step under the nanometer to which lines are refitted cannot be held by a batten.
        var refit = OffsetsRefit.Of(HullLines.Of(SampleHulls.DoubleEnder()), 1e-8);
        Assert.False(refit.Holds);
        Assert.Equal(refit.Lines.Max(l => l.Between), refit.Worst.Between);
        Assert.InRange(refit.Worst.X, 0, 5.2);
    }

    [Fact]
    public void A_step_of_nothing_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OffsetsRefit.Of(HullLines.Of(WigleyHull.Of(5, 0.5, 0.3)), 0));
}
