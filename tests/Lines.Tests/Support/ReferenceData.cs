namespace Lines.Tests.Support;

/// <summary>Files of published numbers under tests/data.</summary>
internal static class ReferenceData
{
    /// <summary>The folder that holds Lines.sln.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The path of a file under tests/data.</summary>
    public static string PathOf(params string[] parts) => Path.Combine([Root, "tests", "data", .. parts]);

    /// <summary>The cells of a comma-separated file without quotes.</summary>
    public static IReadOnlyList<string[]> Table(string name) =>
        [.. File.ReadAllLines(PathOf("reference", name)).Where(l => l.Length > 0).Select(l => l.Split(','))];

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Lines.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("no folder above the tests holds Lines.sln");
    }
}
