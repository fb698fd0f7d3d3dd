using System.Reflection;

namespace Lines.Cli.Templates;

/// <summary>The designs to start from, carried inside the command.</summary>
internal static class Template
{
    private const string Prefix = "templates/";

    private const string Suffix = ".toml";

    /// <summary>Their names, sorted.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal) && n.EndsWith(Suffix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..^Suffix.Length])
            .Order(StringComparer.Ordinal)];

    /// <summary>The text of one, or null where there is none of the name.</summary>
    public static string? Text(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name + Suffix);
        if (stream is null)
            return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
