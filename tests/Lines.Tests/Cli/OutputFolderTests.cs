using Lines.Cli;
using Lines.Cli.Output;
using Xunit;

namespace Lines.Tests.Cli;

public sealed class OutputFolderTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("lines-output-").FullName;

    private string Target => Path.Combine(_root, "out");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Nothing_is_seen_of_a_folder_before_it_is_whole()
    {
        using var folder = new OutputFolder(Target, force: false);
        folder.Add("a.txt", "a"u8);
        folder.Add("molds/m.txt", "m"u8);
        Assert.False(Directory.Exists(Target));

        folder.Finish([]);

        Assert.Equal(["out", "out/a.txt", "out/molds", "out/molds/m.txt"], Entries());
        Assert.Equal(["a.txt", "molds/m.txt"], folder.Names);
    }

    [Fact]
    public void A_folder_that_does_not_come_to_its_end_leaves_nothing()
    {
        using (var folder = new OutputFolder(Target, force: false))
            folder.Add("a.txt", "a"u8);

        Assert.Empty(Entries());
    }

    [Fact]
    public void An_empty_folder_is_filled_and_one_that_is_not_is_refused()
    {
        Directory.CreateDirectory(Target);
        using (var folder = new OutputFolder(Target, force: false))
        {
            folder.Add("a.txt", "a"u8);
            folder.Finish([]);
        }

        var failure = Assert.Throws<CommandFailure>(() => new OutputFolder(Target, force: false));
        Assert.Equal(ExitCode.NoAccess, failure.Code);
        Assert.Contains("exists already and is not empty; --force replaces", failure.Message, StringComparison.Ordinal);
        Assert.Equal(["out", "out/a.txt"], Entries());
    }

    [Fact]
    public void With_force_files_of_our_names_are_replaced_stale_ones_taken_away_and_all_others_stay()
    {
        Fill(("a.txt", "old"), ("molds/mold-02.dxf", "stale"), ("molds/notes.txt", "mine"), ("keep/photo.jpg", "mine"));
        using var folder = new OutputFolder(Target, force: true);
        folder.Add("a.txt", "new"u8);
        folder.Add("molds/mold-01.dxf", "new"u8);

        folder.Finish(["molds/mold-01.dxf", "molds/mold-02.dxf"]);

        Assert.Equal(
            ["out", "out/a.txt", "out/keep", "out/keep/photo.jpg", "out/molds", "out/molds/mold-01.dxf", "out/molds/notes.txt"], Entries());
        Assert.Equal("new", Read("a.txt"));
        Assert.Equal("mine", Read("molds/notes.txt"));
    }

    [Fact]
    public void What_fails_half_way_puts_everything_back()
    {
        // The second name is a folder there, which no file may replace.
        Fill(("a.txt", "old"), ("b.txt/inside.txt", "mine"));
        using (var folder = new OutputFolder(Target, force: true))
        {
            folder.Add("a.txt", "new"u8);
            folder.Add("b.txt", "new"u8);
            folder.Add("c.txt", "new"u8);

            var failure = Assert.Throws<CommandFailure>(() => folder.Finish([]));

            Assert.Equal(ExitCode.NoAccess, failure.Code);
            Assert.Contains("b.txt is a folder there", failure.Message, StringComparison.Ordinal);
        }

        Assert.Equal(["out", "out/a.txt", "out/b.txt", "out/b.txt/inside.txt"], Entries());
        Assert.Equal("old", Read("a.txt"));
    }

    [Theory]
    [InlineData("file/a/out", "which is a file")]
    [InlineData("file", "is a file; name a folder")]
    [InlineData("/dev/out", "is a device")]
    public void A_place_that_cannot_be_is_refused_before_any_work(string name, string message)
    {
        File.WriteAllText(Path.Combine(_root, "file"), "");

        var failure = Assert.Throws<CommandFailure>(() => OutputFolder.Check(Path.Combine(_root, name), force: true));

        Assert.Equal(ExitCode.NoAccess, failure.Code);
        Assert.Contains(message, failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_is_written_whole_and_replaces_only_when_told()
    {
        var path = Path.Combine(_root, "a.txt");
        OutputFile.Write(path, "one"u8, force: false);
        Assert.Throws<CommandFailure>(() => OutputFile.Write(path, "two"u8, force: false));
        Assert.Equal("one", File.ReadAllText(path));

        OutputFile.Write(path, "two"u8, force: true);

        Assert.Equal("two", File.ReadAllText(path));
        Assert.Equal(["a.txt"], Entries());
    }

    [Fact]
    public void Folders_on_the_way_to_an_output_are_made()
    {
        using var folder = new OutputFolder(Path.Combine(_root, "a/b/out"), force: false);
        folder.Add("a.txt", "a"u8);
        folder.Finish([]);
        OutputFile.Write(Path.Combine(_root, "c/d.txt"), "d"u8, force: false);

        Assert.Equal(["a", "a/b", "a/b/out", "a/b/out/a.txt", "c", "c/d.txt"], Entries());
    }

    [Fact]
    public void Folders_made_for_an_output_that_did_not_come_to_its_end_are_taken_back_but_not_those_that_were_there()
    {
        Directory.CreateDirectory(Path.Combine(_root, "mine"));
        using (var folder = new OutputFolder(Path.Combine(_root, "mine/b/c/out"), force: false))
            folder.Add("a.txt", "a"u8);

        Assert.Equal(["mine"], Entries());
    }

    [Fact]
    public void Only_what_has_the_name_of_a_mold_beside_the_drawing_of_all_molds_is_of_an_earlier_run()
    {
        Fill(
            ("molds/mold-01.dxf", ""), ("molds/mold-100.dxf", ""), ("molds/transom.dxf", ""), ("molds/mold-1a.dxf", ""), ("molds/mold-.dxf", ""),
            ("molds/my-mold-01.dxf", ""), ("molds/setting-up.pdf", ""), ("mold-01.dxf", ""));
        Assert.Empty(EarlierRun.Molds(Target, "molds/"));

        Fill(("molds/all-molds.dxf", ""));

        Assert.Equal(["molds/mold-01.dxf", "molds/mold-100.dxf", "molds/transom.dxf"], EarlierRun.Molds(Target, "molds/").Order(StringComparer.Ordinal));
        Assert.Equal(
            ["load-cases.pdf", "molds/mold-01.dxf", "molds/mold-100.dxf", "molds/transom.dxf", "righting-arms.svg", "templates-a4.pdf", "templates-letter.pdf"],
            EarlierRun.MoldsPatternsAndCases(Target).Order(StringComparer.Ordinal));
        Assert.Empty(EarlierRun.Molds(Target, ""));
        Assert.Empty(EarlierRun.Molds(Path.Combine(_root, "none"), ""));
    }

    private void Fill(params (string Name, string Text)[] files)
    {
        foreach (var (name, text) in files)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(Target, name))!);
            File.WriteAllText(Path.Combine(Target, name), text);
        }
    }

    private string Read(string name) => File.ReadAllText(Path.Combine(Target, name));

    private string[] Entries() =>
        [.. Directory.EnumerateFileSystemEntries(_root, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None })
            .Select(p => Path.GetRelativePath(_root, p).Replace('\\', '/')).Order(StringComparer.Ordinal)];
}
