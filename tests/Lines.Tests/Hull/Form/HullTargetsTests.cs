using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Numerics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

public sealed class HullTargetsTests
{
    /// <summary>What is promised of every target, relative.</summary>
    private const double Promised = 1e-5;

    [Theory]
    [InlineData(Target.Displacement, Dial.Length)]
    [InlineData(Target.Displacement, Dial.Beam)]
    [InlineData(Target.Displacement, Dial.Draft)]
    [InlineData(Target.Displacement, Dial.EntryFullness)]
    [InlineData(Target.Displacement, Dial.RunFullness)]
    [InlineData(Target.Displacement, Dial.MidshipFullness)]
    [InlineData(Target.Prismatic, Dial.EntryFullness)]
    [InlineData(Target.Prismatic, Dial.RunFullness)]
    [InlineData(Target.CenterOfBuoyancy, Dial.EntryFullness)]
    [InlineData(Target.CenterOfBuoyancy, Dial.RunFullness)]
    [InlineData(Target.EntryAngle, Dial.EntryFullness)]
    [InlineData(Target.WaterlineLength, Dial.Length)]
    [InlineData(Target.WaterlineBeam, Dial.Beam)]
    [InlineData(Target.WaterlineBeam, Dial.Draft)]
    [InlineData(Target.WaterlineBeam, Dial.MidshipFullness)]
    public void What_a_template_has_gives_back_the_dial_left_out(Target target, Dial dial)
    {
        foreach (var name in (string[])["gauge-runner", "silt-sampler"])
        {
            var hull = ShapedTemplates.Of(name).Hull;
            var given = DialAccess.ValueOf(hull.Dials, dial)!.Value;

            var found = Solved(hull.Dials, new HullTargets([new HullTarget(target, Had(hull, target))], [dial], Water.Sea));

            Assert.Equal(given, DialAccess.ValueOf(found.Dials, dial)!.Value, 1e-4 * given);
            Assert.Equal(hull.Dials with { Stern = found.Dials.Stern }, DialAccess.With(found.Dials, dial, given) with { Stern = found.Dials.Stern });
        }
    }

    [Theory]
    [InlineData("gauge-runner")]
    [InlineData("silt-sampler")]
    [InlineData("line-layer")]
    public void Targets_moved_by_some_per_cent_are_met_as_another_route_measures_them(string name)
    {
        var hull = ShapedTemplates.Of(name).Hull;
        Met([(Target.Displacement, 1.05)], [Dial.Beam]);
        Met([(Target.Prismatic, 1.01)], [Dial.EntryFullness]);
        Met([(Target.WaterlineLength, 1.03), (Target.EntryAngle, 1.02)], [Dial.Length, Dial.EntryFullness]);
        Met([(Target.Displacement, 0.96), (Target.Prismatic, 0.99), (Target.CenterOfBuoyancy, 1.002)], [Dial.Draft, Dial.EntryFullness, Dial.RunFullness]);
        Met([(Target.Displacement, 1.04), (Target.WaterlineLength, 1.02), (Target.WaterlineBeam, 0.98)], [Dial.MidshipFullness, Dial.Length, Dial.Beam]);

        void Met((Target Target, double Factor)[] moved, Dial[] leftOut)
        {
            var targets = new HullTargets([.. moved.Select(m => new HullTarget(m.Target, m.Factor * Had(hull, m.Target)))], leftOut, Water.Sea);
            var measured = new SimpsonHull(Solved(hull.Dials, targets));
            foreach (var (target, value) in targets.Asked)
            {
                var has = target switch
                {
                    Target.Displacement => 1026.021 * measured.Volume, // kg/m³, sea water of ITTC 7.5-02-01-03 at 15 °C
                    Target.Prismatic => measured.Prismatic,
                    Target.CenterOfBuoyancy => measured.Center,
                    Target.EntryAngle => measured.EntryAngle,
                    Target.WaterlineLength => measured.Length,
                    _ => measured.Beam,
                };
                Assert.InRange(has / value, 1 - Promised, 1 + Promised);
            }
        }
    }

    [Fact]
    public void Every_dial_at_once_is_found_for_as_many_targets()
    {
        var hull = ShapedTemplates.Of("gauge-runner").Hull;
        Target[] all = [Target.Displacement, Target.Prismatic, Target.CenterOfBuoyancy, Target.EntryAngle, Target.WaterlineLength, Target.WaterlineBeam];
        var targets = new HullTargets([.. all.Select(t => new HullTarget(t, Had(hull, t)))], HullTargets.MayBeLeftOut, Water.Sea);

        var found = Solved(hull.Dials, targets);

        Assert.All(targets.Misses(found), m => Assert.InRange(m, -Promised, Promised));
    }

    [Fact]
    public void Targets_are_met_with_the_widest_station_left_out()
    {
        var hull = ShapedTemplates.Of("line-layer").Hull;
        (Target, double)[] moved = [(Target.Displacement, 0.96), (Target.Prismatic, 0.99), (Target.CenterOfBuoyancy, 1.002)];
        var targets = new HullTargets([.. moved.Select(m => new HullTarget(m.Item1, m.Item2 * Had(hull, m.Item1)))], [Dial.Draft, Dial.EntryFullness, Dial.RunFullness], Water.Sea);

        var found = Solved(hull.Dials with { Widest = null }, targets);

        Assert.Null(found.Dials.Widest);
        Assert.All(targets.Misses(found), m => Assert.InRange(m, -Promised, Promised));
    }

