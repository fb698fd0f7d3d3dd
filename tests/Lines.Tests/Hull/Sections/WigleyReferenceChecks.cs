using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Sections;

/// <summary>Closed forms of Wigley's parabolic hull (Wigley 1942), derived from y = B/2 (1 - (2x/L)²)(1 - (z/T)²).</summary>
public class WigleyReferenceChecks
{
    private const double L = 1, B = 0.1, T = 0.0625;

    [Fact]
    public void Waterline_curvature_at_midship_and_at_the_end_is_that_of_the_parabola()
    {
        var line = Assert.Single(Cut.Waterline(WigleyHull.Of(L, B, T), T - 1e-13));
        var amidships = Assert.Single(line.CrossingsWith(Plane.AtX(L / 2)));
        Assert.Equal(-4 * B / (L * L), line.CurvatureAt(amidships.T), 9); // 0.400000, derived
        Assert.Equal(-0.377146, line.CurvatureAt(0), 6);
        Assert.Equal(-(4 * B / (L * L)) / Math.Pow(1 + (4 * B * B / (L * L)), 1.5), line.CurvatureAt(1), 9);
    }

    [Fact]
    public void The_design_waterline_as_sheer_has_the_same_curvature()
    {
        var sheer = Cut.Sheer(WigleyHull.Of(L, B, T));
        Assert.Equal(-0.4, sheer.CurvatureAt(0.5), 9);
        Assert.Equal(-0.377146, sheer.CurvatureAt(0), 6);
        Assert.Equal(0, sheer.CurvatureAt(0.3, FlatAxes.Profile), 12);
    }

    [Fact]
    public void Half_angle_of_entrance_has_tangent_2B_over_L()
    {
        var d = Cut.Sheer(WigleyHull.Of(L, B, T)).DirectionAt(0);
        Assert.Equal(11.309932, Math.Atan2(d.Y, d.X) * 180 / Math.PI, 6);
        Assert.Equal(2 * B / L, d.Y / d.X, 12);
    }

    [Fact]
    public void Length_of_a_waterline_side_is_1_00662723_of_L()
    {
        var points = Cut.Sheer(WigleyHull.Of(L, B, T)).ToPolyline(1e-8);
        var length = points.Zip(points.Skip(1), (a, b) => a.Point.DistanceTo(b.Point)).Sum();
        Assert.InRange(length, 1.00662723 - 2e-8, 1.00662723 + 1e-8);
    }

    [Fact]
    public void Sections_and_waterlines_are_the_formula()
    {
        var hull = WigleyHull.Of(5, 0.5, 0.3125);
        var lines = HullLines.Of(hull, LinesGrid.For(hull) with { Waterlines = [0.05, 0.1, 0.2, 0.3], Diagonals = [new(0.3, 0.7)] });
        Assert.Equal(4, lines.Waterlines.Count);
        Assert.NotEmpty(lines.Diagonals);
        foreach (var line in lines.All)
        {
            for (var k = 0; k <= 40; k++)
            {
                var p = line.At(k / 40.0).Point;
                Assert.Equal(WigleyHull.HalfBreadth(5, 0.5, 0.3125, p.X, p.Z), p.Y, 12);
            }
        }
    }

    [Fact]
    public void Section_curvature_is_that_of_its_parabola()
    {
        // y = a (1 - w²), w = (z - T)/T: κ = y″ / (1 + y′²)^1.5 seen from z; at w = -1/2 with a = b(1 - s²).
        double x = 0.3, a = B / 2 * (1 - Math.Pow(((2 * x) - L) / L, 2));
        var line = Assert.Single(Cut.Station(WigleyHull.Of(L, B, T), x));
        var p = Assert.Single(line.CrossingsWith(Plane.AtZ(T / 2)));
        double slope = a / T, bend = 2 * a / (T * T);
        Assert.Equal(bend / Math.Pow(1 + (slope * slope), 1.5), line.CurvatureAt(p.T), 9);
    }

    [Fact]
    public void A_three_point_circle_through_21_offsets_agrees_at_midship()
    {
        // Discrete curvature at midship is exactly 4B/L² on a parabola; next to the end 0.381319 with 21 points (computed independently).
        var sheer = Cut.Sheer(WigleyHull.Of(L, B, T));
        Assert.Equal(0.4, ThreePoint(sheer, 10, 20), 9);
        Assert.Equal(0.381319, ThreePoint(sheer, 1, 20), 6);
        Assert.Equal(0.385117, ThreePoint(sheer, 1, 10), 6);
        Assert.Equal(0.379278, ThreePoint(sheer, 1, 40), 6);
    }

    // y″ / (1 + y′²)^1.5 with central differences of the offsets at n + 1 even stations.
    private static double ThreePoint(HullLine line, int k, int n)
    {
        double h = L / n;
        double Y(int i) => line.CrossingsWith(Plane.AtX(i * h))[0].Point.Y;
        double slope = (Y(k + 1) - Y(k - 1)) / (2 * h), bend = (Y(k + 1) - (2 * Y(k)) + Y(k - 1)) / (h * h);
        return -bend / Math.Pow(1 + (slope * slope), 1.5);
    }
}
