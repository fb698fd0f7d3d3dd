using System.Buffers;
using Lines.Design.Diagnostics;

namespace Lines.Design.Text;

/// <summary>Turns away what is no page of text before a parser meets it.</summary>
internal static class TextCheck
{
    /// <summary>A design file is a page; a hundred pages are something else [characters].</summary>
    public const int LongestText = 1 << 17;

    /// <summary>Deepest nesting of brackets; the keys need three.</summary>
    public const int DeepestNesting = 16;

    private const string Utf8 = "save it as UTF-8, which an editor offers beside the name of the file";

    /// <summary>Control characters that no text holds.</summary>
    private static readonly SearchValues<char> Controls = SearchValues.Create([.. Enumerable.Range(0, 32).Select(c => (char)c).Where(c => c is not ('\t' or '\n' or '\r'))]);

    /// <summary>The same, and what bytes that are no character of UTF-8 are read as.</summary>
    private static readonly SearchValues<char> NoText = SearchValues.Create([.. Enumerable.Range(0, 32).Select(c => (char)c).Where(c => c is not ('\t' or '\n' or '\r')), '\uFFFD']);

    /// <summary>Reports what makes the text unfit to be parsed.</summary>
    /// <returns>Whether it may be parsed.</returns>
    public static bool Pass(SourceText source, DiagnosticBag faults)
    {
        var text = source.Text;
        if (text.Length > 1 && LooksWide(text))
        {
            faults.AddWithoutExcerpt(Place.Start, "file", "is saved as UTF-16", Utf8);
            return false;
        }

        var odd = text.AsSpan().IndexOfAny(NoText);
        if (odd >= 0 && text.AsSpan().ContainsAny(Controls))
        {
            faults.AddWithoutExcerpt(source.PlaceAt(odd), "file", "is not text: it holds bytes that no text has", "a design file is UTF-8 text in TOML");
            return false;
        }

        if (odd >= 0)
        {
            faults.Add(source.PlaceAt(odd), "file", "holds a byte that is no character of UTF-8", Utf8);
            return false;
        }

        if (text.Length > LongestText)
        {
            faults.Add(
                Place.Start, "file", Invariant($"has {text.Length} characters"), Invariant($"a design file is a page of text, at most {LongestText}"));
            return false;
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            faults.Add(Place.Start, "file", "is empty", "start a design with: lines new FILE --from TEMPLATE");
            return false;
        }

        var bare = LoneReturn(text);
        if (bare >= 0)
        {
            faults.AddWithoutExcerpt(source.PlaceAt(bare), "file", "ends its lines with carriage returns alone", "save it with the line ends of Linux or Windows, LF or CR LF");
            return false;
        }

        var deep = FirstTooDeep(text);
        if (deep >= 0)
        {
            faults.Add(source.PlaceAt(deep), "file", Invariant($"nests brackets more than {DeepestNesting} deep"), "no key of a design needs more than 3");
            return false;
        }

        return true;
    }

    /// <summary>Whether every other one of the first characters is zero, as bytes of UTF-16 are when read as UTF-8.</summary>
    private static bool LooksWide(string text)
    {
        // Its byte order mark is no UTF-8 and leaves two replacement characters.
        var marked = text.StartsWith("\uFFFD\uFFFD", StringComparison.Ordinal);
        var head = text.AsSpan(marked ? 2 : 0);
        return (marked && head.Contains('\0')) || (head.Length > 3 && ((head[0] == '\0' && head[2] == '\0') || (head[1] == '\0' && head[3] == '\0')));
    }

    /// <summary>Index of the first carriage return without a line feed after it, or -1.</summary>
    private static int LoneReturn(string text)
    {
        for (var i = text.IndexOf('\r', StringComparison.Ordinal); i >= 0; i = text.IndexOf('\r', i + 1))
        {
            if (i + 1 == text.Length || text[i + 1] != '\n')
                return i;
        }

        return -1;
    }

    /// <summary>Index of the first bracket nested too deep outside strings and comments, or -1.</summary>
    private static int FirstTooDeep(string text)
    {
        var depth = 0;
        for (var i = 0; i < text.Length; i++)
        {
            switch (text[i])
            {
                case '#':
                    i = LineEnd(text, i);
                    break;
                case '"' or '\'':
                    i = StringEnd(text, i);
                    break;
                case '[' or '{':
                    if (++depth > DeepestNesting)
                        return i;
                    break;
                case ']' or '}':
                    depth = Math.Max(0, depth - 1);
                    break;
            }
        }

        return -1;
    }

    private static int LineEnd(string text, int from)
    {
        var end = text.IndexOf('\n', from);
        return end < 0 ? text.Length : end;
    }

    /// <summary>Index of the last character of a string that begins at <paramref name="from"/>; a line's end ends a broken one.</summary>
    private static int StringEnd(string text, int from)
    {
        var quote = text[from];
        var triple = new string(quote, 3);
        if (string.CompareOrdinal(text, from, triple, 0, 3) == 0)
        {
            var close = text.IndexOf(triple, from + 3, StringComparison.Ordinal);
            return close < 0 ? text.Length : close + 2;
        }

        for (var i = from + 1; i < text.Length; i++)
        {
            if (text[i] == '\n' || text[i] == quote)
                return i;
            if (text[i] == '\\' && quote == '"')
                i++;
        }

        return text.Length;
    }
}
