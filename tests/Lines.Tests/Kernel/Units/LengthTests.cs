using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Kernel.Units;

public sealed class LengthTests
{
    // Exact factors: international yard and pound agreement of 1959, 1 in = 25.4 mm, 1 ft = 304.8 mm.
    [Theory]
    [InlineData("5.20 m", 5200)]
    [InlineData("5m", 5000)]
    [InlineData("74 cm", 740)]
    [InlineData("740 mm", 740)]
    [InlineData("  740mm ", 740)]
    [InlineData("0.4 mm", 0.4)]
    [InlineData(".5 mm", 0.5)]
    [InlineData("1 in", 25.4)]
    [InlineData("29 1/8 in", 739.775)]
    [InlineData("29-1/8 in", 739.775)]
    [InlineData("29 1/8\"", 739.775)]
    [InlineData("29⅛ in", 739.775)]
    [InlineData("3/4 in", 19.05)]
    [InlineData("17 ft 6 in", 5334)]
    [InlineData("17ft6in", 5334)]
    [InlineData("17 feet 6 inches", 5334)]
    [InlineData("17' 6 1/2\"", 5346.7)]
    [InlineData("17′ 6½″", 5346.7)]
    [InlineData("17' 6 1/2''", 5346.7)]
    [InlineData("1' 1/2\"", 317.5)]
    [InlineData("1' 0 1/2\"", 317.5)]
    [InlineData("5 1/2 ft", 1676.4)]
    [InlineData("6'", 1828.8)]
    [InlineData("2-3-5", 701.675)]
    [InlineData("2‑3‑5+", 703.2625)]
    [InlineData("2–3–5", 701.675)]
    [InlineData("17’ 6 1/2”", 5346.7)]
    [InlineData("740\u00A0mm", 740)]
    [InlineData("2-3-5+", 703.2625)]
    [InlineData("2-3-5-", 700.0875)]
    [InlineData("-2-3-5+", -703.2625)]
    [InlineData("-40 mm", -40)]
    [InlineData("- 1 1/2 in", -38.1)]
    [InlineData("+40 mm", 40)]
    [InlineData("−40 mm", -40)]
    public void Every_notation_is_read(string text, double millimeters)
    {
        Assert.Equal(millimeters, Length.Parse(text).Millimeters, 1e-9);
    }

