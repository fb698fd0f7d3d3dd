using Lines.Hull.Form;
using Lines.Hull.Loading;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Loading;

public class LoadCaseTests
{
    private static readonly Load Crew = new("crew", 80, new Point3(2, 0, 0.4), null);

    private static readonly Load Gear = new("gear", 20, new Point3(4, 0.5, 0.2), ["sailing", "camping"]);

    [Fact]
    public void Cases_stand_in_the_order_they_are_named_and_hold_what_names_none_too()
    {
        var cases = new Vessel(SampleHulls.DoubleEnder().Dials) { Loads = [Crew, Gear] }.Cases;
        Assert.Equal(["sailing", "camping"], cases.Select(c => c.Name), StringComparer.Ordinal);
        Assert.All(cases, c => Assert.Equal([Crew, Gear], c.Loads));
    }

    [Fact]
    public void The_center_of_a_case_is_that_of_its_masses()
    {
        // Moments: (80 · 2 + 20 · 4) / 100 = 2.4, (20 · 0.5) / 100 = 0.1, (80 · 0.4 + 20 · 0.2) / 100 = 0.36.
        var loadCase = new LoadCase("sailing", [Crew, Gear]);
        Assert.Equal(100, loadCase.Mass);
        Assert.Equal(2.4, loadCase.Center.X, 1e-12);
        Assert.Equal(0.1, loadCase.Center.Y, 1e-12);
        Assert.Equal(0.36, loadCase.Center.Z, 1e-12);
    }

    [Fact]
    public void Loads_that_name_no_case_make_one_and_none_make_none()
    {
        var dials = SampleHulls.DoubleEnder().Dials;
        Assert.Equal([LoadCase.Only], new Vessel(dials) { Loads = [Crew] }.Cases.Select(c => c.Name), StringComparer.Ordinal);
        Assert.Empty(new Vessel(dials).Cases);
    }

    [Fact]
    public void A_pair_of_outriggers_stands_on_both_sides_port_first()
    {
        var (main, dials) = (SampleHulls.DoubleEnder(), SampleHulls.TransomBoat().Dials);
        var shape = new VesselShape(main, [(new Outrigger(dials, OutriggerSide.Both, 1.1, 0.06, 0.9), SampleHulls.TransomBoat()), (new Outrigger(dials, OutriggerSide.Port, 2, 0, 0), main)]);
        Assert.Equal(["main hull", "outrigger 1 port", "outrigger 1 starboard", "outrigger 2 port"], shape.Hulls.Select(h => h.Name), StringComparer.Ordinal);
        Assert.Equal([default, new Vector3(0.9, -1.1, 0.06), new Vector3(0.9, 1.1, 0.06), new Vector3(0, -2, 0)], shape.Hulls.Select(h => h.Place));
    }
}
