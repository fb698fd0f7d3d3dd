using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>The finished surface has what was asked, measured on itself; tolerances are those of HullShape's Accuracy.</summary>
public class HullShapeTests
{
    private const double Length = 1e-5;
    private const double Fullness = 1e-4;

    /// <summary>Points of a waterline from its widest point to an end: straight lines between them leave out some 1e-6 of its area, which tells 1e-4.</summary>
    private const int Places = 800;

    [Fact]
    public void A_double_ender_reads_back_every_dial() => ReadsBack(FormDials.DoubleEnder);

    [Fact]
    public void A_transom_boat_reads_back_every_dial() => ReadsBack(FormDials.TransomBoat);

    [Fact]
    public void A_section_with_tumblehome_has_its_beam_inside_the_sheer()
    {
        var d = FormDials.DoubleEnder with { Midship = new MidshipDials(6 * FormDials.Degree, 0.8, -6 * FormDials.Degree) };
        var hull = ReadsBack(d);
        Assert.True(hull.Side.PointAt(hull.WidestU, 1).Y < (d.Beam / 2) - 0.0005);
    }

    [Fact]
    public void A_keel_lowest_forward_of_the_widest_station_is_lowest_there()
    {
        var d = FormDials.DoubleEnder with { KeelLow = 0.44 };
        var hull = ReadsBack(d);
        var lowest = Enumerable.Range(0, 2001).Select(k => hull.Side.PointAt(k / 2000.0, 0)).MinBy(p => p.Z);
        Assert.Equal(0.44 * d.Length, lowest.X, 0.01);
    }

    [Fact]
    public void A_given_vee_stands_a_twentieth_of_the_waterline_abaft_the_forefoot()
    {
        var d = FormDials.DoubleEnder with { Bow = FormDials.DoubleEnder.Bow with { Vee = 12 * FormDials.Degree } };
        var hull = ReadsBack(d);
        var x = d.Bow.Forefoot + (0.05 * (hull.WaterlineAft - hull.WaterlineFore));
        double low = 0, high = 1;
        for (var k = 0; k < 60; k++)
            (low, high) = hull.Side.PointAt((low + high) / 2, 0).X < x ? ((low + high) / 2, high) : (low, (low + high) / 2);
        var jet = hull.Side.JetAt(low, 0);
        var rise = jet.V.Z - (jet.U.Z * jet.V.X / jet.U.X);
        Assert.Equal(12, Math.Atan2(rise, jet.V.Y) / FormDials.Degree, 1e-3);
    }

    [Fact]
    public void A_given_entry_angle_is_that_of_the_design_waterline()
    {
        var d = FormDials.DoubleEnder with { Bow = FormDials.DoubleEnder.Bow with { EntryAngle = 13 * FormDials.Degree } };
        var hull = ReadsBack(d);
        var jet = hull.Side.JetAt(0, hull.WaterlineV);
        Assert.Equal(13, Math.Atan2(jet.U.Y, jet.U.X) / FormDials.Degree, 1e-6);
    }

    [Fact]
    public void Deadrise_and_flare_are_those_of_the_widest_station()
    {
        var d = FormDials.DoubleEnder;
        var hull = ReadsBack(d);
        var keel = hull.Side.JetAt(hull.WidestU, 0);
        var sheer = hull.Side.JetAt(hull.WidestU, 1);
        Assert.Equal(6, Math.Atan2(keel.V.Z, keel.V.Y) / FormDials.Degree, 1e-6);
        Assert.Equal(6, Math.Atan2(sheer.V.Y, sheer.V.Z) / FormDials.Degree, 1e-6);
    }

    [Fact]
    public void A_fullness_over_the_corner_of_the_tangents_is_refused_with_a_value_that_builds()
    {
        var d = FormDials.DoubleEnder with { Midship = new MidshipDials(14 * FormDials.Degree, 0.9, 10 * FormDials.Degree) };
        var solution = HullShape.Solve(d);
        Assert.Null(solution.Surface);
        var hint = Assert.Single(Assert.Single(solution.Conflicts).Dials, h => h.Dial == Dial.MidshipFullness);
        Assert.NotNull(hint.Nearest);
        ReadsBack(d with { Midship = d.Midship with { Fullness = hint.Nearest.Value } });
    }

