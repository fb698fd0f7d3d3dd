using Lines.Design.Diagnostics;

namespace Lines.Design.Text;

/// <summary>Turns away what is no page of text before a parser meets it.</summary>
internal static class TextCheck
{
    /// <summary>A design file is a page; a hundred pages are something else [characters].</summary>
    public const int LongestText = 1 << 17;

    /// <summary>Deepest nesting of brackets; the keys need three.</summary>
    public const int DeepestNesting = 16;

    /// <summary>Reports what makes the text unfit to be parsed.</summary>
    /// <returns>Whether it may be parsed.</returns>
    public static bool Pass(SourceText source, DiagnosticBag faults)
    {
        var text = source.Text;
        if (text.Length > LongestText)
        {
            faults.Add(
                Place.Start, "file", Invariant($"has {text.Length} characters"), Invariant($"a design file is a page of text, at most {LongestText}"));
            return false;
        }

        var odd = text.AsSpan().IndexOfAny('\0', '\uFFFD');
        if (odd >= 0)
        {
            faults.Add(source.PlaceAt(odd), "file", "is not text: it holds bytes that are no characters", "a design file is UTF-8 text in TOML");
            return false;
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            faults.Add(Place.Start, "file", "is empty", "start a design with: lines new FILE --from TEMPLATE");
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
