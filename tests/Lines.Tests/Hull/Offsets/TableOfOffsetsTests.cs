using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Offsets;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Offsets;

public class TableOfOffsetsTests
{
    private const double L = 5, B = 0.5, T = 0.3125;

    // Craft over the whole range, some of whose lines run back on themselves near an end: the points between their stations once came without end.
    [Fact]
    public void Every_craft_drawn_at_random_has_a_table_whose_points_keep_apart()
    {
        var craft = new RandomCraft(new Random(3), 1);
        HullDials[] drawn = [.. Enumerable.Range(0, 60).Select(_ => craft.Next())];
        Parallel.ForEach(drawn, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, d =>
        {
            if (HullAttempt.AtOnce(d).Surface is not { } hull)
                return;
            var table = TableOfOffsets.Outside(HullLines.Of(hull));
            foreach (var row in table.Heights.Concat(table.HalfBreadths).Concat(table.Diagonals))
            {
                for (var k = 1; k < row.Between.Count; k++)
                    Assert.True(row.Between[k].Flat.DistanceTo(row.Between[k - 1].Flat) >= RefitBatten.Closest);
            }
        });
    }

    [Fact]
    public void Half_breadths_and_heights_are_those_of_the_parabolic_hull()
    {
        var table = TableOfOffsets.Outside(HullLines.Of(WigleyHull.Bicubic(L, B, T, 3)));
        for (var i = 0; i < table.Stations.Count; i++)
        {
            var x = table.Stations[i].X;
            foreach (var row in table.HalfBreadths.Where(r => r.Position is { } z && z < T))
                Assert.Equal(WigleyHull.HalfBreadth(L, B, T, x, row.Position!.Value), row.Values[i] ?? 0, 2e-9);
            foreach (var row in table.Heights.Where(r => r.Kind == LineKind.Buttock && r.Values[i] is not null))
                Assert.Equal(row.Position!.Value, WigleyHull.HalfBreadth(L, B, T, x, row.Values[i]!.Value), 2e-9);
        }
    }

    [Fact]
    public void A_line_that_does_not_reach_a_station_is_blank_there()
    {
        var hull = SampleHulls.DoubleEnder();
        var table = TableOfOffsets.Outside(HullLines.Of(hull));
        var fore = table.Stations.Select((s, i) => (s, i)).First(p => p.s.X > hull.Dials.Bow.Forefoot).i;
        var keel = table.Heights[^1];
        Assert.Null(keel.Values[0]);
        Assert.NotNull(keel.Values[fore]);
        Assert.Equal(LineKind.Sheer, table.Heights[0].Kind);
        Assert.All(table.Heights[0].Values, v => Assert.NotNull(v));

        // A waterline has a half-breadth at the stations between its ends, and at no other.
        foreach (var (row, end) in table.HalfBreadths.Zip(table.Ends))
        {
            for (var i = 0; i < table.Stations.Count; i++)
            {
                var x = table.Stations[i].X;
                Assert.Equal(x >= end.AftOfFore && x <= table.Length - end.ForwardOfAft, row.Values[i] is not null);
            }
        }
    }

    [Fact]
    public void Outside_values_lie_on_the_skin_and_at_their_station()
    {
        foreach (var hull in Hulls)
        {
            foreach (var (p, _) in Points(TableOfOffsets.Outside(HullLines.Of(hull))))
                Assert.Equal(0, NearestOnSkin.Distance(hull.Side.PointAt, p, (0, 1), (0, 1)), 1e-7);
        }
    }

    [Fact]
    public void Inside_values_lie_one_thickness_under_the_skin_square_to_it()
    {
        const double Planking = 0.006;
        foreach (var hull in Hulls)
        {
            var outside = HullLines.Of(hull);
            var inside = TableOfOffsets.Inside(outside, Planking);
            foreach (var (p, place) in Points(inside))
            {
                // The oracle searches the skin and, as the surface goes on, a little beyond its edges, for the nearest point.
                var distance = NearestOnSkin.Distance(hull.Side.PointAt, p, (-0.01, 1.01), (0, 1.05));
                Assert.True(Math.Abs(distance - Planking) < 1e-6, Invariant($"{place}: {p} is {distance} m from the skin"));
            }
        }
    }

    [Theory]
    [InlineData("gauge-runner", 0.006)]
    [InlineData("gauge-runner-fine", 0.009)]
    [InlineData("line-layer", 0.004)]
    public void Inside_of_a_shaped_hull_every_waterline_has_both_its_ends_further_in(string template, double planking)
    {
        // Low waterlines end where the skin turns sharply from keel to stem, and the inside far behind the outside.
        var path = Repository.PathOf("templates", template + ".toml");
        var lines = HullLines.Of(HullShape.Solve(DesignFile.Read(File.ReadAllText(path), path).Design!.Vessel.MainHull).Surface!);
        foreach (var (outside, inside) in TableOfOffsets.Outside(lines).Ends.Zip(TableOfOffsets.Inside(lines, planking).Ends))
        {
            Assert.InRange(inside.AftOfFore!.Value, outside.AftOfFore!.Value + planking, lines.Hull.WidestX);
            Assert.InRange(inside.ForwardOfAft!.Value, outside.ForwardOfAft!.Value + planking, lines.Hull.WidestX);
        }
    }

