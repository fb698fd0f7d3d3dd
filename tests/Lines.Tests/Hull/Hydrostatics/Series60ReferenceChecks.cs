using System.Globalization;
using Lines.Kernel.Numerics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>The Series 60 parent of CB 0.60, model 4210W: F. H. Todd, DTMB Report 1712 (1963), table 3; tests/data/reference names it in full.</summary>
public class Series60ReferenceChecks
{
    private const double Length = 400, Breadth = 53.3333, Draft = 21.3333;

    private static readonly double[] s_stations = Numbers(ReferenceData.Table("series60_cb060_4210W.csv")[0]);

    // Flat of bottom at z = 0 and the waterlines up to the load waterline.
    private static readonly (double Z, double[] HalfBreadths)[] s_waterlines =
        [.. ReferenceData.Table("series60_cb060_4210W.csv").Skip(2).Take(6).Select(r => (Number(r[2]), Numbers(r)))];

    private static readonly double[] s_areas = [.. Enumerable.Range(0, s_stations.Length).Select(SectionArea)];

    [Fact]
    public void Sectional_areas_are_the_published_ordinates_within_four_thousandths()
    {
        double[] published = [.. ReferenceData.Table("series60_cb060_4210W.original.csv").Skip(1).Take(25).Select(r => Number(r[^1]))];
        var amidships = Amidships;
        for (var i = 0; i < s_stations.Length; i++)
            Assert.Equal(published[i], s_areas[i] / amidships, 0.004);
    }

    [Fact]
    public void Coefficients_and_center_of_buoyancy_are_the_published_ones()
    {
        var volume = SimpsonRules.Unequal(s_stations, s_areas);
        Assert.Equal(0.600, volume / (Length * Breadth * Draft), 0.002);
        Assert.Equal(0.614, volume / (Length * Amidships), 0.002);
        Assert.Equal(0.977, Amidships / (Breadth * Draft), 0.003);
        var center = SimpsonRules.Unequal(s_stations, [.. s_areas.Zip(s_stations, (a, x) => a * x)]) / volume;
        Assert.Equal(1.5, 100 * ((center / Length) - 0.5), 0.05);

        // An independent spline integration of the table (recorded beside it): CB 0.598, CW 0.707.
        Assert.Equal(0.598, volume / (Length * Breadth * Draft), 0.001);
        Assert.Equal(0.707, 2 * SimpsonRules.Unequal(s_stations, s_waterlines[^1].HalfBreadths) / (Length * Breadth), 0.001);
    }

    private static double Amidships => s_areas[Array.IndexOf(s_stations, Length / 2)];

    private static double SectionArea(int station) =>
        2 * SimpsonRules.Unequal([.. s_waterlines.Select(w => w.Z)], [.. s_waterlines.Select(w => w.HalfBreadths[station])]);

    private static double[] Numbers(string[] row) => [.. row.Skip(3).Select(Number)];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
