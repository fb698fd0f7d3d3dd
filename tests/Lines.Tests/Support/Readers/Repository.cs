namespace Lines.Tests.Support;

/// <summary>Places in the repository the tests run from.</summary>
internal static class Repository
{
    /// <summary>The folder that holds Lines.sln.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>A file or folder by its path from the root.</summary>
    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Lines.sln")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException($"no folder above {AppContext.BaseDirectory} holds Lines.sln");
    }
}
