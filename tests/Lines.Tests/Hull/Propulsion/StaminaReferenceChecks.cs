using Lines.Hull.Propulsion;
using Xunit;

namespace Lines.Tests.Hull.Propulsion;

/// <summary>Powers of people and efficiencies of blades against the published figures.</summary>
public class StaminaReferenceChecks
{
    private const double Hour = 3600;

    // Malewicki 1983, curves of the International Human Powered Vehicle Association, from secondary copies: 0.1 hp for eight hours and 0.4 hp for ten
    // minutes by a healthy adult, 0.4 hp for eight hours by a first-class athlete; a horsepower is 745.7 W.
    [Fact]
    public void The_published_points_are_given_back()
    {
        Assert.Equal(74.57, Stamina.HealthyAdult.WattsFor(8 * Hour)!.Value, 0.01);
        Assert.Equal(298.28, Stamina.HealthyAdult.WattsFor(Hour / 6)!.Value, 0.01);
        Assert.Equal(298.28, Stamina.Athlete.WattsFor(8 * Hour)!.Value, 0.01);

        // Wilson, Bicycling Science, from memory: one hour 150 to 200 W, an athlete 350 to 400 W.
        Assert.InRange(Stamina.HealthyAdult.WattsFor(Hour)!.Value, 150, 200);
        Assert.InRange(Stamina.Athlete.WattsFor(Hour)!.Value, 350, 400);
    }

    [Fact]
    public void Longer_is_weaker_and_power_and_time_are_each_others_inverse()
    {
        foreach (var person in Stamina.All)
        {
            double first = person.Points[0].Seconds, before = double.PositiveInfinity;
            for (var k = 0; k <= 40; k++)
            {
                var time = first * Math.Pow(8 * Hour / first, k / 40.0);
                var watts = person.WattsFor(time)!.Value;
                Assert.True(watts < before);
                Assert.Equal(time, person.SecondsAt(watts)!.Value, 1e-6 * time);
                before = watts;
            }
        }
    }

    [Fact]
    public void Nothing_is_told_beyond_what_is_published()
    {
        Assert.Null(Stamina.HealthyAdult.WattsFor(60));
        Assert.Null(Stamina.Athlete.WattsFor(Hour / 6));
        Assert.Null(Stamina.Athlete.WattsFor(9 * Hour));
        Assert.Null(Stamina.HealthyAdult.SecondsAt(500));
        Assert.Equal(8 * Hour, Stamina.HealthyAdult.SecondsAt(20));
    }

    // Jackson, Locke and Brown 1992 (11th Australasian Fluid Mechanics Conference), as quoted: wing blade 89 %, flat blade 75 %.
    [Fact]
    public void A_wing_blade_moves_the_boat_with_a_fifth_more_of_the_same_power() =>
        Assert.Equal(1.1867, Drive.WingBlade.Efficiency / Drive.FlatBlade.Efficiency, 1e-4);
}
