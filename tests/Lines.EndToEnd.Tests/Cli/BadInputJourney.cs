using System.Text;
using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public sealed class BadInputJourney
{
    [Fact]
    public void A_missing_file_is_told_with_the_one_that_may_be_meant()
    {
        using var place = new Workplace();
        place.Write("tender.toml", "");

        var run = Command.Run(place.Root, "check", "tendr.toml");

        Assert.Equal((3, "", "lines: tendr.toml: no such file; did you mean tender.toml?\n"), (run.Code, run.Out, run.Error));
    }

    [Fact]
    public void A_folder_is_no_design_file()
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "check", ".");

        Assert.Equal((3, "", "lines: .: is a folder without DXF files; give one with router files, or a design file\n"), (run.Code, run.Out, run.Error));
    }

    [Fact]
    public void A_file_that_the_system_cannot_read_is_told_so()
    {
        using var place = new Workplace();

        // Its first page is mapped in no process: reading it is an input/output error, for root too.
        var run = Command.Shell(place.Root, "exec $LINES check /proc/self/mem");

        Assert.Equal((3, ""), (run.Code, run.Out));
        Assert.StartsWith("lines: /proc/self/mem: could not be read: ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_permission_is_told_so()
    {
        using var place = new Workplace();
        place.Write("tender.toml", "title = \"T\"\n");

        var run = OtherUser.Run(place, "chmod 000 tender.toml", "check tender.toml");

        Assert.Equal((3, "", "lines: tender.toml: may not be read; check who owns it and its permissions\n"), (run.Code, run.Out, run.Error));
    }

    [Fact]
    public void A_device_that_never_ends_is_not_read_to_its_end()
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "check", "/dev/zero");

        Assert.Equal((2, "", "lines: /dev/zero: is over 16 MB; a design file is a page of text\n"), (run.Code, run.Out, run.Error));
    }

    [Theory]
    [InlineData("", "bad.toml:1:1: file: is empty; start a design with: lines new FILE --from TEMPLATE")]
    [InlineData("\u0000\u0001\u0002PNG", "bad.toml:1:1: file: is not text: it holds bytes that no text has")]
    [InlineData("title = \"T\"\n[hull]\nlength = nan\n", "bad.toml:3:10: hull.length: nan is not a number anybody can build to; give 1 m to 15 m")]
    [InlineData("title = \"T\"\n[hull]\nlength = \"-5 m\"\n", "bad.toml:3:10: hull.length: \"-5 m\" is below 1 m; give 1 m to 15 m")]
    [InlineData("title = \"T\"\n[hull]\nlenght = \"5 m\"\n", "bad.toml:3:1: hull.lenght: is not a key of a design file; did you mean length?")]
    [InlineData("title = \"T\"\n[hull]\nlength = 5 m\n", "hull.length: has a unit outside quotes; write length = \"5 m\"")]
    public void A_bad_file_is_faulted_and_nothing_is_written(string text, string message) => AssertFaulted(text, message, "check", "build");

    // All verbs read a file in one place, which the kinds of fault above go through.
    [Fact]
    public void Every_verb_faults_a_bad_file_and_writes_nothing() => AssertFaulted(
        "title = \"T\"\n[hull]\nbeam = \"5' 14\\\"\"\n", "bad.toml:3:8: hull.beam: ", "float", "drag", "draw", "offsets", "molds", "print", "export");

    private static void AssertFaulted(string text, string message, params string[] verbs)
    {
        using var place = new Workplace();
        place.Write("bad.toml", text);
        foreach (var verb in verbs)
        {
            string[] output = verb is "molds" or "build" ? ["-o", "out"] : [];

            var run = Command.Run(place.Root, [verb, "bad.toml", .. output]);

            Assert.Equal((2, ""), (run.Code, run.Out));
            Assert.Contains(message, run.Error, StringComparison.Ordinal);
            Assert.Matches("lines: (one fault|[0-9]+ faults), nothing written\n$", run.Error);
            Assert.Equal(["bad.toml"], place.Entries());
        }
    }

    [Fact]
    public void Ten_megabytes_of_brackets_are_turned_away()
    {
        using var place = new Workplace();
        place.Write("bad.toml", new string('[', 10_000_000));

        var run = Command.Run(place.Root, "check", "bad.toml");

        Assert.Equal((2, ""), (run.Code, run.Out));
        Assert.StartsWith("bad.toml:1:1: file: has 10000000 characters; a design file is a page of text, at most 131072\n", run.Error, StringComparison.Ordinal);
        Assert.True(run.Error.Length < 600);
    }

    [Fact]
    public void All_faults_come_in_one_run_with_their_lines_and_as_json_too()
    {
        using var place = new Workplace();
        place.Write("bad.toml", Designs.Runner().Replace("beam ", "baem ", StringComparison.Ordinal).Replace("[build]", "[biuld]", StringComparison.Ordinal));

        var run = Command.Run(place.Root, "check", "bad.toml", "--json");

        Assert.Equal(2, run.Code);
        Assert.Contains("hull.baem: is not a key of a design file; did you mean beam?", run.Error, StringComparison.Ordinal);
        Assert.Contains("biuld: is not a table of a design file; did you mean [build]?", run.Error, StringComparison.Ordinal);
        Assert.Contains("^^^^", run.Error, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(run.Out);
        var faults = json.RootElement.GetProperty("diagnostics").EnumerateArray().ToList();
        Assert.Equal(["hull.baem", "biuld"], faults.Select(f => f.GetProperty("key").GetString()!), StringComparer.Ordinal);
        Assert.All(faults, f => Assert.True(f.GetProperty("line").GetInt32() > 1));
    }

    [Fact]
    public void Dials_that_exclude_each_other_are_told_at_their_places()
    {
        using var place = new Workplace();
        var text = Designs.Runner();
        var old = text.Split('\n').Single(l => l.StartsWith("fullness", StringComparison.Ordinal));
        place.Write("full.toml", text.Replace(old, "fullness = 0.95", StringComparison.Ordinal));

        var run = Command.Run(place.Root, "build", "full.toml", "-o", "out");

        Assert.Equal((2, ""), (run.Code, run.Out));
        Assert.Matches("full\\.toml:[0-9]+:12: hull\\.midship\\.fullness: 0\\.95: .*; nearest feasible 0\\.[0-9]+, the others kept\n", run.Error);
        Assert.Equal(["full.toml"], place.Entries());
    }

    [Theory]
    [InlineData("", true)]
    [InlineData("NO_COLOR=1", false)]
    [InlineData("TERM=dumb", false)]
    public void Who_waits_at_a_terminal_for_the_nearest_values_is_told_what_for_and_the_line_is_gone_afterwards(string environment, bool told)
    {
        using var place = new Workplace();

        place.Write("steep.toml", Steep());

        var run = Command.Shell(place.Root, $"unset NO_COLOR; export TERM=xterm {environment}; script -qec \"$LINES check steep.toml > results\" /dev/null");

        Assert.Equal((2, ""), (run.Code, run.Error));
        Assert.Empty(File.ReadAllText(place.PathOf("results")));
        const string line = "\rshaping the hull, or the nearest dimensions that go together ... ";
        Assert.Equal(told, run.Out.Contains(line + "1 s\u001b[K", StringComparison.Ordinal));
        Assert.Equal(told, run.Out.Contains(" s\u001b[K\r\u001b[K\u001b[1msteep.toml:", StringComparison.Ordinal));
        Assert.Equal(told, run.Out.Contains("shaping", StringComparison.Ordinal));
        Assert.Equal(told, run.Out.Contains("\u001b[1m", StringComparison.Ordinal));
    }

    [Fact]
    public void Who_waits_at_no_terminal_for_the_nearest_values_is_not_told_what_for()
    {
        using var place = new Workplace();
        place.Write("steep.toml", Steep());

        Assert.DoesNotContain("shaping", Command.Run(place.Root, "check", "steep.toml").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_encodings_are_told_at_their_first_byte()
    {
        using var place = new Workplace();
        File.WriteAllBytes(place.PathOf("wide.toml"), Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("title = \"T\"")).ToArray());

        var run = Command.Run(place.Root, "check", "wide.toml");

        Assert.Equal((2, ""), (run.Code, run.Out));
        Assert.StartsWith("wide.toml:1:1: file: is saved as UTF-16; save it as UTF-8", run.Error, StringComparison.Ordinal);
    }

    // A vee far too steep for lines without a hollow: this conflict takes longer than any other in these tests to explain, 3 s or more.
    private static string Steep() => new EditedDesign(Designs.Runner()).With("hull.bow.vee", "\"72 deg\"").Text;
}
