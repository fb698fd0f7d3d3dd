using Lines.Cli.Verbs;

namespace Lines.Cli.Output;

/// <summary>What an earlier run left in a folder that may not be made again: molds the design no longer has must not be sawn.</summary>
/// <remarks>By name: in a folder of molds, known by the drawing of them all, what has a name of a mold of ours is ours.</remarks>
internal static class EarlierRun
{
    /// <summary>The drawing of all molds in one, which every run writes.</summary>
    public const string AllMolds = "all-molds.dxf";

    /// <summary>What is cut from which sheet.</summary>
    public const string CuttingList = "cutting-list.pdf";

    /// <summary>Load cases and stability, written where the empty boat's weight is known: old ones must not be gone by.</summary>
    public const string LoadCases = "load-cases.pdf", RightingArms = "righting-arms.svg";

    /// <summary>Strips, and what is bought with the order of work; every run writes them.</summary>
    public const string Planking = "planking.csv", Materials = "materials.csv";

    /// <summary>Names of the molds in an output folder, with forward slashes; none where no run of ours wrote there.</summary>
    /// <param name="target">The output folder.</param>
    /// <param name="folder">Folder of the molds in it, with a slash at its end, or nothing.</param>
    public static IReadOnlyList<string> Molds(string target, string folder)
    {
        var place = Path.Combine(target, folder);
        return File.Exists(Path.Combine(place, AllMolds))
            ? [.. Directory.EnumerateFiles(place, "*.dxf").Select(Path.GetFileName).OfType<string>().Where(IsMold).Select(n => folder + n)]
            : [];
    }

    /// <summary>The molds, the patterns on every paper and the load cases of an earlier build, those of its outriggers too.</summary>
    /// <param name="target">The output folder.</param>
    public static IReadOnlyList<string> MoldsPatternsAndCases(string target) =>
        [.. OutriggerFolders(target).Prepend("").SelectMany(folder => Molds(target, folder + "molds/") is { Count: > 0 } molds ? molds.Concat(PrintVerb.Papers.Select(p => folder + Common.PatternsFile(p))).Concat([folder + LoadCases, folder + RightingArms]) : [])];

    private static IEnumerable<string> OutriggerFolders(string target) => Directory.Exists(target)
        ? Directory.EnumerateDirectories(target, "outrigger-*").Select(Path.GetFileName).OfType<string>().Where(n => n["outrigger-".Length..] is { Length: > 0 } number && number.All(char.IsAsciiDigit)).Order(StringComparer.Ordinal).Select(n => n + "/")
        : [];

    private static bool IsMold(string name) =>
        name is "stem.dxf" or "stern.dxf" or "transom.dxf"
        || IsNumbered(name.Replace("-fore.dxf", ".dxf", StringComparison.Ordinal).Replace("-aft.dxf", ".dxf", StringComparison.Ordinal), "bulkhead-")
        || IsNumbered(name, "mold-") || IsNumbered(name, "sheet-");

    private static bool IsNumbered(string name, string kind) =>
        name.StartsWith(kind, StringComparison.Ordinal) && name[kind.Length..^".dxf".Length] is { Length: > 1 } number && number.All(char.IsAsciiDigit);
}
