using Lines.Kernel.Units;

namespace Lines.Design.Text;

/// <summary>Says of a line that is no TOML what its writer most likely meant.</summary>
internal static class SyntaxAdvice
{
    /// <summary>Key, problem and remedy for one broken line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="message">What the parser said, for a line of no known kind.</param>
    public static (string Key, string Problem, string Remedy) For(string line, string message)
    {
        var code = line.Trim();
        if (code.Length > 400)
            return ("file", "is not TOML here", "a line of a design file is a [table], a key = value or a # comment");
        if (code.StartsWith('['))
        {
            var name = code.TrimStart('[').Split('#', ']', '=')[0].Trim();
            if (name.Length == 0)
                return ("file", "has brackets without a table's name", "write it between them, like [hull]");
            var problem = code.Contains(']', StringComparison.Ordinal) ? "is not a table's name in brackets" : "has no closing bracket";
            return (SourceText.Shown(name), problem, $"write [{SourceText.Shown(name)}] alone on its line");
        }

        var equals = code.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
            return ("file", "has a line that is neither a table nor a key with a value", "write [table], key = value or # comment");

        var key = SourceText.Shown(code[..equals].Trim());
        var value = WithoutComment(code[(equals + 1)..].Trim());
        if (key.Length == 0)
            return ("file", "has a value without a key before its =", "write key = value");
        if (value.Length == 0)
            return (key, "has no value", $"write one after the =, like {key} = ...");
        if (HasDecimalComma(value))
            return (key, $"has a comma in {SourceText.Shown(value)}", $"the decimal mark is a point, so write {key} = {SourceText.Shown(value.Replace(',', '.'))}");
        if (Length.TryParse(value, out _, out _) || Angle.TryParse(value, out _, out _))
            return (key, $"has a unit outside quotes", $"write {key} = {Quoted(value)}");
        if (value[0] is '"' or '\'' && value.Count(c => c == value[0]) % 2 == 1)
            return (key, "has quotes that are not closed on its line", $"close them, like {key} = {Quoted(value.Trim(value[0]))}");
        if (value[0] == '[')
            return (key, "is not a list", $"write members in quotes with commas between, like {key} = [\"1.30 m\", \"3.90 m\"]");
        if (value.ToUpperInvariant() is "YES" or "ON" or "TRUE")
            return (key, $"has {value} where true is meant", $"write {key} = true");
        if (value.ToUpperInvariant() is "NO" or "OFF" or "FALSE")
            return (key, $"has {value} where false is meant", $"write {key} = false");
        if (IsWords(value))
            return (key, $"has text without quotes", $"write {key} = {Quoted(value)}");
        var said = message.Split('\n', '\r')[0];
        return (key, $"is not TOML ({SourceText.Shown(said, 90)})", "write key = value");
    }

    private static string WithoutComment(string value)
    {
        var hash = value.IndexOf('#', StringComparison.Ordinal);
        return hash < 0 || value.Count(c => c is '"') > 1 ? value : value[..hash].Trim();
    }

    private static string Quoted(string value)
    {
        var text = SourceText.Shown(value.Trim());
        return text.Contains('"', StringComparison.Ordinal) ? $"'''{text}'''" : $"\"{text}\"";
    }

    /// <summary>Whether the value is one number with a comma for its point.</summary>
    private static bool HasDecimalComma(string value)
    {
        var comma = value.IndexOf(',', StringComparison.Ordinal);
        return comma > 0 && comma < value.Length - 1 && comma == value.LastIndexOf(',')
            && value.TrimStart('+', '-').All(c => char.IsAsciiDigit(c) || c == ',');
    }

    private static bool IsWords(string value) =>
        char.IsLetter(value[0]) && value.All(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '_');
}
