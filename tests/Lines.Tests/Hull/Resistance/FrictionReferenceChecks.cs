using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Xunit;

namespace Lines.Tests.Hull.Resistance;

public class FrictionReferenceChecks
{
    // Tupper, Introduction to Naval Architecture, table 8.3, p. 191.
    [Theory]
    [InlineData(1e5, 0.008333)]
    [InlineData(5e5, 0.005482)]
    [InlineData(1e6, 0.004688)]
    [InlineData(5e6, 0.003397)]
    [InlineData(1e7, 0.003000)]
    [InlineData(5e7, 0.002309)]
    [InlineData(1e9, 0.001531)]
    public void The_friction_line_is_the_tabled_one(double reynolds, double tabled) =>
        Assert.Equal(tabled, FrictionLine.Coefficient(reynolds), 1e-6);

    [Theory]
    [InlineData(9e4)]
    [InlineData(double.NaN)]
    public void Below_its_beginning_the_line_is_not_read(double reynolds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FrictionLine.Coefficient(reynolds));

    // Molland, Turnock and Hudson, Ship Resistance and Propulsion, 2011, ch. 4, evaluated; the measured ones beside it are within 3 % (from memory:
    // Insel and Molland 1992, Couser and Molland 1997).
    [Theory]
    [InlineData(8.5, 1.172577, 1.17)]
    [InlineData(9.5, 1.121553, 1.13)]
    [InlineData(7.4, 1.239400, 1.21)]
    public void The_form_factor_follows_slenderness(double slenderness, double fitted, double measured)
    {
        Assert.Equal(fitted, SlenderForm.Factor(slenderness), 1e-4);
        Assert.InRange(SlenderForm.Factor(slenderness) / measured, 0.97, 1.03);
    }

    // ITTC 7.5-02-01-03 by secondary copies: sea water at 15 °C is 4.44 % more viscous (kinematic) and 2.69 % denser than fresh.
    [Fact]
    public void Sea_water_is_heavier_and_more_viscous()
    {
        Assert.Equal(1.0444, Water.Sea.Viscosity / Water.Fresh.Viscosity, 5e-4);
        Assert.Equal(1.0269, Water.Sea.Density / Water.Fresh.Density, 1e-4);
    }
}
