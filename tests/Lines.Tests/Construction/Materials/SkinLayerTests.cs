using Lines.Construction.Materials;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Materials;

/// <summary>Areas and volumes of planking against bodies in closed form.</summary>
public class SkinLayerTests
{
    private const double Everywhere = double.PositiveInfinity;

    [Theory]
    [InlineData(0.5, 0.006)]
    [InlineData(0.2, 0.020)]
    public void Under_a_sphere_lies_the_shell_between_two_spheres(double radius, double thickness)
    {
        var layer = SkinLayer.Of(Sphere(radius), -Everywhere, Everywhere, Everywhere, thickness, 1e-5);
        var inner = radius - thickness;
        Assert.Equal(1, layer.Outside / (4 * Math.PI * radius * radius), 1e-5);
        Assert.Equal(1, layer.Inside / (4 * Math.PI * inner * inner), 1e-5);
        Assert.Equal(1, layer.Volume / (4 * Math.PI / 3 * (Math.Pow(radius, 3) - Math.Pow(inner, 3))), 1e-5);
        Assert.Equal(0, layer.Center.X, 1e-6);
        Assert.Equal(0, layer.Center.Z, 1e-6);
    }

    [Fact]
    public void Half_a_sphere_has_the_center_of_its_shell_and_of_its_skins_where_the_textbook_puts_them()
    {
        // Hemisphere shell: center of the surface R/2 from the cut; of the solid shell 3/8 (R^4 - r^4) / (R^3 - r^3). Pieces end at planes square to
        // x, and the shell's own edge lies square to the skin there, which on this cut is in the plane.
        const double radius = 0.4, thickness = 0.05, inner = radius - thickness;
        var layer = SkinLayer.Of(Sphere(radius), -Everywhere, 0, Everywhere, thickness, 1e-5);
        Assert.Equal(1, layer.Outside / (2 * Math.PI * radius * radius), 1e-5);
        Assert.Equal(-radius / 2, layer.OutsideCenter.X, 1e-6);
        Assert.Equal(-inner / 2, layer.InsideCenter.X, 1e-6);
        Assert.Equal(-3.0 / 8 * (Math.Pow(radius, 4) - Math.Pow(inner, 4)) / (Math.Pow(radius, 3) - Math.Pow(inner, 3)), layer.Center.X, 1e-6);
    }

    [Fact]
    public void Below_a_level_lies_the_zone_of_the_sphere()
    {
        // Archimedes: a zone has the area of the cylinder around it, 2 pi R h, and its center halfway up.
        const double radius = 0.4;
        var layer = SkinLayer.Of(Sphere(radius), -Everywhere, Everywhere, -0.1, 0, 1e-5);
        Assert.Equal(1, layer.Outside / (2 * Math.PI * radius * 0.3), 1e-4);
        Assert.Equal(-0.25, layer.OutsideCenter.Z, 1e-4);
    }

    [Fact]
    public void Along_a_cylinder_lengths_and_areas_are_those_of_the_rolled_sheet()
    {
        const double radius = 0.3, length = 2, thickness = 0.006;
        var layer = SkinLayer.Of(SampleBodies.CylinderSkin(length, radius), 0.5, 1.25, Everywhere, thickness, 1e-6);
        Assert.Equal(2 * Math.PI * radius * 0.75, layer.Outside, 1e-6);
        Assert.Equal(2 * Math.PI * (radius - thickness) * 0.75, layer.Inside, 1e-6);
        Assert.Equal(Math.PI * ((radius * radius) - Math.Pow(radius - thickness, 2)) * 0.75, layer.Volume, 1e-8);
        Assert.Equal(0.875, layer.Center.X, 1e-9);
    }

    private static BSplineSurface Sphere(double radius) => SampleBodies.EllipsoidSkin(radius, radius, radius);
}
