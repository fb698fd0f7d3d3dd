using System.Text;
using System.Text.RegularExpressions;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Lines.Design.Text;

/// <summary>One line that is no TOML.</summary>
/// <param name="Place">Where the parser stumbled.</param>
/// <param name="Key">The key or table it seems to be meant for.</param>
/// <param name="Problem">What is wrong.</param>
/// <param name="Remedy">What would be right.</param>
/// <param name="IsWhole">Whether the name is whole, not a key within the table above it.</param>
internal sealed record BrokenLine(Place Place, string Key, string Problem, string Remedy, bool IsWhole);

/// <summary>Parses a text with faults in its syntax so that every faulty line is told and none of the sound ones.</summary>
/// <remarks>
/// <b>Method.</b> After a fault a parser is out of step and finds faults that are none. So the first faulty line is set aside (a
/// table's head is mended, for the keys below belong to it) and the text is parsed again, until no fault is left.
/// </remarks>
internal static partial class SyntaxMender
{
    /// <summary>No pattern here takes longer than the text is long.</summary>
    private const RegexOptions Plain = RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture;

    /// <summary>Parsing stops after this many characters in all, so that time stays in bounds for a text that is nothing but faults.</summary>
    private const long MostParsed = 1L << 19;

    /// <summary>Lines a list is looked for above a fault.</summary>
    private const int LongestList = 120;

    /// <param name="source">The text.</param>
    /// <param name="heads">The names of the tables there are, with the head line of each, for lines that are meant to begin one.</param>
    public static (DocumentSyntax Document, IReadOnlyList<BrokenLine> Broken) Parse(SourceText source, IReadOnlyDictionary<string, string> heads)
    {
        var lines = source.Text.Split('\n');
        var broken = new List<BrokenLine>();
        for (long parsed = 0; ;)
        {
            // The line end after the last line is for the parser, which throws on an escape that the text's end cuts off.
            var text = string.Join('\n', lines) + '\n';
            parsed += text.Length + 1;
            var document = SyntaxParser.Parse(text, source.Path, validate: false);
            if (!document.HasErrors)
                return (document, broken);
            var faults = document.Diagnostics.OrderBy(d => d.Span.Start.Offset).ToList();
            if (parsed > MostParsed)
            {
                foreach (var fault in faults.DistinctBy(f => f.Span.Start.Line).ExceptBy(broken.Select(b => b.Place.Line), f => f.Span.Start.Line + 1))
                    broken.Add(Judge(lines, fault, heads));
                return (document, broken);
            }

            var first = Judge(lines, faults[0], heads);
            var index = first.Place.Line - 1;
            if (lines[index].Length == 0)
                return (document, broken.Count > 0 ? broken : [first]);
            var again = broken.Any(b => b.Place.Line == first.Place.Line);
            if (!again)
                broken.Add(first);
            for (var k = index + 1; OpensList(lines[index]) && k < lines.Length && IsMember(lines[k]); k++)
                lines[k] = "";
            lines[index] = again ? "" : Mended(lines[index], heads);
        }
    }

    private static BrokenLine Judge(string[] lines, DiagnosticMessage fault, IReadOnlyDictionary<string, string> heads)
    {
        var at = Math.Min(fault.Span.Start.Line, lines.Length - 1);
        // A fault that shows only at the beginning of the next line, or of the next token, is of the line before.
        while (at > 0 && lines[at].AsSpan().Trim(" \t\r").IsEmpty)
            at--;
        at = Blamed(lines, at);
        var column = at == fault.Span.Start.Line ? fault.Span.Start.Column + 1 : lines[at].TrimEnd().Length + 1;
        var advice = SyntaxAdvice.For(lines[at].TrimEnd('\r'), fault.Message, heads);
        var place = advice.From is { } from ? new Place(at + 1, from + 1, Math.Max(1, advice.Length)) : new Place(at + 1, column);
        var whole = advice.Key is "file" || lines[at].TrimStart().StartsWith('[') || heads.ContainsKey(advice.Key);
        return new BrokenLine(place, advice.Key, advice.Problem, advice.Remedy, whole);
    }

    /// <summary>The line to blame for a fault: a list that is not closed shows only where the next key, or the end, is met.</summary>
    private static int Blamed(string[] lines, int at)
    {
        for (var above = at; above >= Math.Max(0, at - LongestList); above--)
        {
            if (OpensList(lines[above]))
                return above;
            var passed = above == at ? StatementStart().IsMatch(lines[above]) || IsMember(lines[above]) && IsLast(lines, above) : IsMember(lines[above]);
            if (!passed && lines[above].TrimStart() is not ("" or ['#', ..]))
                return at;
        }

        return at;
    }

    private static bool OpensList(string line) => OpenList().IsMatch(line);

    private static bool IsMember(string line) => line.TrimStart() is ['"' or '\'' or ']', ..];

    private static bool IsLast(string[] lines, int at) => lines.Skip(at + 1).All(string.IsNullOrWhiteSpace);

    [GeneratedRegex(@"^[^#=""]*=\s*\[[^\]]*$", Plain)]
    private static partial Regex OpenList();

    [GeneratedRegex(@"^\s*([\w.-]+\s*=|\[)", Plain)]
    private static partial Regex StatementStart();

    /// <summary>The head of a table closed where it is not, so that the keys below keep their table; else nothing.</summary>
    private static string Mended(string line, IReadOnlyDictionary<string, string> heads)
    {
        if (SyntaxAdvice.HeadMeant(line, heads) is { } meant)
            return heads[meant];
        if (!line.TrimStart().StartsWith('['))
            return "";
        var name = new StringBuilder();
        foreach (var c in line.Trim().TrimStart('['))
        {
            if (!char.IsAsciiLetterOrDigit(c) && c is not ('_' or '-' or '.'))
                break;
            name.Append(c);
        }

        var path = name.ToString().Trim('.');
        return path.Length == 0 || path.Contains("..", StringComparison.Ordinal) ? "" : heads.GetValueOrDefault(path, $"[{path}]");
    }
}
