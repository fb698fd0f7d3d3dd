using System.Globalization;
using System.Text;

namespace Lines.Design.Text;

/// <summary>The text of a design file with its path as the user named it, and its lines.</summary>
public sealed class SourceText
{
    /// <summary>An excerpt shows no more of a line than this: the rest of a line of a megabyte helps nobody.</summary>
    private const int LongestExcerpt = 110;

    private readonly List<int> _starts = [0];

    /// <summary>Takes a text; a byte order mark at its head is dropped.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The path as the user named it.</param>
    public SourceText(string text, string path)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(path);
        Text = text.StartsWith('\uFEFF') ? text[1..] : text;
        Path = path;
        for (var i = Text.IndexOf('\n', StringComparison.Ordinal); i >= 0; i = Text.IndexOf('\n', i + 1))
            _starts.Add(i + 1);
    }

    /// <summary>The text, without byte order mark.</summary>
    public string Text { get; }

    /// <summary>The path as the user named it.</summary>
    public string Path { get; }

    /// <summary>The place of one character.</summary>
    /// <param name="offset">Its index in <see cref="Text"/>.</param>
    public Place PlaceAt(int offset)
    {
        var index = _starts.BinarySearch(offset);
        var line = index >= 0 ? index : ~index - 1;
        return new Place(line + 1, offset - _starts[line] + 1);
    }

    /// <summary>A line without its end; empty where there is no such line.</summary>
    /// <param name="line">The line, from 1.</param>
    public string LineAt(int line)
    {
        if (line < 1 || line > _starts.Count)
            return "";
        var start = _starts[line - 1];
        var end = line < _starts.Count ? _starts[line] - 1 : Text.Length;
        return Text[start..end].TrimEnd('\r');
    }

    /// <summary>The line at a place and under it a caret line; empty for an empty line.</summary>
    /// <remarks>A long line is cut to the part around the place; control characters are shown as a dot in the middle.</remarks>
    /// <param name="place">The place.</param>
    public string Excerpt(Place place)
    {
        var line = LineAt(place.Line);
        if (line.Length == 0)
            return "";
        var from = place.Column > 80 ? place.Column - 41 : 0;
        from = Math.Min(from, Math.Max(0, line.Length - 1));
        var shown = line.Substring(from, Math.Min(LongestExcerpt, line.Length - from));
        var number = place.Line.ToString(CultureInfo.InvariantCulture);
        var caretFrom = Math.Clamp(place.Column - 1 - from, 0, shown.Length);
        var carets = Math.Max(1, Math.Min(place.Length, shown.Length - caretFrom));
        var under = new StringBuilder();
        foreach (var c in shown[..caretFrom])
            under.Append(c == '\t' ? '\t' : ' ');
        under.Append('^', carets);
        var dots = from > 0 ? "…" : "";
        return $" {number} | {dots}{Printable(shown)}{(from + shown.Length < line.Length ? "…" : "")}\n"
            + $" {new string(' ', number.Length)} | {(from > 0 ? " " : "")}{under}";
    }

    /// <summary>A text fit to be shown in a message: <see cref="Printable"/> and cut where it is long.</summary>
    internal static string Shown(string text, int longest = 60)
    {
        var cut = text.Length <= longest ? text : string.Concat(text.AsSpan(0, longest), "…");
        return Printable(cut).Replace('\n', '·').Replace('\t', ' ');
    }

    /// <summary>A text fit to be shown: control characters and broken halves of characters become a dot in the middle.</summary>
    internal static string Printable(string text)
    {
        var shown = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                shown.Append(c).Append(text[++i]);
            else
                shown.Append((char.IsControl(c) && c != '\t') || char.IsSurrogate(c) || c is >= '\u202A' and <= '\u202E' ? '·' : c);
        }

        return shown.ToString();
    }
}