    [Theory]
    [InlineData(20)]
    [InlineData(55)]
    [InlineData(72)]
    public void A_vee_steeper_than_convex_low_waterlines_allow_is_refused_with_the_same_nearest_value_and_hollow_lines_named(double degrees)
    {
        // With sections that only steepen outward, the waterline at the rocker's height has no more half-breadth at the place of the vee than
        // the height above the keel over tan(vee); a straight line from the forefoot to the widest station would have more already at 17 degrees,
        // and with the hollow of 2.6 mm that is allowed so low, at 18.
        var d = FormDials.DoubleEnder with { Bow = FormDials.DoubleEnder.Bow with { Vee = degrees * FormDials.Degree } };
        var conflict = Assert.Single(HullShape.Solve(d).Conflicts);
        var vee = Assert.Single(conflict.Dials, h => h.Dial == Dial.BowVee).Nearest!.Value;
        Assert.InRange(vee / FormDials.Degree, 10, 18);
        ReadsBack(d with { Bow = d.Bow with { Vee = vee } });
        Assert.Equal(1, Assert.Single(conflict.Dials, h => h.Dial == Dial.Hollow).Nearest);
        ReadsBack(d with { Hollow = true });
    }

    [Fact]
    public void A_sheer_far_fuller_than_the_entry_is_named_and_every_value_told_is_in_range_and_builds()
    {
        var d = FormDials.DoubleEnder with { Bow = FormDials.DoubleEnder.Bow with { SheerFullness = 0.97 } };
        var dials = Assert.Single(HullShape.Solve(d).Conflicts).Dials;
        Assert.Contains(dials, h => h.Dial == Dial.BowSheerFullness);
        Assert.All(dials, h =>
        {
            var (least, greatest) = h.Dial == Dial.Hollow ? (1, 1) : DialRange.Of(h.Dial);
            Assert.InRange(h.Nearest!.Value, least, greatest);
            ReadsBack(DialAccess.With(d, h.Dial, h.Nearest.Value));
        });
    }

    [Theory]
    [InlineData(0.95, 0.3, null)]
    [InlineData(1.0, 1.0, 0.5)]
    [InlineData(1.2, 0.5, 0.47)]
    [InlineData(1.3, 1.0, null)]
    public void A_keel_that_leaves_the_water_ends_the_waterline_on_itself_and_every_dial_reads_back(double bow, double stern, double? widest)
    {
        var d = FormDials.DoubleEnder with { Widest = widest };
        d = d with { Bow = d.Bow with { Rocker = bow * d.Draft }, Stern = ((PointedStern)d.Stern) with { Rocker = stern * d.Draft } };
        var hull = ReadsBack(d);
        Assert.Equal(bow >= 1, hull.WaterlineFore >= d.Bow.Forefoot);
        Assert.Equal(stern >= 1, hull.WaterlineAft <= d.Length - ((PointedStern)d.Stern).Heel);
        if (widest is double w)
            Assert.Equal(w, (hull.WidestX - hull.WaterlineFore) / (hull.WaterlineAft - hull.WaterlineFore), 1e-6);
    }

    [Fact]
    public void A_transom_may_stand_clear_of_the_water()
    {
        var d = FormDials.TransomBoat with { Stern = ((TransomStern)FormDials.TransomBoat.Stern) with { RunFullness = 0.64, Foot = 0.16 } };
        var hull = ReadsBack(d);
        Assert.True(hull.WaterlineAft < hull.Side.PointAt(1, 0).X);
    }

