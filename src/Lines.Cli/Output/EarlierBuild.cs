using System.Text.Json;

namespace Lines.Cli.Output;

/// <summary>What an earlier build left in a folder: molds that the design no longer has must not be sawn.</summary>
internal static class EarlierBuild
{
    /// <summary>Names of the mold files an earlier build wrote, as its numbers list them; none where there was no build.</summary>
    /// <param name="numbers">Path of its numbers.</param>
    public static IReadOnlyList<string> MoldFiles(string numbers)
    {
        if (!File.Exists(numbers))
            return [];
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(numbers));
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("molds", out var molds) && molds.ValueKind == JsonValueKind.Array
                ? [.. molds.EnumerateArray().Select(NameOf).OfType<string>().Where(IsOurs)]
                : [];
        }
        catch (Exception fault) when (fault is JsonException or IOException or UnauthorizedAccessException)
        {
            // A file of that name which we did not write lists no molds of ours.
            return [];
        }
    }

    private static string? NameOf(JsonElement mold) =>
        mold.ValueKind == JsonValueKind.Object && mold.TryGetProperty("file", out var file) && file.ValueKind == JsonValueKind.String ? file.GetString() : null;

    /// <summary>Only names a build gives: whatever else a numbers.json says is not taken away for it.</summary>
    private static bool IsOurs(string name) =>
        name is "molds/stem.dxf" or "molds/stern.dxf" or "molds/transom.dxf"
        || (name.StartsWith("molds/mold-", StringComparison.Ordinal) && name.EndsWith(".dxf", StringComparison.Ordinal) && name["molds/mold-".Length..^".dxf".Length].All(char.IsAsciiDigit));
}
