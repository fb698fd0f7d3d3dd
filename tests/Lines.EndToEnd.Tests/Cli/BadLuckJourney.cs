using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public sealed class BadLuckJourney
{
    [Theory]
    [InlineData("draw runner.toml -o out.pdf")]
    [InlineData("export runner.toml -o out.step")]
    [InlineData("export runner.toml -o out")]
    [InlineData("print runner.toml -o out.pdf")]
    [InlineData("molds runner.toml -o out")]
    [InlineData("build runner.toml -o out")]
    [InlineData("build runner.toml -o a/b/out")]
    [InlineData("draw runner.toml -o a/b/out.pdf")]
    public void A_disk_that_fills_up_leaves_no_part_and_says_so(string arguments)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());

        // Files of 8 kB at most: the kernel then fails a write half way, as a full disk does. (The runtime maps its code by a large file
        // of its own unless told not to.)
        var run = Command.Shell(place.Root, $"trap '' XFSZ; ulimit -f 8; export DOTNET_EnableWriteXorExecute=0; exec $LINES {arguments}");

        Assert.Equal((3, ""), (run.Code, run.Out));
        Assert.Matches("^lines: (a/b/)?out[.a-z]*: could not be written: the file is larger than the disk or the user may hold\n$", run.Error);
        Assert.Equal(["runner.toml"], place.Entries());
    }

    [MountFact]
    public void A_small_disk_that_is_full_leaves_what_was_there()
    {
        using var place = new Workplace();
        Directory.CreateDirectory(place.PathOf("disk"));
        Assert.Equal(0, Command.Shell(place.Root, "mount -t tmpfs -o size=256k tmpfs disk").Code);
        try
        {
            place.Write("runner.toml", Designs.Runner());
            Directory.CreateDirectory(place.PathOf("disk/out"));
            place.Write("disk/out/report.html", "old");
            place.Write("disk/out/notes.txt", "mine");

            var run = Command.Run(place.Root, "build", "runner.toml", "-o", "disk/out", "--force");

            Assert.Equal((3, "", "lines: disk/out: could not be written: no space left on the disk\n"), (run.Code, run.Out, run.Error));
            Assert.Equal(["disk", "disk/out", "disk/out/notes.txt", "disk/out/report.html", "runner.toml"], place.Entries());
            Assert.Equal("old", File.ReadAllText(place.PathOf("disk/out/report.html")));
        }
        finally
        {
            Command.Shell(place.Root, "umount disk");
        }
    }

    [Theory]
    [InlineData("check runner.toml")]
    [InlineData("check runner.toml --json")]
    [InlineData("float runner.toml")]
    [InlineData("offsets runner.toml")]
    [InlineData("check --help")]
    [InlineData("completion bash")]
    public void Results_that_cannot_be_printed_are_a_failure(string arguments)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());

        var run = Command.Shell(place.Root, $"exec $LINES {arguments} > /dev/full");

        Assert.Equal((3, "lines: no space left on the disk\n"), (run.Code, run.Error));
    }

    [Fact]
    public void A_reader_that_has_seen_enough_is_no_failure()
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());

        var run = Command.Shell(place.Root, "set -o pipefail; $LINES offsets runner.toml | head -n 1");

        Assert.Equal((0, ""), (run.Code, run.Error));
        Assert.Single(run.Out.TrimEnd('\n').Split('\n'));
    }

    [Theory]
    [InlineData("draw runner.toml -o mine.pdf", "mine.pdf")]
    [InlineData("offsets runner.toml -o mine.csv", "mine.csv")]
    [InlineData("print runner.toml -o mine.pdf", "mine.pdf")]
    [InlineData("export runner.toml -o mine.step", "mine.step")]
    [InlineData("new mine.toml", "mine.toml")]
    public void A_file_that_is_there_is_replaced_only_with_force(string arguments, string name)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        place.Write(name, "mine");

        var run = Command.Run(place.Root, arguments.Split(' '));
        Assert.Equal((3, "", $"lines: {name}: exists already; --force replaces it, or name another file\n"), (run.Code, run.Out, run.Error));
        Assert.Equal("mine", File.ReadAllText(place.PathOf(name)));

        Assert.Equal(0, Command.Run(place.Root, [.. arguments.Split(' '), "--force"]).Code);
        Assert.NotEqual("mine", File.ReadAllText(place.PathOf(name)));
        Assert.Equal([name, "runner.toml"], place.Entries());
    }

    [Theory]
    [InlineData("build", "out", "out: exists already and is not empty; --force replaces what an earlier run wrote in it, or name another with -o")]
    [InlineData("molds", "out", "out: exists already and is not empty")]
    [InlineData("export", "out", "out: exists already and is not empty")]
    [InlineData("build", "runner.toml", "runner.toml: is a file; name a folder")]
    [InlineData("build", "runner.toml/a/out", "runner.toml, which is a file; name another place with -o")]
    [InlineData("draw", "runner.toml/out.pdf", "runner.toml, which is a file; name another place with -o")]
    [InlineData("draw", "dir.pdf", "dir.pdf: is a folder; name a file")]
    [InlineData("build", "/dev/full", "/dev/full: is a device, not a place for files")]
    [InlineData("export", "/dev/full.step", "/dev/full.step: is a device, not a place for files")]
    public void A_place_that_is_taken_or_cannot_be_is_refused(string verb, string output, string message)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        Directory.CreateDirectory(place.PathOf("out"));
        Directory.CreateDirectory(place.PathOf("dir.pdf"));
        place.Write("out/notes.txt", "mine");

        var run = Command.Run(place.Root, verb, "runner.toml", "-o", output);

        Assert.Equal((3, ""), (run.Code, run.Out));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.Equal(["dir.pdf", "out", "out/notes.txt", "runner.toml"], place.Entries());
    }

    [Fact]
    public void A_folder_without_permission_is_told_so()
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());

        var run = OtherUser.Run(place, "chmod a-w .", "export runner.toml");

        Assert.Equal((3, "", "lines: runner-hull: could not be written: permission denied\n"), (run.Code, run.Out, run.Error));
        Assert.Equal(["runner.toml"], place.Entries());
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public void A_run_that_is_stopped_cleans_up(string signal)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());

        // Stopped as soon as its unfinished folder is there, in a folder made for it.
        var run = Command.Shell(
            place.Root,
            $"""
            env --default-signal=INT $LINES build runner.toml -o a/out & pid=$!
            for i in $(seq 2000); do ls -d a/.out.*.part >/dev/null 2>&1 && break; sleep 0.005; done
            kill -{signal} $pid; wait $pid; echo $?
            """);

        Assert.Equal("130\n", run.Out);
        Assert.Equal("lines: stopped, nothing written\n", run.Error);
        Assert.Equal(["runner.toml"], place.Entries());
    }

    [Fact]
    public void A_run_that_is_stopped_while_it_replaces_the_files_of_an_earlier_one_leaves_them_all()
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        Assert.Equal(0, Command.Run(place.Root, "molds", "runner.toml", "-o", "out").Code);
        Dictionary<string, string> Files() => place.Entries().Where(e => File.Exists(place.PathOf(e))).ToDictionary(e => e, e => File.ReadAllText(place.PathOf(e)), StringComparer.Ordinal);
        var before = Files();

        // While files are replaced there are two unfinished folders: the new files, and the old ones set aside.
        var run = Command.Shell(
            place.Root,
            """
            shopt -s nullglob
            $LINES molds runner.toml -o out --force & pid=$!
            while kill -0 $pid 2>/dev/null; do parts=(.out.*.part); [ ${#parts[@]} -ge 2 ] && break; done
            kill -TERM $pid 2>/dev/null; wait $pid; echo $?
            """);

        Assert.Contains(run.Out, (string[])["0\n", "130\n"]);
        Assert.DoesNotContain("nothing written", run.Error, StringComparison.Ordinal);
        Assert.Equal(before.OrderBy(f => f.Key, StringComparer.Ordinal), Files().OrderBy(f => f.Key, StringComparer.Ordinal));
    }
}
