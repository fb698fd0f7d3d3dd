using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using SkiaSharp;
using UglyToad.PdfPig;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>
/// Every template built anew gives what lies in output-samples: text to the last digit, PDF by its decoded drawing, PNG within 2
/// levels in 255. LINES_REGENERATE=1 writes the samples anew; look at what changed.
/// </summary>
[Collection(nameof(BuiltTemplates))]
public class OutputSamplesGolden(BuiltTemplates templates)
{
    public static TheoryData<string> Templates =>
        [.. Directory.EnumerateFiles(Repository.PathOf("templates"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Templates))]
    public void A_template_builds_what_the_samples_show(string template)
    {
        var (place, run) = templates.Of(template);
        var made = place.PathOf(template);
        Assert.Equal(0, run.Code);
        Assert.Contains("report.html", run.Out + run.Error, StringComparison.Ordinal);
        var kept = Repository.PathOf("output-samples", template);
        if (Repository.Regenerate)
            Replace(kept, made);
        var names = Files(made);
        Assert.Equal(Files(kept), names);
        foreach (var name in names)
            Compare(name, File.ReadAllBytes(Path.Combine(kept, name)), File.ReadAllBytes(Path.Combine(made, name)));
    }

    private static string[] Files(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    private static void Replace(string kept, string made)
    {
        if (Directory.Exists(kept))
            Directory.Delete(kept, recursive: true);
        foreach (var name in Files(made))
        {
            var target = Path.Combine(kept, name);
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(Path.Combine(made, name), target);
        }
    }

    private static void Compare(string name, byte[] kept, byte[] made)
    {
        // The same bytes draw the same.
        if (kept.AsSpan().SequenceEqual(made))
            return;
        switch (Path.GetExtension(name))
        {
            case ".pdf":
                Assert.True(Drawing(kept).SequenceEqual(Drawing(made), StringComparer.Ordinal), $"{name} draws something else");
                break;
            case ".png":
                Assert.True(GreatestDifference(kept, made) <= 2, $"{name} has other pixels");
                break;
            default:
                Assert.Fail($"{name} reads differently");
                break;
        }
    }

    /// <summary>Size and drawing operators of every page.</summary>
    private static IEnumerable<string> Drawing(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        foreach (var page in document.GetPages())
        {
            yield return FormattableString.Invariant($"{page.Width} x {page.Height}");
            foreach (var operation in page.Operations)
            {
                using var stream = new MemoryStream();
                operation.Write(stream);
                yield return System.Text.Encoding.Latin1.GetString(stream.ToArray());
            }
        }
    }

    private static int GreatestDifference(byte[] kept, byte[] made)
    {
        using SKBitmap a = SKBitmap.Decode(kept), b = SKBitmap.Decode(made);
        if (a.Width != b.Width || a.Height != b.Height)
            return 255;
        var greatest = 0;
        byte[] first = a.Bytes, second = b.Bytes;
        for (var k = 0; k < first.Length; k++)
            greatest = Math.Max(greatest, Math.Abs(first[k] - second[k]));
        return greatest;
    }
}
