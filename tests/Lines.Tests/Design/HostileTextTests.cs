using System.Diagnostics;
using System.Text;
using CsCheck;
using Lines.Design;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed class HostileTextTests
{
    /// <summary>The longest text that is parsed at all.</summary>
    private const int Longest = 1 << 17;

    public static TheoryData<string, string> Floods => new()
    {
        { "[", "nests brackets more than 16 deep" },
        { "{", "nests brackets more than 16 deep" },
        { "a=[", "nests brackets more than 16 deep" },
        { "]", "is not TOML here" },
        { "[\n", "nests brackets more than 16 deep" },
        { "a=\n", "has no value" },
        { "=\n", "has a value without a key" },
        { "'\n", "" },
        { "\"", "" },
        { "[a]\n", "is not a table" },
        { "[[rig]]\n", "is in double brackets" },
        { "[[board]]\n", "is not yet understood" },
        { "[[outrigger]]\n", "is missing" },
        { "[[load]]\nname=\"a\"\n", "is missing" },
        { "[[load]]\nname=\"a\"\nmass=\"1 kg\"\nat=[\"0 m\",\"0 m\",\"0 m\"]\n", "hull: is missing" },
        { "a.", "" },
        { "a.b.c = 1\n", "is not a key" },
        { "\n", "is empty" },
        { "#", "holds no table and no key" },
        { "\u0001", "" },
        { "title = \"\"\"\n", "" },
    };

    [Theory]
    [MemberData(nameof(Floods))]
    public void A_flood_of_one_thing_ends_in_a_short_list_of_faults(string what, string expected)
    {
        var text = string.Concat(Enumerable.Repeat(what, Longest / what.Length));
        var watch = Stopwatch.StartNew();

        var reading = DesignFile.Read(text, "flood.toml");

        // Two thousand times the reading of a page, on a machine that is busy with other tests.
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), $"took {watch.Elapsed}");
        Assert.Null(reading.Design);
        Assert.InRange(reading.Diagnostics.Count, 1, 101);
        Assert.Contains(reading.Diagnostics, f => f.Headline.Contains(expected, StringComparison.Ordinal));
        Assert.All(reading.Diagnostics, f => Assert.True(f.ToString().Length < 800));
    }

    [Fact]
    public void Ten_megabytes_of_brackets_are_turned_away_unread()
    {
        var fault = Assert.Single(DesignFile.Read(new string('[', 10_000_000), "big.toml").Diagnostics);

        Assert.Equal("big.toml:1:1: file: has 10000000 characters; a design file is a page of text, at most 131072", fault.Headline);
    }

    [Fact]
    public void A_long_program_or_picture_is_said_to_be_no_text_rather_than_long()
    {
        byte[] picture = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, .. Enumerable.Range(0, 300_000).Select(k => (byte)(k * 7))];
        Assert.Contains("is not text", Assert.Single(DesignFile.Read(picture, "a.png").Diagnostics).Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0 }, "1:1: file: is not text")]
    [InlineData(new byte[] { 0x61, 0x20, 0x3D, 0x20, 0 }, "1:5: file: is not text")]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0 }, "1:1: file: is saved as UTF-16; save it as UTF-8")]
    [InlineData(new byte[] { 0xFE, 0xFF, 0, 0x61 }, "1:1: file: is saved as UTF-16")]
    [InlineData(new byte[] { 0x61, 0, 0x20, 0 }, "1:1: file: is saved as UTF-16")]
    [InlineData(new byte[] { 0x61, 0x0D, 0x62, 0x0D }, "1:2: file: ends its lines with carriage returns alone")]
    [InlineData(new byte[] { 0x0A, 0x61, 0xE9 }, "2:2: file: holds a byte that is no character of UTF-8; save it as UTF-8")]
    [InlineData(new byte[0], "1:1: file: is empty; start a design with: lines new FILE --from TEMPLATE")]
    [InlineData(new byte[] { 0x20, 0x0A, 0x0D, 0x0A }, "1:1: file: is empty")]
    public void What_is_no_text_is_told_at_the_first_odd_byte(byte[] bytes, string expected)
    {
        var fault = Assert.Single(DesignFile.Read(bytes, "a.toml").Diagnostics);

        Assert.Contains(expected, fault.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("title = \"\\UFFFFFFFF\"")]
    [InlineData("title = \"\\uD800\"")]
    [InlineData("title = \"\\U00110000\"")]
    [InlineData("title = \"\\x")]
    [InlineData("title = \"\\")]
    [InlineData("title = \"\\u")]
    [InlineData("title = \"\\q\"")]
    [InlineData("title = \"a\\\nb\"")]
    [InlineData("\uD800 = 1")]
    [InlineData("title = '\uDC00'")]
    public void Broken_escapes_and_halves_of_characters_are_faults_of_their_line(string text)
    {
        Assert.Contains(DesignFile.Read(text, "a.toml").Diagnostics, f => f.Place.Line == 1);
    }

    [Fact]
    public void Any_spoiling_of_a_sound_file_is_read_or_faulted_and_never_throws()
    {
        const string letters = "[]{}\"'=#,.\n\r\t \\0123456789nanif-+°\u0001\u0085éx_";
        var edits = Gen.Select(Gen.Int[0, SampleDesigns.Pointed.Length - 1], Gen.Int[0, 12], Gen.Char[letters].Array[0, 6]).Array[1, 6];
        edits.Sample(
            list =>
            {
                var text = new StringBuilder(SampleDesigns.Pointed);
                foreach (var (at, cut, put) in list)
                {
                    var from = Math.Min(at, text.Length);
                    text.Remove(from, Math.Min(cut, text.Length - from)).Insert(from, new string(put));
                }

                var reading = DesignFile.Read(text.ToString(), "a.toml");
                Assert.Equal(reading.Design is null, reading.Diagnostics.Count > 0);
                Assert.All(reading.Diagnostics, f => Assert.True(f.Place.Line >= 1 && f.Place.Column >= 1 && f.Problem.Length > 0 && f.Remedy.Length > 0, f.ToString()));
                Assert.All(reading.Diagnostics, f => Assert.True(f.Key.Length > 0, f.ToString()));
            },
            iter: 2000);
    }
}
