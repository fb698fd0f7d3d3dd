using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Resistance;

/// <summary>The drag of a transom against forms whose pressure can be written down.</summary>
public class TransomDragChecks
{
    private const double Density = 1000, Immersion = 0.08, Half = 0.3, Freeboard = 0.2;

    // A box: ∫ρg min(z, h) 2b dz; a vee, half-breadth b (T - z) / T at a depth z, dry: ρg b T² / 3. Friction without bound leaves no suction of a slow
    // base: h is then T x⁴ of x, the speed over the one it runs dry at.
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.3)]
    [InlineData(2.2)]
    [InlineData(4.0)]
    public void A_box_lacks_the_pressure_of_the_fallen_water(double speed)
    {
        double fallen = Immersion * Math.Min(1, Math.Pow(speed / (2.5 * Math.Sqrt(Standards.Gravity * Immersion)), 4)), asked = Density * Standards.Gravity * 2 * Half * ((Immersion * fallen) - (fallen * fallen / 2));
        Assert.Equal(asked, Of(_ => Half).At(speed, Density, friction: 1e30), 1e-9 * asked);
    }

    // Slow friction cannot make a base suck more than it does where it runs dry, nor can the drag jump there.
    [Fact]
    public void Drag_rises_without_a_step_to_where_the_box_runs_dry()
    {
        var dry = 2.5 * Math.Sqrt(Standards.Gravity * Immersion);
        double[] found = [.. Enumerable.Range(1, 40).Select(k => Of(_ => Half).At(dry * k / 30, Density, friction: 1e-3))];
        Assert.Equal(found.Order(), found);
        Assert.Equal(Of(_ => Half).At(dry, Density, 1), Of(_ => Half).At(dry * (1 - 1e-9), Density, 1), 1e-6 * found[^1]);
        Assert.Equal(found[30], found[^1], 1e-9 * found[^1]);
    }

    [Fact]
    public void A_dry_vee_lacks_the_pressure_of_its_area_at_its_center()
    {
        var asked = Density * Standards.Gravity * Half * Immersion * Immersion / 3;
        Assert.Equal(asked, Of(z => Half * (z + Immersion) / Immersion).At(5, Density, friction: 10), 1e-9 * asked);
    }

    // Slow, the water has hardly fallen: 0.029 / √(F / q A) q A and no more, Hoerner 1965 (from memory).
    [Fact]
    public void A_slow_box_is_a_blunt_base()
    {
        const double speed = 0.01, friction = 3e-4;
        double pressure = 0.5 * Density * speed * speed * 2 * Half * Immersion, asked = 0.029 / Math.Sqrt(friction / pressure) * pressure;
        Assert.True(asked < 2 / 6.25 * pressure / 2);
        Assert.Equal(asked, Of(_ => Half).At(speed, Density, friction), 1e-3 * asked);
    }

    // A transom out of the water costs nothing, one trimmed into it more the deeper it lies: common practice, no source.
    [Fact]
    public void Deeper_by_the_stern_costs_more()
    {
        var hull = HullShape.Solve(FormDials.TransomBoat).Surface!;
        double At(double trim) => new DragEstimate(new VesselShape(hull, []), Water.Fresh, new WaterPlane(hull.Draft - (trim * 2.15), trim, 0)).At(1.5).Transom;
        double[] found = [At(-0.03), At(0), At(0.02), At(0.04)];
        Assert.Equal(0, found[0]);
        Assert.Equal(found.Order(), found);
        Assert.True(found[3] > found[1]);
    }

    private static TransomDrag Of(Func<double, double> halfBreadth)
    {
        var u = SplineBasis.Clamped(1, [0, 1]);
        var v = SplineBasis.Clamped(1, [0, 1]);
        var poles = new Point3[2, 2];
        for (var i = 0; i < 2; i++)
        {
            for (var j = 0; j < 2; j++)
            {
                var z = j == 0 ? -Immersion : Freeboard;
                poles[i, j] = new Point3(i, halfBreadth(z), z);
            }
        }

        return new TransomDrag(new BSplineSurface(u, v, poles), Immersion / (Immersion + Freeboard));
    }
}
