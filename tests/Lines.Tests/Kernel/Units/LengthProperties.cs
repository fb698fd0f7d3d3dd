using System.Globalization;
using CsCheck;
using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Kernel.Units;

public sealed class LengthProperties
{
    public static TheoryData<LengthNotation> Notations => [.. LengthNotations.ByName.Select(n => n.Notation)];

    [Theory]
    [MemberData(nameof(Notations))]
    public void Reading_back_what_was_shown_is_within_half_a_step(LengthNotation notation)
    {
        Gen.Double[-40, 40].Sample(meters =>
        {
            var back = Length.Parse(new Length(meters).ToText(notation));
            return Math.Abs(back.Meters - meters) <= (notation.Step() / 2) + 1e-12;
        });
    }

    [Theory]
    [MemberData(nameof(Notations))]
    public void What_was_shown_is_shown_the_same_again(LengthNotation notation)
    {
        Gen.Double[-40, 40].Sample(meters =>
        {
            var text = new Length(meters).ToText(notation);
            return string.Equals(Length.Parse(text).ToText(notation), text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Any_text_at_all_is_read_or_faulted_and_never_throws()
    {
        const string letters = "0123456789-+/.,'\" mcinfteadrg°½′″−\t\0٣x";
        Gen.Char[letters].Array[0, 14].Select(c => new string(c)).Sample(text =>
        {
            var read = Length.TryParse(text, out var length, out var fault);
            _ = Angle.TryParse(text, out var angle, out var angleFault);
            return read == (fault is null) && double.IsFinite(length.Meters) && (angleFault is null || angle.Radians == 0)
                && (fault is null || (fault.Problem.Length > 0 && fault.Remedy.Length > 0));
        });
    }

    [Fact]
    public void A_foreign_locale_changes_nothing()
    {
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NumberGroupSeparator = ".";
        foreign.NumberFormat.NegativeSign = "−";
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = foreign;
            Assert.Equal("-366.7 mm", new Length(-0.3667125).ToText(LengthNotation.Millimeters));
            Assert.Equal("-14 7/16 in", new Length(-0.3667125).ToText(LengthNotation.Inches));
            Assert.Equal(-5.2, Length.Parse("-5.20 m").Meters);
            Assert.Equal("-12.5 deg", Angle.FromDegrees(-12.5).ToText());
            Assert.False(Length.TryParse("5,20 m", out _, out _));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
