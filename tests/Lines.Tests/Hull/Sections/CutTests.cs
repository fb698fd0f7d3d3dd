using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Sections;

public class CutTests
{
    public static TheoryData<string> Hulls => ["double-ender", "transom boat", "wigley"];

    private static readonly Dictionary<string, HullSurface> Made = new(StringComparer.Ordinal)
    {
        ["double-ender"] = SampleHulls.DoubleEnder(),
        ["transom boat"] = SampleHulls.TransomBoat(),
        ["wigley"] = WigleyHull.Of(5, 0.5, 0.3125),
    };

    internal static HullSurface Named(string name) => Made[name];

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Every_node_lies_on_the_skin_and_within_a_nanometer_of_its_plane(string name)
    {
        var hull = Named(name);
        foreach (var line in HullLines.Of(hull).All.Where(l => l.Plane is not null))
        {
            foreach (var n in line.Nodes)
            {
                Assert.InRange(Math.Abs(line.Plane!.Value.DistanceTo(n.Point)), 0, 1e-9);
                Assert.InRange(hull.Side.PointAt(n.U, n.V).DistanceTo(n.Point), 0, 1e-14);
                Assert.InRange(n.U, 0, 1);
                Assert.InRange(n.V, 0, 1);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void A_thousand_places_along_every_line_lie_within_a_nanometer_of_its_plane(string name)
    {
        foreach (var line in HullLines.Of(Named(name)).All.Where(l => l.Plane is not null))
        {
            for (var k = 0; k <= 1000; k++)
            {
                var p = line.At(k / 1000.0);
                Assert.InRange(Math.Abs(line.Plane!.Value.DistanceTo(p.Point)), 0, 1e-9);
                Assert.InRange(p.U, -1e-9, 1 + 1e-9);
                Assert.InRange(p.V, -1e-9, 1 + 1e-9);
            }
        }
    }

    [Fact]
    public void A_waterline_of_a_pointed_hull_runs_from_stem_to_sternpost()
    {
        var hull = SampleHulls.DoubleEnder();
        var line = Assert.Single(Cut.Waterline(hull, 0.2));
        Assert.Equal(0, line.Start.U);
        Assert.Equal(1, line.End.U);
        Assert.Equal(0, line.Start.Point.Y, 12);
    }

    [Fact]
    public void A_waterline_under_the_rocker_starts_and_ends_on_the_keel()
    {
        var line = Assert.Single(Cut.Waterline(SampleHulls.DoubleEnder(), 0.02));
        Assert.Equal(0, line.Start.V);
        Assert.Equal(0, line.End.V);
    }

    [Fact]
    public void A_waterline_above_the_least_sheer_has_a_fore_and_an_after_part()
    {
        var lines = Cut.Waterline(SampleHulls.DoubleEnder(), 0.42);
        Assert.Equal(2, lines.Count);
        Assert.Equal((0.0, 1.0), (lines[0].Start.U, lines[0].End.V));
        Assert.Equal((1.0, 1.0), (lines[1].Start.V, lines[1].End.U));
        Assert.True(lines[0].End.Point.X < lines[1].Start.Point.X);
    }

    [Fact]
    public void A_station_starts_on_the_stem_before_the_forefoot_and_on_the_keel_behind_it()
    {
        var hull = SampleHulls.DoubleEnder();
        foreach (var x in new[] { 0.001, 0.01, 0.1, 0.249 })
        {
            var line = Assert.Single(Cut.Station(hull, x));
            Assert.Equal((0.0, 1.0), (line.Start.U, line.End.V));
        }

        foreach (var x in new[] { 0.251, 1.0, 2.6, 4.9 })
        {
            var line = Assert.Single(Cut.Station(hull, x));
            Assert.Equal((0.0, 1.0), (line.Start.V, line.End.V));
        }
    }

    [Fact]
    public void A_station_behind_the_foot_of_a_raked_transom_starts_on_its_edge()
    {
        var hull = SampleHulls.TransomBoat();
        var line = Assert.Single(Cut.Station(hull, 4.15));
        Assert.Equal((1.0, 1.0), (line.Start.U, line.End.V));
        Assert.Equal(0, hull.Transom!.Value.DistanceTo(line.Start.Point), 2);
        Assert.Equal(1, Assert.Single(Cut.Waterline(hull, 0.2)).End.U);
    }

    [Fact]
    public void A_buttock_of_a_pointed_hull_runs_from_sheer_to_sheer_and_of_a_transom_boat_to_its_edge()
    {
        var pointed = Assert.Single(Cut.Buttock(SampleHulls.DoubleEnder(), 0.18));
        Assert.Equal((1.0, 1.0), (pointed.Start.V, pointed.End.V));
        var transom = Assert.Single(Cut.Buttock(SampleHulls.TransomBoat(), 0.14));
        Assert.Equal((1.0, 1.0), (transom.Start.V, transom.End.U));
    }

    [Fact]
    public void The_plane_of_an_iso_line_cuts_that_iso_line()
    {
        var hull = WigleyHull.Of(5, 0.5, 0.3125);
        Assert.All(Assert.Single(Cut.Station(hull, 2.5)).Nodes, n => Assert.Equal(0.5, n.U, 11));
        Assert.All(Assert.Single(Cut.Waterline(hull, 0.3125 / 2)).Nodes, n => Assert.Equal(0.5, n.V, 11));
    }

    [Fact]
    public void A_plane_that_misses_the_hull_cuts_nothing()
    {
        var hull = SampleHulls.DoubleEnder();
        Assert.Empty(Cut.Station(hull, -0.01));
        Assert.Empty(Cut.Station(hull, 5.21));
        Assert.Empty(Cut.Waterline(hull, 0.6));
        Assert.Empty(Cut.Buttock(hull, 0.5));
    }

    [Fact]
    public void A_place_that_is_not_a_number_is_refused()
    {
        var hull = SampleHulls.DoubleEnder();
        Assert.Throws<ArgumentOutOfRangeException>(() => Cut.Station(hull, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Cut.Keel(hull).At(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Cut.Keel(hull).ToPolyline(0));
    }

    [Fact]
    public void A_buttock_outside_the_sheer_of_a_hull_with_tumblehome_is_a_loop()
    {
        var hull = Tumblehome();
        var line = Assert.Single(Cut.Buttock(hull, 0.95));
        Assert.True(line.Closed);
        Assert.Equal(line.Start.Point, line.End.Point);
        Assert.Equal(2, line.CrossingsWith(Plane.AtX(2)).Count);
    }

    [Fact]
    public void A_buttock_under_a_hull_with_tumblehome_meets_a_station_twice()
    {
        var line = Assert.Single(Cut.Station(Tumblehome(), 2.0));
        var crossings = line.CrossingsWith(Plane.AtY(0.9));
        Assert.Equal(2, crossings.Count);
        Assert.All(crossings, p => Assert.Equal(0.9, p.Point.Y, 9));
    }

    // y = (1 - ((x - 2) / 2)²) sin-like in v: 0 at the keel, 1 at mid height, 0.75 at the sheer.
    private static HullSurface Tumblehome()
    {
        var basis = Lines.Kernel.Splines.SplineBasis.Clamped(2, [0, 1]);
        double[] across = [0, 2, 0], up = [0, 1.6, 0.75];
        var net = new Point3[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                net[i, j] = new Point3(2.0 * i, across[i] * up[j], 0.5 * j);
        }

        return new HullSurface(new Lines.Kernel.Splines.BSplineSurface(basis, basis, net), WigleyHull.Of(4, 2, 1).Dials, 0.5, 0.5);
    }
}
