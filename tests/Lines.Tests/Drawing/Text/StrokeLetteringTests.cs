using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Drawing.Text;

public class StrokeLetteringTests
{
    private static readonly Layer Layer = new("text", new Ink(0.25));

    public static TheoryData<string> Characters => [.. StrokeLettering.Characters.Select(c => c.ToString())];

    [Theory]
    [MemberData(nameof(Characters))]
    public void Every_character_has_sound_strokes_in_its_place(string character)
    {
        var strokes = Strokes(character);
        Assert.Equal(string.IsNullOrWhiteSpace(character), strokes.Count == 0);
        foreach (var stroke in strokes)
        {
            Assert.True(stroke.Vertices.Count >= 2);
            Assert.All(stroke.Segments(), s => Assert.True(s.Length > 0.1, $"a leg of {character} has no length"));
            var box = stroke.Bounds();
            // Tails hang to a third of the capitals' height below the base line, accents stand as far above.
            Assert.InRange(box.Bottom, -4.1, 14);
            Assert.InRange(box.Top, -2.1, 16);
        }
    }

    [Theory]
    [MemberData(nameof(Characters))]
    public void Joints_are_smooth_or_plain_corners(string character)
    {
        foreach (var stroke in Strokes(character))
        {
            var legs = stroke.Segments();
            for (var i = 1; i < legs.Count; i++)
            {
                if (legs[i].IsLine && legs[i - 1].IsLine)
                    continue;
                var turn = Math.Abs(Math.Atan2(legs[i - 1].EndDirection.Cross(legs[i].StartDirection), legs[i - 1].EndDirection.Dot(legs[i].StartDirection))) * 180 / Math.PI;
                Assert.False(turn is > 0.1 and < 12, FormattableString.Invariant($"{character}: a kink of {turn:F2} degrees"));
            }
        }
    }

    [Fact]
    public void The_width_of_a_letter_is_that_of_its_strokes()
    {
        foreach (var rune in StrokeLettering.Characters.Where(r => r.IsAscii && !Rune.IsWhiteSpace(r) && !Rune.IsDigit(r)))
        {
            var boxes = Strokes(rune.ToString()).Select(s => s.Bounds()).ToList();
            Assert.InRange(boxes.Min(b => b.Left), -0.001, 0.001);
            Assert.InRange(boxes.Max(b => b.Right) - StrokeLettering.Width(rune.ToString(), 12), -0.21, 0.001);
        }
    }

    [Fact]
    public void All_of_ASCII_is_there_and_no_two_letters_look_alike()
    {
        var drawings = Enumerable.Range(33, 94).Select(c => ((char)c).ToString()).ToDictionary(
            c => c,
            c => string.Join(';', Strokes(c).SelectMany(s => s.Flattened(0.05)).Select(p => FormattableString.Invariant($"{p.X:F2},{p.Y:F2}"))));
        Assert.All(drawings.Keys, c => Assert.True(StrokeLettering.Has(new Rune(c[0])), c));
        Assert.Equal(drawings.Count, drawings.Values.Distinct(StringComparer.Ordinal).Count());
    }

    [Theory]
    [InlineData("°×–'\"/+-.,:;()&%=#")]
    [InlineData("ÄÖÜäöüß éèêëç ñ åøæ ØÆÅ łŁ šžčř")]
    public void Signs_of_drawings_and_letters_of_other_tongues_are_there(string text) =>
        Assert.All(text.EnumerateRunes(), r => Assert.True(StrokeLettering.Has(r), r.ToString()));

    [Theory]
    [InlineData("\u2603")]
    [InlineData("漢")]
    [InlineData("\U0001F6F6")]
    public void A_character_the_alphabet_lacks_is_a_crossed_box(string character)
    {
        Assert.False(StrokeLettering.Has(character.EnumerateRunes().First()));
        var strokes = Strokes(character);
        Assert.Equal(3, strokes.Count);
        Assert.Equal(new Box2(0, 0, 7, 12), strokes[0].Bounds());
    }

    [Fact]
    public void Figures_share_one_width() =>
        Assert.All("0123456789", c => Assert.Equal(StrokeLettering.Width("0", 12), StrokeLettering.Width(c.ToString(), 12)));

    [Fact]
    public void A_text_is_as_long_as_its_letters_and_the_gaps_between()
    {
        var (h, w) = (StrokeLettering.Width("H", 5), StrokeLettering.Width("HH", 5));
        Assert.Equal((3 * w) - (3 * h), StrokeLettering.Width("HHHH", 5) - h, 1e-12);
        Assert.Equal(0, StrokeLettering.Width("", 5));
        Assert.Equal(2 * w, StrokeLettering.Width("HH", 10), 1e-12);
    }

    [Theory]
    [InlineData(Anchor.Left, 0, 0)]
    [InlineData(Anchor.Center, 0.5, 0)]
    [InlineData(Anchor.Right, 1, 0)]
    [InlineData(Anchor.MiddleLeft, 0, 0.5)]
    [InlineData(Anchor.Middle, 0.5, 0.5)]
    [InlineData(Anchor.MiddleRight, 1, 0.5)]
    public void The_anchor_is_where_it_says(Anchor anchor, double across, double up)
    {
        var box = StrokeLettering.Strokes(new TextMark(Layer, "HEH", new(100, 50), 6, anchor)).Select(s => s.Bounds()).Aggregate((a, b) => a.With(b));
        Assert.Equal(100, box.Left + (across * box.Width), 1e-9);
        Assert.Equal(50, box.Bottom + (up * box.Height), 1e-9);
        Assert.Equal(6, box.Height, 1e-9);
    }

    [Fact]
    public void Turned_lettering_is_the_straight_one_turned_about_its_anchor()
    {
        var straight = StrokeLettering.Strokes(new TextMark(Layer, "Bag 7", new(30, 40), 5, Anchor.MiddleRight));
        var turned = StrokeLettering.Strokes(new TextMark(Layer, "Bag 7", new(30, 40), 5, Anchor.MiddleRight, Math.PI / 2));
        foreach (var (a, b) in straight.SelectMany(s => s.Vertices).Zip(turned.SelectMany(s => s.Vertices)))
        {
            Assert.Equal(30 - (a.Point.Y - 40), b.Point.X, 1e-9);
            Assert.Equal(40 + (a.Point.X - 30), b.Point.Y, 1e-9);
            Assert.Equal(a.Bulge, b.Bulge);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(double.NaN)]
    public void A_height_that_is_none_is_refused(double height) =>
        Assert.Throws<ArgumentException>(() => StrokeLettering.Strokes(new TextMark(Layer, "x", new(0, 0), height)));

    /// <summary>Strokes in the alphabet's own units: capitals 12 high, left edge at 0.</summary>
    private static IReadOnlyList<ArcPath> Strokes(string text) => StrokeLettering.Strokes(new TextMark(Layer, text, new(0, 0), 12));
}
