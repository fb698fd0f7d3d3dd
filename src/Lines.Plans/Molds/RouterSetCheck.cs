using System.Globalization;
using System.Text.RegularExpressions;
using Lines.Design.Diagnostics;
using Lines.Design.Text;
using Lines.Drawing.Dxf;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Molds;

/// <summary>Looks at the DXF files of one folder together: the same parts stand in files of their own, in one file with all, and on the sheets of stock.</summary>
/// <remarks>
/// <para><b>Method.</b> Molds and sheets are numbered from 1 without a gap. Outlines are matched by breadth and height, on sheets either way round; what is left over on both sides is one
/// part that was changed, what is left over on one has no partner. Sheets count only where they hold as many parts as the other files: what is too large for the stock is on none.</para>
/// <para><b>Accuracy.</b> Breadth and height of one part are the same within 0.05 mm.</para>
/// </remarks>
public static partial class RouterSetCheck
{
    private const double Same = 0.05;

    /// <summary>Sizes farther apart than this part of them are two parts rather than one that was changed.</summary>
    private const double Alike = 0.03;

    private const string Together = "all-molds.dxf";

    private const string Remedy = "write the folder again, or put back the file as it was written";

    /// <summary>What the files of a folder contradict in each other.</summary>
    /// <param name="files">The files with their text; those that are no DXF are passed over, for <see cref="RouterFileCheck"/> tells them.</param>
    /// <returns>The faults; none where the files agree.</returns>
    public static IReadOnlyList<Diagnostic> Faults(IReadOnlyList<(string File, string Text)> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        List<Diagnostic> gaps = [.. Gaps([.. files.Select(f => f.File)])];
        List<Part> parts = [.. files.SelectMany(f => Parts(f.File, f.Text))];
        var single = parts.Where(p => !p.IsTogether && !p.IsOnSheet).ToList();
        var together = parts.Where(p => p.IsTogether).ToList();
        var nested = parts.Where(p => p.IsOnSheet).ToList();
        if (single.Count == 0)
            return gaps;
        var isNested = nested.Count == (together.Count > 0 ? together.Count : single.Count);
        List<List<Part>> sets = [.. new[] { together, isNested ? nested : [] }.Where(s => s.Count > 0)];
        var differences = sets.SelectMany(s => Differences(single, s)).ToList();

        // A gap in the numbers has told of so many outlines that are in no file of their own.
        return
        [
            .. gaps,
            .. differences.Where(d => d.Single is not null).GroupBy(d => d.Single!).SelectMany(g => Changed(g.Key, [.. g], sets.Count)),
            .. differences.Where(d => d.Single is null).GroupBy(d => d.Others).Where(g => g.Count() > gaps.Count).SelectMany(g => g)
                .Select(d => Told(d.Other!.File, d.Other.Line, MoldInks.Cut.Name, $"this outline, {d.Other.Size} mm, is in no file of its own", Remedy)),
        ];
    }

    private static IEnumerable<Diagnostic> Gaps(List<string> files)
    {
        foreach (var series in files.Select(f => (File: f, Match: Numbered().Match(Path.GetFileName(f)))).Where(f => f.Match.Success).GroupBy(f => f.Match.Groups["series"].Value, StringComparer.Ordinal))
        {
            var numbers = series.ToDictionary(f => int.Parse(f.Match.Groups["number"].Value, CultureInfo.InvariantCulture), f => f.File);
            foreach (var missing in Enumerable.Range(1, numbers.Keys.Max()).Where(n => !numbers.ContainsKey(n)))
            {
                var next = numbers[numbers.Keys.Where(n => n > missing).Min()];
                yield return Told(Path.Join(Path.GetDirectoryName(next), Invariant($"{series.Key}-{missing:D2}.dxf")), 1, "file", $"is missing, for {Path.GetFileName(next)} is there", Remedy);
            }
        }
    }

    private static IEnumerable<Part> Parts(string file, string text)
    {
        DxfDrawing drawing;
        try
        {
            drawing = DxfDrawing.Read(text);
        }
        catch (DxfFormatException)
        {
            yield break;
        }

        var mm = drawing.Unit == DxfUnit.Inch ? RouterFileCheck.MillimetersPerInch : 1;
        foreach (var path in drawing.Paths.Where(p => p.Path.Closed && p.Layer.Equals(MoldInks.Cut.Name, StringComparison.OrdinalIgnoreCase)))
        {
            var box = path.Path.Bounds();
            yield return new Part(file, path.Line, mm * box.Width, mm * box.Height);
        }
    }

