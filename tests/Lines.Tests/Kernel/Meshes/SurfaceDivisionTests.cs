using Lines.Kernel.Geometry;
using Lines.Kernel.Meshes;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Kernel.Meshes;

public class SurfaceDivisionTests
{
    // A chord of length h departs from z = x² by h² / 4: closed form.
    [Theory]
    [InlineData(0.25, 1)]
    [InlineData(0.2499, 2)]
    [InlineData(0.01, 5)]
    [InlineData(1e-6, 500)]
    public void A_parabolic_sheet_is_divided_as_often_as_its_chords_need_and_not_across(double tolerance, int parts)
    {
        var (u, v) = SurfaceDivision.Within(Parabola(), tolerance);
        Assert.Equal(parts + 1, u.Length);
        Assert.Equal([0, 1], v);
    }

    [Fact]
    public void A_twisted_sheet_is_divided_though_its_edges_are_straight()
    {
        // z = x y departs from the diagonal of a cell h by k by h k / 4.
        var straight = SplineBasis.Clamped(1, [0, 1]);
        var sheet = new BSplineSurface(straight, straight, new Point3[,] { { new(0, 0, 0), new(0, 1, 0) }, { new(1, 0, 0), new(1, 1, 1) } });
        var (u, v) = SurfaceDivision.Within(sheet, 0.01);
        Assert.InRange((u.Length - 1) * (v.Length - 1), 25, 36);
    }

    [Theory]
    [InlineData(true, 1e-3)]
    [InlineData(true, 1e-5)]
    [InlineData(false, 1e-4)]
    public void No_triangle_departs_further_than_the_tolerance_whichever_the_diagonal(bool transom, double tolerance)
    {
        var side = (transom ? SampleHulls.TransomBoat() : SampleHulls.DoubleEnder()).Side;
        var (us, vs) = SurfaceDivision.Within(side, tolerance);
        Assert.Subset(us.ToHashSet(), side.U.Breaks.ToHashSet());
        Assert.Subset(vs.ToHashSet(), side.V.Breaks.ToHashSet());
        var worst = 0.0;
        for (var i = 1; i < us.Length; i++)
        {
            for (var j = 1; j < vs.Length; j++)
                worst = Math.Max(worst, Departure(side, (us[i - 1], us[i]), (vs[j - 1], vs[j])));
        }

        // The bound is at most some three times what is there.
        Assert.InRange(worst, 0.3 * tolerance, tolerance);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void A_tolerance_that_is_none_is_refused(double tolerance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SurfaceDivision.Within(Parabola(), tolerance));

    /// <summary>Where a cell departs most: the middles of its sides and of both diagonals.</summary>
    private static double Departure(BSplineSurface side, (double From, double To) u, (double From, double To) v)
    {
        double middleU = (u.From + u.To) / 2, middleV = (v.From + v.To) / 2;
        Point3 a = side.PointAt(u.From, v.From), b = side.PointAt(u.To, v.From), c = side.PointAt(u.To, v.To), d = side.PointAt(u.From, v.To);
        double Off(Point3 p, Point3 q, double atU, double atV) => (p + (0.5 * (q - p))).DistanceTo(side.PointAt(atU, atV));
        return new[] { Off(a, b, middleU, v.From), Off(d, c, middleU, v.To), Off(a, d, u.From, middleV), Off(b, c, u.To, middleV), Off(a, c, middleU, middleV), Off(b, d, middleU, middleV) }.Max();
    }

    private static BSplineSurface Parabola() => new(
        SplineBasis.Clamped(2, [0, 1]),
        SplineBasis.Clamped(1, [0, 1]),
        new Point3[,] { { new(0, 0, 0), new(0, 1, 0) }, { new(0.5, 0, 0), new(0.5, 1, 0) }, { new(1, 0, 1), new(1, 1, 1) } });
}
