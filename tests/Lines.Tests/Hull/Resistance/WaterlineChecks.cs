using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Xunit;

namespace Lines.Tests.Hull.Resistance;

public class WaterlineChecks
{
    // A keel that rises to (0.375, 0.125) and a stem that leaves it the same way, in numbers without rounding: there the two edges of the skin leave the slope of
    // the waterline 0 / 0, and the drag of a boat that lay so that it came out exactly was no number.
    [Fact]
    public void A_waterline_that_ends_at_the_foot_of_a_stem_has_a_slope_there()
    {
        var poles = new Point3[,]
        {
            { new(0.375, 0, 0.125), new(0.1875, 0, 0.1875), new(0, 0, 0.5) },
            { new(0.75, 0, 0), new(0.75, 0.05, 0.15), new(0.7, 0.1, 0.5) },
            { new(1.5, 0, 0), new(1.5, 0.2, 0.1), new(1.5, 0.25, 0.5) },
        };
        var line = Waterline.Cut(new BSplineSurface(SplineBasis.Clamped(2, [0, 1]), SplineBasis.Clamped(2, [0, 1]), poles), 0.5, 0.375, 48);
        Assert.Equal((0.375, 0), (line.X[0], line.Y[0]));
        Assert.All(line.Slope, s => Assert.InRange(s, 0, 1));
    }
}
