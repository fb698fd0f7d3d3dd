using CsCheck;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Hull.Sections;

public class HullLineProperties
{
    private static readonly string[] Names = ["double-ender", "transom boat", "wigley"];

    private static readonly Gen<string> AnyName = Gen.Int[0, 2].Select(k => Names[k]);

    private static readonly Gen<(string Hull, int Kind, double A, double B)> Cuts =
        Gen.Select(AnyName, Gen.Int[0, 3], Gen.Double[0, 1], Gen.Double[0, 1]);

    private static IReadOnlyList<HullLine> Lines(string name, int kind, double a, double b)
    {
        var hull = CutTests.Named(name);
        var d = hull.Dials;
        return kind switch
        {
            0 => Cut.Station(hull, a * d.Length),
            1 => Cut.Waterline(hull, a * d.Bow.Sheer),
            2 => Cut.Buttock(hull, 1e-4 + (a * d.Beam / 2)),
            _ => Cut.Diagonal(hull, (0.1 + a) * d.Depth, b * 1.3),
        };
    }

    [Fact]
    public void Any_point_of_any_cut_is_on_the_skin_and_its_plane() =>
        Gen.Select(Cuts, Gen.Double[0, 1]).Sample((cut, t) =>
        {
            foreach (var line in Lines(cut.Hull, cut.Kind, cut.A, cut.B))
            {
                var p = line.At(t);
                Assert.InRange(Math.Abs(line.Plane!.Value.DistanceTo(p.Point)), 0, 1e-9);
                Assert.InRange(line.Hull.Side.PointAt(p.U, p.V).DistanceTo(p.Point), 0, 1e-14);
            }
        }, iter: 3000);

    [Fact]
    public void A_polyline_keeps_within_its_chord_tolerance() =>
        Gen.Select(Cuts, Gen.Double[-6, -3]).Sample((cut, power) =>
        {
            var tolerance = Math.Pow(10, power);
            foreach (var line in Lines(cut.Hull, cut.Kind, cut.A, cut.B))
            {
                var points = line.ToPolyline(tolerance);
                for (var k = 1; k < points.Count; k++)
                {
                    for (var s = 1; s < 16; s++)
                    {
                        var t = points[k - 1].T + ((points[k].T - points[k - 1].T) * s / 16);
                        Assert.InRange(Distance(line.At(t).Point, points[k - 1].Point, points[k].Point), 0, tolerance);
                    }
                }
            }
        }, iter: 300);

    [Fact]
    public void Curvature_is_the_limit_of_the_circle_through_three_near_points() =>
        Gen.Select(Cuts, Gen.Double[0.05, 0.95]).Sample((cut, t) =>
        {
            foreach (var line in Lines(cut.Hull, cut.Kind, cut.A, cut.B).Where(l => l.ChordLength > 0.05))
            {
                var h = 2e-4 / line.ChordLength;
                Point2 a = F(t - h), b = F(t), c = F(t + h);
                var circle = 2 * (b - a).Cross(c - a) / ((b - a).Length * (c - b).Length * (c - a).Length);
                var exact = line.CurvatureAt(t);

                // The circle is that of places within h: compare with the range of curvature there, and rounding of the points.
                double[] near = [exact, line.CurvatureAt(t - h), line.CurvatureAt(t + h)];
                var slack = 1e-3 + (0.01 * Math.Abs(exact));
                Assert.InRange(circle, near.Min() - slack, near.Max() + slack);

                Point2 F(double s) => line.Axes.Flat(line.At(s).Point);
            }
        }, iter: 1000);

    [Fact]
    public void A_station_and_a_waterline_meet_where_the_point_query_says() =>
        Gen.Select(AnyName, Gen.Double[0.02, 0.98], Gen.Double[0.02, 0.98]).Sample((name, a, b) =>
        {
            var hull = CutTests.Named(name);
            double x = a * hull.Dials.Length, z = b * hull.Dials.Depth;
            var query = SurfacePoint.At(hull, x, z);
            var crossing = Cut.Station(hull, x).SelectMany(s => s.CrossingsWith(Plane.AtZ(z))).Cast<LinePoint?>().FirstOrDefault();
            var other = Cut.Waterline(hull, z).SelectMany(w => w.CrossingsWith(Plane.AtX(x))).Cast<LinePoint?>().FirstOrDefault();
            Assert.Equal(crossing is null, query is null);
            Assert.Equal(crossing is null, other is null);
            if (query is { } q)
            {
                Assert.InRange(q.Point.DistanceTo(crossing!.Value.Point), 0, 1e-8);
                Assert.InRange(q.Point.DistanceTo(other!.Value.Point), 0, 1e-8);
            }
        }, iter: 2000);

    private static double Distance(Point3 p, Point3 a, Point3 b)
    {
        var d = b - a;
        var s = Math.Clamp((p - a).Dot(d) / d.Dot(d), 0, 1);
        return p.DistanceTo(a + (s * d));
    }
}