    [Theory]
    [InlineData(0.045, 0.2, 0.25)]
    [InlineData(0.10, 0.40, 0.05)]
    [InlineData(0.02, 0.60, 0.60)]
    public void A_stem_has_no_hollow_however_low_its_head_or_short_its_foot(double rocker, double sheer, double forefoot)
    {
        // Closed form: the profile turns one way, so it lies outside every chord of its own.
        var d = FormDials.DoubleEnder with { Bow = FormDials.DoubleEnder.Bow with { Rocker = rocker, Sheer = sheer, Forefoot = forefoot } };
        var hull = ReadsBack(d);
        var points = Enumerable.Range(0, 401).Select(k => hull.Side.PointAt(0, k / 400.0)).ToList();
        for (var k = 0; k + 40 < points.Count; k += 20)
        {
            Point3 a = points[k], b = points[k + 20], c = points[k + 40];
            var sag = (((c.Z - a.Z) * (b.X - a.X)) - ((c.X - a.X) * (b.Z - a.Z))) / Math.Sqrt(Math.Pow(c.X - a.X, 2) + Math.Pow(c.Z - a.Z, 2));
            Assert.True(sag < 2e-5, Invariant($"hollow by {sag * 1000:F3} mm at height {b.Z * 1000:F0} mm"));
        }
    }

    [Fact]
    public void Where_hollow_lines_are_asked_for_every_vee_from_u_to_80_degrees_builds()
    {
        var d = FormDials.DoubleEnder with { Hollow = true };
        foreach (var degrees in Enumerable.Range(0, 9).Select(k => 10.0 * k))
            ReadsBack(d with { Bow = d.Bow with { Vee = degrees * FormDials.Degree } });
    }

    [Fact]
    public void Random_dials_end_in_a_hull_that_reads_back_or_in_a_conflict_that_names_dials()
    {
        var random = new Random(20261125);
        var built = 0;
        for (var k = 0; k < 40; k++)
        {
            var d = FormDials.Random(random);
            var attempt = HullAttempt.Make(d);
            if (attempt.Surface is null)
            {
                Assert.NotEmpty(attempt.Fault!.Dials);
                continue;
            }

            built++;
            Measure(attempt.Surface, d);
        }

        Assert.True(built >= 20, Invariant($"{built} of 40 random hulls were built"));
    }

    [Fact]
    public void Dials_at_the_ends_of_their_ranges_end_in_a_hull_or_in_a_fault_that_names_dials()
    {
        var random = new Random(11);
        var dials = Enum.GetValues<Dial>().Where(dial => dial != Dial.Hollow).ToArray();
        for (var k = 0; k < 60; k++)
        {
            var d = FormDials.Random(random);
            foreach (var dial in random.GetItems(dials, 3).Where(dial => DialAccess.ValueOf(d, dial) is not null))
            {
                var (least, greatest) = DialAccess.BoundsOf(d, dial);
                d = DialAccess.With(d, dial, random.Next(2) == 0 ? least : greatest);
            }

            var attempt = HullAttempt.Make(d);
            Assert.True(attempt.Surface is not null || attempt.Fault!.Dials.Count > 0, d.ToString());
        }
    }

    [Fact]
    public void A_stem_as_long_as_the_fore_body_on_a_keel_lowest_there_is_refused()
    {
        // The keel that has its lowest point at 0.42 and meets such a stem stands far above the water at the widest station.
        var d = FormDials.DoubleEnder with { KeelLow = 0.422, Bow = FormDials.DoubleEnder.Bow with { Forefoot = 0.4 * 5.2 } };
        Assert.Contains(Dial.KeelLow, HullAttempt.Make(d).Fault!.Dials);
    }

    [Fact]
    public void The_same_dials_give_the_same_hull_to_the_last_bit()
    {
        var a = HullShape.Solve(FormDials.DoubleEnder).Surface!;
        HullShape.Solve(FormDials.TransomBoat);
        var b = HullShape.Solve(FormDials.DoubleEnder).Surface!;
        for (var i = 0; i < a.Side.U.Count; i++)
        {
            for (var j = 0; j < a.Side.V.Count; j++)
                Assert.Equal(a.Side.PoleAt(i, j), b.Side.PoleAt(i, j));
        }
    }

    private static HullSurface ReadsBack(HullDials d)
    {
        var solution = HullShape.Solve(d);
        Assert.Empty(solution.Conflicts);
        Measure(solution.Surface!, d);
        return solution.Surface!;
    }