    // The outlines that have no equal on the other side, with the part there that is most like them, and what is left there.
    private static IEnumerable<Difference> Differences(List<Part> single, List<Part> others)
    {
        List<Part> left = [.. others], changed = [];
        foreach (var part in single)
        {
            if (left.FindIndex(o => o.Off(part) <= Same) is >= 0 and var same)
                left.RemoveAt(same);
            else
                changed.Add(part);
        }

        foreach (var part in changed)
        {
            var other = left.Where(o => o.Off(part) <= Alike * Math.Max(o.Width, o.Height)).MinBy(o => o.Off(part));
            if (other is not null)
                left.Remove(other);
            yield return new(part, other, others);
        }

        foreach (var other in left)
            yield return new(null, other, others);
    }

    // Of three that should be alike, the one that stands against two was changed.
    private static IEnumerable<Diagnostic> Changed(Part part, IReadOnlyList<Difference> differences, int sets)
    {
        if (differences is [{ Other: { } a }, { Other: { } b }] && a.As(part).Off(b.As(part)) <= Same)
        {
            yield return Told(part.File, part.Line, MoldInks.Cut.Name, $"the outline is {part.Size} mm, in {a.Place} and {b.Place} {a.SizeAs(part)} mm: this one was changed", Remedy);
            yield break;
        }

        foreach (var (_, other, others) in differences)
        {
            if (other is null)
                yield return Told(part.File, part.Line, MoldInks.Cut.Name, $"no outline of {Path.GetFileName(others[0].File)} is as large as this, {part.Size} mm", Remedy);
            else if (differences.Count < sets)
                yield return Told(other.File, other.Line, MoldInks.Cut.Name, $"the outline is {other.SizeAs(part)} mm, in {part.Place} and another file {part.Size} mm: this one was changed", Remedy);
            else
                yield return Told(part.File, part.Line, MoldInks.Cut.Name, $"the outline is {part.Size} mm, in {other.Place} {other.SizeAs(part)} mm: one of the two was changed", Remedy);
        }
    }

    private static Diagnostic Told(string file, int line, string key, FormattableString problem, string remedy) =>
        new(file, new Place(line, 1), key, FormattableString.Invariant(problem), remedy, "");

    [GeneratedRegex(@"^(?<series>mold|sheet)-(?<number>[0-9]+)\.dxf$", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Numbered();

    /// <summary>An outline without its equal.</summary>
    /// <param name="Single">In a file of its own; null where there is none.</param>
    /// <param name="Other">The part most like it among the others; null where none is.</param>
    /// <param name="Others">The others.</param>
    private sealed record Difference(Part? Single, Part? Other, List<Part> Others);

    /// <summary>An outline to cut.</summary>
    /// <param name="File">The file.</param>
    /// <param name="Line">Its line there.</param>
    /// <param name="Width">Breadth of its bounds [mm].</param>
    /// <param name="Height">Height of its bounds [mm].</param>
    private sealed record Part(string File, int Line, double Width, double Height)
    {
        public bool IsTogether => Path.GetFileName(File) is Together;

        public bool IsOnSheet => Path.GetFileName(File).StartsWith("sheet-", StringComparison.Ordinal);

        public string Size => Invariant($"{Width:0.00} by {Height:0.00}");

        public string Place => Invariant($"{Path.GetFileName(File)} (line {Line})");

        // Parts on sheets are turned by quarters.
        public double Off(Part other) => IsOnSheet ? Math.Min(Off(other.Width, other.Height), Off(other.Height, other.Width)) : Off(other.Width, other.Height);

        // As another lies.
        public string SizeAs(Part other) => As(other).Size;

        public Part As(Part other) => IsOnSheet && Off(other.Width, other.Height) > Off(other.Height, other.Width) ? this with { Width = Height, Height = Width } : this;

        private double Off(double width, double height) => Math.Max(Math.Abs(Width - width), Math.Abs(Height - height));
    }
}
