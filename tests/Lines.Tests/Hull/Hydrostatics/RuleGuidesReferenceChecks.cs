using Lines.Hull.Hydrostatics;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>Guides of published rules against the examples printed with them.</summary>
public class RuleGuidesReferenceChecks
{
    private const double Pound = 0.45359237;

    /// <summary>33 CFR 183.37, quoted example: (845 - 45) x 0.3 = 240 lb.</summary>
    [Fact]
    public void The_load_by_hand_is_three_tenths_of_what_is_left() => Assert.Equal(240, RuleGuides.LoadByHand(845 * Pound, 45 * Pound) / Pound, 1e-9);

    /// <summary>33 CFR 183.43(b): P = 0.9 W, persons (P + 32) / 141, half up; greatest displacements and boats in lb.</summary>
    [Theory]
    [InlineData(1200, 120, 2)]
    [InlineData(800, 60, 2)]
    [InlineData(1500, 150, 3)]
    [InlineData(1863, 99, 4)]
    public void Persons_follow_from_the_load(double greatest, double boat, int persons) =>
        Assert.Equal(persons, RuleGuides.Persons(RuleGuides.LoadByHand(greatest * Pound, boat * Pound)));

    /// <summary>ISO 12217-1:2015, 6.2.3 as quoted; values computed from the formula.</summary>
    [Theory]
    [InlineData(3, 29.309615)]
    [InlineData(5, 24.690385)]
    [InlineData(12, 14.823077)]
    public void The_heel_of_a_load_moved_aside_follows_the_length(double length, double degrees) =>
        Assert.Equal(degrees, RuleGuides.OffsetHeel(length) * 180 / Math.PI, 1e-6);

    /// <summary>ISO/FDIS 12217-3:2002, table 2, rounded there to 0.1 m².</summary>
    [Theory]
    [InlineData(200, 2.4)]
    [InlineData(300, 3.1)]
    [InlineData(500, 4.4)]
    [InlineData(1000, 7.0)]
    [InlineData(1500, 9.2)]
    public void A_sailing_boat_begins_at_the_area_of_the_table(double mass, double area) => Assert.Equal(area, RuleGuides.SailingFrom(mass), 0.05);
}