    private static void Measure(HullSurface hull, HullDials d)
    {
        var points = (from i in Enumerable.Range(0, 161) from j in Enumerable.Range(0, 161) select hull.Side.PointAt(i / 160.0, j / 160.0)).ToList();
        points.AddRange(Enumerable.Range(0, 161).Select(j => hull.Side.PointAt(hull.WidestU, j / 160.0)));
        Assert.Equal(d.Length, points.Max(p => p.X) - points.Min(p => p.X), Length);
        Assert.Equal(d.Beam, 2 * points.Max(p => p.Y), d.Midship.Flare < 0 ? 3e-5 : Length);
        Assert.Equal(0, points.Min(p => p.Z), Length);
        Assert.Equal(d.Depth, hull.Side.PointAt(hull.WidestU, 1).Z, Length);
        Assert.Equal(d.Bow.Sheer, hull.Side.PointAt(0, 1).Z, Length);
        Assert.Equal(d.Stern.Sheer, hull.Side.PointAt(1, 1).Z, Length);
        Assert.Equal(d.Bow.Rocker, hull.Side.PointAt(0, 0).Z, Length);
        Assert.Equal(d.Draft, hull.Side.PointAt(hull.WidestU, hull.WaterlineV).Z, Length);
        double half = hull.Side.PointAt(hull.WidestU, hull.WaterlineV).Y, keel = hull.Side.PointAt(hull.WidestU, 0).Z;
        double Plane(double from, double to) => AreaBetween(WaterlineOf(hull, from, to));
        Assert.Equal(d.Bow.EntryFullness, Plane(0, hull.WidestU) / (half * (hull.WidestX - hull.WaterlineFore)), Fullness);
        Assert.Equal(d.Stern.RunFullness, Plane(hull.WidestU, 1) / (half * (hull.WaterlineAft - hull.WidestX)), Fullness);
        var area = Sum(hull.Side.V, 0, hull.WaterlineV, v => hull.Side.JetAt(hull.WidestU, v) is var j ? j.Point.Y * j.V.Z : 0);
        Assert.Equal(d.Midship.Fullness, area / (half * (d.Draft - keel)), Fullness);
        if (d.Stern is TransomStern t)
        {
            Assert.Equal(t.Breadth, 2 * Enumerable.Range(0, 401).Max(k => hull.Side.PointAt(1, k / 400.0).Y), 3e-5);
            Assert.All(Enumerable.Range(0, 21), k => Assert.Equal(0, hull.Transom!.Value.DistanceTo(hull.Side.PointAt(1, k / 20.0)), 1e-6));
        }
    }

    /// <summary>Points of the design waterline by plain bisection up the section, its ends as the hull states them.</summary>
    private static List<Point3> WaterlineOf(HullSurface hull, double from, double to)
    {
        var points = new List<Point3>();
        for (var k = 0; k <= Places; k++)
        {
            // Closer toward the ends, where the line turns.
            var u = from + ((to - from) * (1 - Math.Cos(Math.PI * k / Places)) / 2);
            if (hull.Side.PointAt(u, 0).Z >= hull.Draft)
                continue;
            double low = 0, high = 1;
            for (var n = 0; n < 30; n++)
                (low, high) = hull.Side.PointAt(u, (low + high) / 2).Z < hull.Draft ? ((low + high) / 2, high) : (low, (low + high) / 2);
            points.Add(hull.Side.PointAt(u, low));
        }

        if (from == 0)
            points.Insert(0, new Point3(hull.WaterlineFore, 0, hull.Draft));
        if (to == 1 && hull.Side.PointAt(1, 0).Z >= hull.Draft)
            points.Add(new Point3(hull.WaterlineAft, 0, hull.Draft));
        return points;
    }

    private static double AreaBetween(List<Point3> points) => points.Zip(points.Skip(1)).Sum(p => (p.First.Y + p.Second.Y) / 2 * (p.Second.X - p.First.X));

    private static double Sum(SplineBasis basis, double from, double to, Func<double, double> f)
    {
        var sum = 0.0;
        SplineRows.ForGaussPoints(basis, from, to, 8, (t, w) => sum += w * f(t));
        return sum;
    }
}