    [Fact]
    public void A_flat_flared_side_gives_up_its_thickness_over_the_cosine()
    {
        // Plane sides y = x tan 10° up to the middle, plumb: square to the side 6 mm is 6 / cos 10° athwartships, so that the
        // inside starts 6 / sin 10° = 34.553 mm aft of the stem's face. (The stem is level with the bow of a plumb wedge.)
        var wedge = Wedge();
        var lines = HullLines.Of(wedge, new LinesGrid([new StationMark("0", 0.5), new StationMark("10", 1.0)], [0.2], [], []));
        var table = TableOfOffsets.Inside(lines, 0.006);
        var tangent = Math.Tan(10 * Math.PI / 180);
        var taken = 0.006 / Math.Cos(10 * Math.PI / 180);
        Assert.Equal((0.5 * tangent) - taken, table.HalfBreadths[1].Values[0]!.Value, 1e-9);
        Assert.Equal((1.0 * tangent) - taken, table.HalfBreadths[1].Values[1]!.Value, 1e-9);
        Assert.Equal(0.006 / Math.Sin(10 * Math.PI / 180), table.Ends[1].AftOfFore!.Value, 1e-9);
    }

    [Fact]
    public void Ends_and_corners_are_those_of_the_profile()
    {
        var hull = SampleHulls.DoubleEnder();
        var table = TableOfOffsets.Outside(HullLines.Of(hull));
        Assert.Equal(hull.Dials.Bow.Forefoot, table.Forefoot.AftOfFore, 1e-9);
        Assert.Equal(hull.Dials.Bow.Rocker, table.Forefoot.Height, 1e-9);
        Assert.Equal(((PointedStern)hull.Dials.Stern).Heel, table.Heel.ForwardOfAft, 1e-9);
        Assert.Equal(0, table.Ends[0].AftOfFore!.Value, 1e-9);
        foreach (var end in table.Ends.Where(e => e.Fore > hull.Dials.Bow.Rocker))
        {
            // The stem's face at that height, by bisection on the edge u = 0.
            double low = 0, high = 1;
            while (high - low > 1e-14)
                (low, high) = hull.Side.PointAt(0, (low + high) / 2).Z < end.Fore ? ((low + high) / 2, high) : (low, (low + high) / 2);
            Assert.Equal(hull.Side.PointAt(0, low).X, end.AftOfFore!.Value, 1e-8);
        }

        // A waterline under the forefoot starts on the keel.
        var lowest = table.Ends[^1];
        Assert.Equal(lowest.Fore, SurfacePoint.OnKeel(hull, lowest.AftOfFore!.Value)!.Value.Point.Z, 1e-8);
        Assert.True(lowest.AftOfFore > hull.Dials.Bow.Forefoot);
    }

    [Fact]
    public void The_transom_is_measured_up_its_own_plane()
    {
        var hull = SampleHulls.TransomBoat();
        var stern = (TransomStern)hull.Dials.Stern;
        var table = TableOfOffsets.Outside(HullLines.Of(hull));
        Assert.Equal(stern.Rake, table.TransomRake);
        Assert.Equal(table.Ends.Count(e => e.Aft > stern.Foot), table.Transom.Count);
        foreach (var row in table.Transom)
        {
            Assert.Equal((row.Height - stern.Foot) / Math.Cos(stern.Rake), row.UpPlane, 1e-9);
            Assert.Equal(0, NearestOnSkin.Distance(hull.Side.PointAt, new Point3(hull.Dials.Length - ((stern.Sheer - row.Height) * Math.Tan(stern.Rake)), row.HalfBreadth!.Value, row.Height), (0.9, 1), (0, 1)), 1e-7);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    public void A_table_to_the_inside_needs_planking(double planking) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TableOfOffsets.Inside(HullLines.Of(SampleHulls.DoubleEnder()), planking));

    private static HullSurface[] Hulls => [SampleHulls.DoubleEnder(), SampleHulls.TransomBoat()];

    private static IEnumerable<(Point3 Point, string Place)> Points(TableOfOffsets table)
    {
        for (var i = 0; i < table.Stations.Count; i += 3)
        {
            var x = table.Stations[i].X;
            foreach (var row in table.HalfBreadths.Where(r => r.Values[i] is not null))
            {
                var z = row.Position ?? table.Heights[0].Values[i]!.Value;
                yield return (new Point3(x, row.Values[i]!.Value, z), row.Label + " at station " + table.Stations[i].Number);
            }

            foreach (var row in table.Heights.Skip(1).Where(r => r.Values[i] is not null))
                yield return (new Point3(x, row.Position ?? 0, row.Values[i]!.Value), row.Label + " at station " + table.Stations[i].Number);
            foreach (var row in table.Diagonals.Where(r => r.Values[i] is not null))
            {
                var (d, angle) = (row.Values[i]!.Value, row.Angle!.Value);
                yield return (new Point3(x, d * Math.Cos(angle), row.Position!.Value - (d * Math.Sin(angle))), row.Label + " at station " + table.Stations[i].Number);
            }
        }
    }

    private static HullSurface Wedge()
    {
        var basis = Lines.Kernel.Splines.SplineBasis.Clamped(1, [0, 1]);
        var half = 2 * Math.Tan(10 * Math.PI / 180);
        Point3[,] net = { { new(0, 0, 0), new(0, 0, 0.4) }, { new(2, half, 0), new(2, half, 0.4) } };
        return new HullSurface(new Lines.Kernel.Splines.BSplineSurface(basis, basis, net), WigleyHull.Dials(2, 2 * half, 0.2), 1, 0.5);
    }
}