    [Fact]
    public void The_hull_found_is_the_same_every_time()
    {
        var hull = ShapedTemplates.Of("gauge-runner").Hull;
        var targets = new HullTargets([new HullTarget(Target.Displacement, 118), new HullTarget(Target.Prismatic, 0.57)], [Dial.Beam, Dial.RunFullness], Water.Fresh);

        HullSurface a = Solved(hull.Dials, targets), b = Solved(hull.Dials, targets);

        Assert.Equal(a.Dials, b.Dials);
        Assert.Equal(a.Side.PointAt(0.3, 0.4), b.Side.PointAt(0.3, 0.4));
    }

    [Fact]
    public void The_foot_of_a_transom_given_by_its_immersion_keeps_it_while_the_draft_is_found()
    {
        var template = new EditedDesign(File.ReadAllText(Repository.PathOf("templates", "silt-sampler.toml")));
        var text = template.With("hull.draft", null).With("hull.displacement", "\"500 lb\"").Text;
        var design = DesignFile.Read(text, "a.toml").Design!;

        var hull = HullShape.Solve(design.Vessel, design.Source.AsTold, design.Source.AsTold).Surface!;

        Assert.Equal(0.045, hull.Dials.Draft - ((TransomStern)hull.Dials.Stern).Foot, 1e-12);
        Assert.Equal(500 * 0.45359237, UprightHydrostatics.Below(hull, hull.Draft, 1e-9).Volume * 999.1026, 500 * Promised);
    }

    [Fact]
    public void Targets_are_paired_with_dials_so_that_each_has_one_that_moves_it()
    {
        Target[] targets = [Target.Displacement, Target.Prismatic, Target.CenterOfBuoyancy];

        var pairs = HullTargets.Paired(targets, [Dial.EntryFullness, Dial.RunFullness, Dial.Draft]);

        Assert.Equal(3, pairs.Distinct().Count());
        Assert.All(targets.Zip(pairs), p => Assert.Contains(p.Second!.Value, HullTargets.MoversOf(p.First)));
        Assert.Contains(null, HullTargets.Paired([Target.Prismatic, Target.CenterOfBuoyancy], [Dial.EntryFullness, Dial.Draft]));
    }

    [Fact]
    public void Targets_of_which_none_does_alone_are_told_as_a_set_that_does()
    {
        // A prismatic coefficient over 0.7 with a center of buoyancy at three fifths: no convex run is full enough.
        var targets = new HullTargets([new(Target.Prismatic, 0.75), new(Target.CenterOfBuoyancy, 0.60)], [Dial.EntryFullness, Dial.RunFullness], Water.Fresh);
        var dials = ShapedTemplates.Of("gauge-runner").Hull.Dials;

        var unmet = HullShape.Solve(new Vessel(dials) { Targets = targets }, DialAccess.ToStep, (_, value, up) => Rounding.ToStep(value, 0.001, up)).Unmet!;

        Assert.True(unmet.Together);
        Assert.All(unmet.Targets.Zip(targets.Asked), t => Assert.InRange(t.First.Nearest!.Value, 0.5, t.Second.Value));
        var told = targets with { Asked = [.. unmet.Targets.Select(t => new HullTarget(t.Target, t.Nearest!.Value))] };
        Assert.All(told.Asked, t => Assert.Equal(t.Value, new HullTargets([], [], Water.Fresh).Of(Solved(dials, told), UprightHydrostatics.Below(Solved(dials, told), dials.Draft, 1e-9), t.Target), Promised * t.Value));
    }

    // The oracle walks the dial itself, by hundredths of its logarithm, the last of them one by one. Of 40 degrees 13.8 were told where 14.3 build, of 2000 kg 521 where 535 do.
    [Theory]
    [InlineData(Target.EntryAngle, 40 * Math.PI / 180, Dial.EntryFullness)]
    [InlineData(Target.Displacement, 2000, Dial.Draft)]
    [InlineData(Target.WaterlineBeam, 2.5, Dial.Beam)]
    public void The_nearest_value_of_a_target_alone_is_as_far_as_its_dial_goes(Target target, double asked, Dial dial)
    {
        var dials = ShapedTemplates.Of("gauge-runner").Hull.Dials;
        var furthest = 0.0;
        var from = Math.Log(DialAccess.ValueOf(dials, dial)!.Value);
        var built = -8;
        foreach (var steps in (int[])[8, 1])
        {
            for (; HullAttempt.AtOnce(DialAccess.With(dials, dial, Math.Exp(from + (0.01 * (built + steps))))).Surface is { } hull; built += steps)
                furthest = Math.Max(furthest, Had(hull, target));
        }

        var targets = new HullTargets([new(target, asked)], [dial], Water.Sea);
        var unmet = HullShape.Solve(new Vessel(dials) { Targets = targets }, DialAccess.ToStep, (_, value, up) => Rounding.ToStep(value, 0.0001 * asked, up)).Unmet!;

        Assert.InRange(unmet.Targets.Single().Nearest!.Value, 0.985 * furthest, asked);
    }

    private static HullSurface Solved(HullDials dials, HullTargets targets)
    {
        // What is left out must not help: its place is held by the same value whatever the template has.
        var without = targets.LeftOut.Aggregate(dials, (d, dial) => DialAccess.With(d, dial, TargetStart.PlaceOf(dial)));
        var solution = HullShape.Solve(new Vessel(without) { Targets = targets }, DialAccess.ToStep, (_, value, _) => value);
        Assert.Null(solution.Unmet);
        return solution.Surface!;
    }

    private static double Had(HullSurface hull, Target target) =>
        new HullTargets([], [], Water.Sea).Of(hull, UprightHydrostatics.Below(hull, hull.Draft, 1e-9), target);
}
