using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class ArcFitTests
{
    private const double Tolerance = 1e-5;

    [Fact]
    public void A_circle_comes_back_as_arcs_of_its_own_radius_and_center()
    {
        // Closed form: a circle is its own best arc.
        var path = ArcFit.Along(t => Circle(0.35, t), 0.2, 2.9, Tolerance);
        var segments = path.Segments();
        Assert.InRange(segments.Count, 2, 3);
        foreach (var s in segments)
        {
            Assert.Equal(0.35, s.Radius, 1e-9);
            Assert.True(s.Center.DistanceTo(new Point2(0.1, -0.2)) < 1e-9);
        }

        Assert.Equal(0.35 * 2.7, path.Length(), 1e-9);
    }

    [Fact]
    public void A_straight_line_comes_back_as_one_line()
    {
        var path = ArcFit.Along(t => new DirectedPoint(new Point2(3 * t, 4 * t), new Vector2(3, 4)), 0, 0.1, Tolerance);
        var s = Assert.Single(path.Segments());
        Assert.True(s.IsLine);
        Assert.Equal(0.5, s.Length, 1e-12);
    }

    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-5)]
    [InlineData(1e-6)]
    public void A_parabola_stays_within_the_tolerance_everywhere(double tolerance)
    {
        // Closed form: y = x²; the distance of an arc's point from it is that of the nearest root of the cubic, found by Newton.
        var path = ArcFit.Along(x => new DirectedPoint(new Point2(x, x * x), new Vector2(1, 2 * x)), -0.6, 0.5, tolerance);
        var worst = path.Flattened(1e-9).Max(DistanceFromParabola);
        Assert.InRange(worst, 0, tolerance);
        for (var x = -0.6; x <= 0.5; x += 0.0007)
            Assert.InRange(path.DistanceTo(new Point2(x, x * x)), 0, tolerance);
        AssertSmooth(path);
    }

    [Fact]
    public void Ten_times_the_tolerance_halves_the_arcs_as_biarcs_of_third_order_should()
    {
        // Theory: the error of a biarc goes with the cube of its length, so the count goes with tolerance^(-1/3): 10^(1/3) = 2.15.
        int Count(double tolerance) => ArcFit.Along(x => new DirectedPoint(new Point2(x, x * x), new Vector2(1, 2 * x)), -0.6, 0.5, tolerance).Segments().Count;
        Assert.InRange((double)Count(1e-6) / Count(1e-5), 1.8, 2.5);
    }

    [Fact]
    public void A_clothoid_passes_the_published_Fresnel_integrals()
    {
        // Abramowitz & Stegun, Handbook of Mathematical Functions, table 7.7, to seven decimals (values recomputed to 12 digits
        // with an arbitrary-precision library): x, C(x), S(x).
        double[][] table =
        [
            [0.5, 0.4923442, 0.0647324], [1.0, 0.7798934, 0.4382591], [1.5, 0.4452612, 0.6975050], [2.0, 0.4882534, 0.3434157],
        ];
        var path = ArcFit.Along(Clothoid, 0, 2, Tolerance);
        foreach (var row in table)
            Assert.InRange(path.DistanceTo(new Point2(row[1], row[2])), 0, Tolerance + 1e-7);
        // Its length is its parameter; arcs within the tolerance keep it to second order.
        Assert.Equal(2, path.Length(), 1e-5);
        AssertSmooth(path);
    }

    [Fact]
    public void The_curvature_of_the_arcs_of_a_clothoid_grows_as_its_own()
    {
        // Theory: curvature π s at the length s.
        var at = 0.0;
        foreach (var s in ArcFit.Along(Clothoid, 0, 2, Tolerance).Segments())
        {
            var middle = at + (s.Length / 2);
            Assert.Equal(Math.PI * middle, s.Turn / s.Length, 0.12);
            at += s.Length;
        }
    }

    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-5)]
    public void A_clothoid_takes_fewer_arcs_than_biarcs_with_its_own_tangents_and_not_fewer_than_theory_lets(double tolerance)
    {
        // Theory, from a cubic's distance to parabolas: arcs of the length h leave a curve of curvature κ' s by κ' h³/40.5 where every other joint has its tangent
        // (4/27 of h³ κ'/6), and by κ' h³ √3/216 at best, where they swing to both sides alike. Here κ' = π over a length of 2.
        // Biarcs are two arcs each, so the first bound is the next even number.
        double Count(double part) => 2 * Math.Cbrt(Math.PI * part / tolerance);
        var count = ArcFit.Along(Clothoid, 0, 2, tolerance).Segments().Count;
        Assert.InRange(count, Count(Math.Sqrt(3) / 216), (2 * Math.Ceiling(Count(4 / 27.0 / 6) / 2)) - 1);
    }

    [Fact]
    public void No_segment_is_shorter_than_half_a_millimeter_on_a_mold_sized_curve()
    {
        // Half a superellipse like a midship section, 0.37 m by 0.36 m, whose quarter turn is where arcs are short.
        DirectedPoint Bilge(double t)
        {
            double s = Math.Sin(t), c = Math.Cos(t), p = 0.7;
            return new DirectedPoint(
                new Point2(0.37 * Math.Pow(s, p), -0.36 * Math.Pow(c, p)),
                new Vector2(0.37 * p * Math.Pow(s, p - 1) * c, 0.36 * p * Math.Pow(c, p - 1) * s));
        }

        var path = ArcFit.Along(Bilge, 0.05, Math.PI / 2 - 0.05, Tolerance);
        Assert.All(path.Segments(), s => Assert.True(s.Length > 0.0005));
        AssertSmooth(path);
    }

    [Fact]
    public void The_ends_are_kept_and_corners_between_curves_stay_corners()
    {
        var quarter = ArcFit.Along(t => Circle(0.2, t), 0, Math.PI / 2, Tolerance);
        var end = quarter.Vertices[^1].Point;
        var leg = ArcPath.Line(end, new Point2(end.X, end.Y + 0.3));
        var joined = ArcPaths.Joined([quarter, leg], closed: false, 1e-6);
        Assert.Contains(joined.Vertices, v => v.Point == Circle(0.2, Math.PI / 2).Point);
        Assert.Equal(quarter.Vertices[0].Point, Circle(0.2, 0).Point);
        var corner = joined.Segments()[^2].EndDirection.Dot(joined.Segments()[^1].StartDirection);
        Assert.Equal(0, corner, 1e-9);
    }

    [Fact]
    public void A_jump_inside_is_reported_with_its_place()
    {
        var error = Assert.Throws<ArcFitException>(() => ArcFit.Along(
            t => new DirectedPoint(new Point2(t, t < 0.01234 ? 0 : 0.001), new Vector2(1, 0)), -1, 1, 1e-6));
        Assert.Contains("(0.0123", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_of_a_tenth_of_a_millimeter_between_long_straights_is_followed()
    {
        // Closed form: two lines square to each other and a quarter circle of 0.1 mm, as under planking nearly as thick as a bilge is round.
        const double r = 0.0001;
        DirectedPoint Round(double s)
        {
            double quarter = r * Math.PI / 2;
            if (s <= 0)
                return new DirectedPoint(new Point2(s, 0), new Vector2(1, 0));
            if (s >= quarter)
                return new DirectedPoint(new Point2(r, r + s - quarter), new Vector2(0, 1));
            var (sin, cos) = Math.SinCos(s / r);
            return new DirectedPoint(new Point2(r * sin, r * (1 - cos)), new Vector2(cos, sin));
        }

        var path = ArcFit.Along(Round, -0.3, 0.2, Tolerance);
        for (var s = -0.001; s < 0.001; s += 0.000001)
            Assert.InRange(path.DistanceTo(Round(s).Point), 0, Tolerance);
        Assert.InRange(path.Segments().Count, 3, 8);
        AssertSmooth(path);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-5)]
    [InlineData(double.NaN)]
    public void A_tolerance_that_is_not_positive_is_refused(double tolerance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ArcFit.Along(t => Circle(1, t), 0, 1, tolerance));

    private static DirectedPoint Circle(double r, double t) =>
        new(new Point2(0.1 + (r * Math.Cos(t)), -0.2 + (r * Math.Sin(t))), new Vector2(-r * Math.Sin(t), r * Math.Cos(t)));

    private static DirectedPoint Clothoid(double s)
    {
        // Simpson's rule with 400 panels: far below the seven decimals of the table.
        const int panels = 400;
        double c = 0, d = 0;
        for (var i = 0; i <= panels; i++)
        {
            double t = s * i / panels, w = i is 0 or panels ? 1 : i % 2 == 1 ? 4 : 2;
            c += w * Math.Cos(Math.PI / 2 * t * t);
            d += w * Math.Sin(Math.PI / 2 * t * t);
        }

        var h = s / panels / 3;
        return new DirectedPoint(new Point2(h * c, h * d), new Vector2(Math.Cos(Math.PI / 2 * s * s), Math.Sin(Math.PI / 2 * s * s)));
    }

    private static double DistanceFromParabola(Point2 p)
    {
        var x = p.X;
        for (var i = 0; i < 50; i++)
            x -= ((x - p.X) + (2 * x * ((x * x) - p.Y))) / (1 + (6 * x * x) - (2 * p.Y));
        return p.DistanceTo(new Point2(x, x * x));
    }

    private static void AssertSmooth(ArcPath path)
    {
        var s = path.Segments();
        for (var i = 1; i < s.Count; i++)
        {
            var angle = Math.Abs(Math.Asin(Math.Clamp(s[i - 1].EndDirection.Cross(s[i].StartDirection), -1, 1)));
            Assert.True(angle < 0.05 * Math.PI / 180, $"joint {i.ToString(System.Globalization.CultureInfo.InvariantCulture)} turns");
        }
    }
}
