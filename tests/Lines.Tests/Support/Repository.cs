namespace Lines.Tests.Support;

/// <summary>The checkout the tests were built from.</summary>
internal static class Repository
{
    /// <summary>The folder that holds Lines.sln, found upward from the test assembly.</summary>
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>Whether golden files are to be written anew rather than compared.</summary>
    public static bool Regenerate => Environment.GetEnvironmentVariable("LINES_REGENERATE") is "1";

    /// <summary>A path below the root, parts joined for this system.</summary>
    public static string PathOf(params ReadOnlySpan<string> parts) => Path.Combine([Root, .. parts]);

    private static string Find(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Lines.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"no Lines.sln above {from}");
    }
}
