using System.Globalization;
using System.Text.RegularExpressions;

namespace Lines.Design.Text;

/// <summary>What is to be said of a line that is no TOML.</summary>
/// <param name="Key">The key or table it seems to be meant for, or <c>file</c>.</param>
/// <param name="Problem">What is wrong.</param>
/// <param name="Remedy">What would be right.</param>
/// <param name="From">Index in the line where the fault stands; null for where the parser stumbled.</param>
/// <param name="Length">Characters it covers.</param>
internal readonly record struct Advice(string Key, string Problem, string Remedy, int? From = null, int Length = 1);

/// <summary>Says of a line that is no TOML what its writer most likely meant.</summary>
internal static partial class SyntaxAdvice
{
    /// <summary>No pattern here takes longer than the text is long.</summary>
    private const RegexOptions Plain = RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture;

    /// <summary>Longer lines are not looked into.</summary>
    private const int LongestLine = 400;

    /// <summary>What to say of one broken line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="message">What the parser said, for a line of no known kind.</param>
    /// <param name="heads">The names of the tables there are, with the head line of each.</param>
    public static Advice For(string line, string message, IReadOnlyDictionary<string, string> heads)
    {
        var code = line.Trim();
        if (code.Length > LongestLine)
            return new("file", "is not TOML here", "a line of a design file is a [table], a key = value or a # comment");
        if (code.Length == 0)
            return new("file", "is not TOML here", "a line of a design file is a [table], a key = value or a # comment");
        var indent = line.Length - line.TrimStart().Length;
        if (Invisible(line) is { } stranger)
            return stranger;
        if (HeadMeant(line, heads) is { } table && !code.StartsWith('['))
            return new(table, "has no square brackets around a table's name", $"write {heads[table]} alone on its line", indent, code.Length);
        if (code.StartsWith('['))
            return ForHead(code, indent, heads);
        var equals = line.IndexOf('=', StringComparison.Ordinal);
        return equals < 0 ? ForNoValue(code, indent) : ForPair(line, equals, indent, message);
    }

    /// <summary>The table a line is meant to begin, if it is one of those there are: <c>(hull.bow)</c>, <c>hull.bow:</c>.</summary>
    public static string? HeadMeant(string line, IReadOnlyDictionary<string, string> heads)
    {
        var name = line.Split('#')[0].Trim().Trim('(', ')', '{', '}', '<', '>', '[', ']', ':', '=', ' ', '"');
        return heads.ContainsKey(name) ? name : null;
    }

    /// <summary>A character nobody sees where TOML wants a blank or none: pages and word processors put them in.</summary>
    private static Advice? Invisible(string line)
    {
        var quote = line.IndexOfAny(['"', '\'', '#']);
        var outside = quote < 0 ? line : line[..quote];
        var at = outside.ToList().FindIndex(IsInvisible);
        if (at < 0)
            return null;
        var name = string.Concat(outside.Split('=')[0].Where(c => !IsInvisible(c))).Trim();
        return new(
            LoneName().IsMatch(name) ? name : "file",
            Invariant($"has a character that cannot be seen (U+{(int)line[at]:X4})"),
            "delete it, and type a blank where one is wanted",
            at);
    }

    private static bool IsInvisible(char c) =>
        char.GetUnicodeCategory(c) == UnicodeCategory.Format || (char.GetUnicodeCategory(c) == UnicodeCategory.SpaceSeparator && c != ' ');

    private static Advice ForHead(string code, int indent, IReadOnlyDictionary<string, string> heads)
    {
        var name = code.TrimStart('[').Split('#', ']', '=')[0].Trim();
        if (name.Length == 0)
            return new("file", "has brackets without a table's name", "write it between them, like [hull]", indent, code.Length);
        var problem = code.Contains(']', StringComparison.Ordinal) ? "is not a table's name in brackets" : "has no closing bracket";
        return new(SourceText.Shown(name), problem, $"write {heads.GetValueOrDefault(name, $"[{SourceText.Shown(name)}]")} alone on its line", indent, code.Length);
    }

    private static Advice ForNoValue(string code, int indent)
    {
        if (ForeignComment().IsMatch(code))
            return new("file", "has a comment that does not begin with #", "write # before it", indent, code.Length);
        if (PairWithout().Match(code) is { Success: true } pair)
        {
            var (key, value) = (pair.Groups["key"].Value, ValueAdvice.WithoutComment(pair.Groups["value"].Value));
            var remedy = $"write {key} = {ValueAdvice.AsValue(value)}";
            return pair.Groups["colon"].Success
                ? new(key, "has a colon where its = should be", remedy, indent + code.IndexOf(':', StringComparison.Ordinal))
                : new(key, "has no = before its value", remedy, indent, code.Length);
        }

        if (LoneName().IsMatch(code))
            return new(code, "has neither = nor value", $"write {code} = and its value", indent, code.Length);
        if (code[0] is '"' or '\'')
            return new("file", "has a text without a key", "write key = \"text\"; members of a list have commas between and brackets around them", indent, code.Length);
        return new("file", "has a line that is neither a table nor a key with a value", "write [table], key = value or # comment");
    }

    private static Advice ForPair(string line, int equals, int indent, string message)
    {
        var key = SourceText.Shown(line[..equals].Trim());
        var from = equals + 1;
        while (from < line.Length && char.IsWhiteSpace(line[from]))
            from++;
        var value = line[from..].TrimEnd();
        if (key.Length == 0)
            return new("file", "has a value without a key before its =", "write key = value", indent);
        if (value.Length == 0 || value[0] == '#')
            return new(key, "has no value", $"write one after the =, like {key} = ...", indent, equals - indent + 1);
        if (value[0] == '=')
            return new(key, "has two = signs", $"write {key} = {ValueAdvice.AsValue(ValueAdvice.WithoutComment(value.TrimStart('=', ' ')))}", from);
        if (NameOfWords().IsMatch(key))
            return new(key, "is a name with a blank in it", $"write {key.Replace(' ', '_')} = {ValueAdvice.AsValue(ValueAdvice.WithoutComment(value))}", indent, key.Length);
        var (problem, remedy, at, length) = ValueAdvice.For(key, value);
        if (problem.Length > 0)
            return new(key, problem, remedy, from + at, length);
        var said = message.Split('\n', '\r')[0];
        return new(key, $"is not TOML ({SourceText.Shown(said, 90)})", "write key = value");
    }

    [GeneratedRegex(@"^(//|;|--|%|\*)", Plain)]
    private static partial Regex ForeignComment();

    [GeneratedRegex("""^(?<key>[\w.-]+)(\s*(?<colon>:)\s*(?<value>.+)|\s+(?<value>["'“‘\[\d.+-].*|true\b.*|false\b.*))$""", Plain)]
    private static partial Regex PairWithout();

    [GeneratedRegex(@"^[\w.-]+$", Plain)]
    private static partial Regex LoneName();

    [GeneratedRegex(@"^\w+( +\w+)+$", Plain)]
    private static partial Regex NameOfWords();
}