    // Common practice, no source: feet-inches-eighths 1-2-3+ is 14 7/16 in. By the exact inch that is 366.7125 mm.
    [Fact]
    public void One_two_three_plus_is_fourteen_and_seven_sixteenths_inches()
    {
        Assert.Equal(0.3667125, Length.Parse("1-2-3+").Meters, 1e-15);
        Assert.Equal("14 7/16 in", Length.Parse("1-2-3+").ToText(LengthNotation.Inches));
        Assert.Equal("1-2-3+", Length.Parse("14 7/16 in").ToText(LengthNotation.FeetInchesEighths));
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("   ", "is empty")]
    [InlineData("wide", "is not a length")]
    [InlineData("NaN mm", "is not a length")]
    [InlineData("inf m", "is not a length")]
    [InlineData("740", "has no unit; write 740 mm, 740 cm, 740 m, 740 in or 740 ft")]
    [InlineData("5,20 m", "has a comma; the decimal mark is a point, so write 5.20 m")]
    [InlineData("740 MM", "units are written small: mm")]
    [InlineData("7 furlong", "has the unknown unit \"furlong\"; units are mm, cm, m, in and ft")]
    [InlineData("740 mm wide", "has \"wide\" after the unit")]
    [InlineData("5' 14\"", "has 14 inches; after feet write 0 to 11, so 6' 2\" or 1879.6 mm")]
    [InlineData("5' 12 in", "has 12 inches; after feet write 0 to 11, so 6' 0\"")]
    [InlineData("5' 14", "has 14 after the feet without a unit")]
    [InlineData("5.5 ft 3 in", "has inches after a broken number of feet")]
    [InlineData("5' 3 mm", "has \"mm\" after the feet; write inches")]
    [InlineData("5' -3\"", "after the feet")]
    [InlineData("17-6", "has two figures joined by a hyphen")]
    [InlineData("1-12-3", "has 12 inches; the middle figure of feet-inches-eighths is 0 to 11")]
    [InlineData("1-2-8", "has 8 eighths; the last figure of feet-inches-eighths is 0 to 7")]
    [InlineData("1-2-3 in", "has \"in\" after feet-inches-eighths")]
    [InlineData("1/0 in", "has a fraction without a denominator")]
    [InlineData("1/ in", "has a fraction without a denominator")]
    [InlineData("29 9/8 in", "has a fraction of 1.125 beside a whole number")]
    [InlineData("29.5 1/8 in", "mixes a decimal point and a fraction")]
    [InlineData("1e3 mm", "has the unknown unit \"e\"")]
    [InlineData("99999999999999999999999999999999999999999999999999 mm", "is too long")]
    [InlineData("1999999999999999999-2-3", "where a unit should be")]
    [InlineData("--5 mm", "is not a length")]
    [InlineData("٣ mm", "is not a length")]
    public void What_is_not_a_length_says_why_and_what_would_be_right(string text, string expected)
    {
        Assert.False(Length.TryParse(text, out var length, out var fault));
        Assert.Equal(0, length.Meters);
        Assert.Contains(expected, fault!.ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(fault.Remedy);
        Assert.Throws<FormatException>(() => Length.Parse(text));
    }

    [Theory]
    [InlineData(0.3667125, LengthNotation.Millimeters, "366.7 mm", "366.7")]
    [InlineData(0.74, LengthNotation.Millimeters, "740 mm", "740")]
    [InlineData(0.3667125, LengthNotation.Inches, "14 7/16 in", "14 7/16")]
    [InlineData(0.3667125, LengthNotation.FeetInches, "1' 2 7/16\"", "1' 2 7/16\"")]
    [InlineData(0.3667125, LengthNotation.FeetInchesEighths, "1-2-3+", "1-2-3+")]
    [InlineData(-0.3667125, LengthNotation.FeetInchesEighths, "-1-2-3+", "-1-2-3+")]
    [InlineData(-0.3667125, LengthNotation.FeetInches, "-1' 2 7/16\"", "-1' 2 7/16\"")]
    [InlineData(0.0127, LengthNotation.FeetInches, "0' 0 1/2\"", "0' 0 1/2\"")]
    [InlineData(5.19985625, LengthNotation.FeetInches, "17' 0 23/32\"", "17' 0 23/32\"")]
    [InlineData(0.3048, LengthNotation.FeetInches, "1' 0\"", "1' 0\"")]
    [InlineData(-0.00001, LengthNotation.Millimeters, "0 mm", "0")]
    [InlineData(-0.00001, LengthNotation.Inches, "0 in", "0")]
    [InlineData(0.30479, LengthNotation.FeetInchesEighths, "1-0-0", "1-0-0")]
    public void A_length_is_shown_to_the_step_of_its_notation(double meters, LengthNotation notation, string text, string figure)
    {
        Assert.Equal(text, new Length(meters).ToText(notation));
        Assert.Equal(figure, new Length(meters).ToFigure(notation));
    }

    [Theory]
    [InlineData(2.508, LengthNotation.Millimeters, "2508.0")]
    [InlineData(-0.04, LengthNotation.Millimeters, "-40.0")]
    [InlineData(0.4191, LengthNotation.Millimeters, "419.1")]
    [InlineData(0.3667125, LengthNotation.Inches, "14 7/16")]
    public void In_a_column_every_millimeter_has_its_tenth(double meters, LengthNotation notation, string cell) =>
        Assert.Equal(cell, new Length(meters).ToCell(notation));

    // By the exact inch: 6 mm is 0.23622 in, 5 mm 0.19685 in, 32 mm 1.25984 in; 19 mm is 0.05 mm less than 3/4 in, 1/4 in is 6.35 mm.
    [Theory]
    [InlineData(0.006, LengthNotation.Inches, "0.236 in (6 mm)")]
    [InlineData(0.236 * 0.0254, LengthNotation.FeetInchesEighths, "0.236 in (6 mm)")]
    [InlineData(0.005, LengthNotation.FeetInches, "0.197 in (5 mm)")]
    [InlineData(0.032, LengthNotation.Inches, "1.260 in (32 mm)")]
    [InlineData(0.019, LengthNotation.Inches, "0.748 in (19 mm)")]
    [InlineData(0.00635, LengthNotation.FeetInches, "1/4 in")]
    [InlineData(0.01905, LengthNotation.FeetInchesEighths, "3/4 in")]
    [InlineData(0.006, LengthNotation.Millimeters, "6 mm")]
    [InlineData(0.00635, LengthNotation.Millimeters, "6.35 mm")]
    public void A_size_to_buy_by_is_never_rounded_to_another(double meters, LengthNotation notation, string size) =>
        Assert.Equal(size, new Length(meters).ToSize(notation));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(2e9)]
    public void What_is_no_length_is_not_shown(double meters)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Length(meters).ToText(LengthNotation.Inches));
    }
}
