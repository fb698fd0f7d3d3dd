using System.Globalization;
using System.Text.RegularExpressions;
using Lines.Kernel.Units;

namespace Lines.Design.Text;

/// <summary>Says of a value that is no TOML what its writer most likely meant.</summary>
internal static partial class ValueAdvice
{
    /// <summary>No pattern here takes longer than the text is long.</summary>
    private const RegexOptions Plain = RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture;

    private const string Curled = "“”„‟«»‘’‚‛＂＇";

    /// <summary>What to say of a value, with the place in it; an empty problem where it is of no known kind.</summary>
    /// <param name="key">Its key, to show it in the remedy.</param>
    /// <param name="value">All that follows the equals sign, trimmed.</param>
    public static (string Problem, string Remedy, int From, int Length) For(string key, string value)
    {
        if (value[0] is '"' or '\'')
            return ForQuoted(key, value);
        var plain = WithoutComment(value);
        if (ForBare(key, plain) is { Problem.Length: > 0 } bare)
            return (bare.Problem, bare.Remedy, 0, plain.Length);
        var end = plain.IndexOf(' ', StringComparison.Ordinal);
        return end > 0 && plain[0] != '[' ? Beyond(plain, end) : ("", "", 0, 0);
    }

    /// <summary>The value without a comment behind it.</summary>
    public static string WithoutComment(string value)
    {
        var hash = value.IndexOf('#', value is ['"' or '\'', ..] ? Math.Max(0, Closing(value)) : 0);
        return (hash < 0 ? value : value[..hash]).TrimEnd();
    }

    /// <summary>A value as it would be right, as far as that can be told: in quotes unless it is a number, a truth or a list.</summary>
    public static string AsValue(string value)
    {
        var text = SourceText.Shown(value.Trim());
        if (text.Length == 0)
            return "...";
        return text[0] is '"' or '\'' or '[' || text is "true" or "false" || double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _)
            ? text
            : Quoted(text);
    }

    private static (string Problem, string Remedy) ForBare(string key, string value)
    {
        if (Curled.Contains(value[0], StringComparison.Ordinal))
            return ("has curled quotes", $"write {key} = {Quoted(value.Trim([.. Curled, '"']))} with straight ones");
        if (HasDecimalComma(value))
            return ($"has a comma in {SourceText.Shown(value)}", $"the decimal mark is a point, so write {key} = {SourceText.Shown(value.Replace(',', '.'))}");
        if (Length.TryParse(value, out _, out _) || Angle.TryParse(value, out _, out _))
            return ("has a unit outside quotes", $"write {key} = {Quoted(value)}");
        if (PerCent().Match(value) is { Success: true } cent)
            return ("is in per cent", Invariant($"write {key} = {decimal.Parse(cent.Groups["number"].Value, CultureInfo.InvariantCulture) / 100:0.######}"));
        if (BrokenNumber().IsMatch(value))
            return ($"is written {value}", $"a number has figures before its point and after it, so write {key} = {decimal.Parse(value, NumberStyles.Float, CultureInfo.InvariantCulture).ToString("0.0#####", CultureInfo.InvariantCulture)}");
        if (value[0] == '[')
        {
            return value.Contains(']', StringComparison.Ordinal)
                ? ("is not a list", $"write members in quotes with commas between, like {key} = [\"1.30 m\", \"3.90 m\"]")
                : ("has no closing bracket", $"close the list, like {key} = [\"1.30 m\", \"3.90 m\"]");
        }

        if (YesOrNo.Read(value) is { } meant)
            return ($"has {value} where {meant} is meant", $"write {key} = {meant}");
        return IsWords(value) ? ("has text without quotes", $"write {key} = {Quoted(value)}") : ("", "");
    }

    private static (string Problem, string Remedy, int From, int Length) ForQuoted(string key, string value)
    {
        var close = Closing(value);
        if (QuotedLength(value, close) is var (text, meant))
        {
            return text == close
                ? ("", "", 0, 0)
                : ("has quotes within its quotes", $"write {key} = \"{meant}\"", 0, text + 1);
        }

        if (close < 0)
            return ("has quotes that are not closed on its line", $"close them, like {key} = {Quoted(value.Split('#')[0].Trim().Trim(value[0]))}", 0, WithoutComment(value).Length);
        var rest = value[(close + 1)..].TrimStart();
        if (rest.Length > 0 && rest[0] != '#')
            return Beyond(WithoutComment(value), close + 1);
        return value[0] == '"' && value[..close].Contains('\\', StringComparison.Ordinal)
            ? ("has a backslash, which begins a special character between double quotes", $"write it between single ones: {key} = '{SourceText.Shown(value[1..close])}'", 0, close + 1)
            : ("", "", 0, 0);
    }

    /// <summary>A length in quotes that holds quotes itself, as 17' 6" does: the index of the quote that ends it, and the length without quotes.</summary>
    private static (int End, string Meant)? QuotedLength(string value, int close)
    {
        for (var end = value.Length - 1; end > Math.Max(close, 0); end--)
        {
            if (value[end] == value[0] && Length.TryParse(value[1..end], out _, out _))
                return (end, InWords(value[1..end]));
        }

        // The mark for inches was taken for the closing quote, and none follows.
        return close > 0 && close < value.Length - 1 && value[0] == '"' && value[close..].StartsWith("\"\"", StringComparison.Ordinal) && Length.TryParse(value[1..(close + 1)], out _, out _)
            ? (close + 1, InWords(value[1..(close + 1)]))
            : null;
    }

    private static string InWords(string length) =>
        length.Replace("'", " ft", StringComparison.Ordinal).Replace("\"", " in", StringComparison.Ordinal).Trim();

    /// <summary>What stands on a line beyond its value.</summary>
    private static (string Problem, string Remedy, int From, int Length) Beyond(string value, int end)
    {
        while (end < value.Length && value[end] == ' ')
            end++;
        var rest = value[end..];
        if (rest is ";" or ",")
            return ($"ends with a {(rest is ";" ? "semicolon" : "comma")}", "leave it out", end, 1);
        return rest.StartsWith("//", StringComparison.Ordinal) || rest.StartsWith("--", StringComparison.Ordinal) || rest.StartsWith("; ", StringComparison.Ordinal)
            ? ("has a comment that does not begin with #", "write # before it", end, rest.Length)
            : ($"goes on after its value with {SourceText.Shown(rest, 30)}", "write every key on a line of its own, and comments after #", end, rest.Length);
    }

    /// <summary>Index of the quote that closes the one a value begins with, or -1.</summary>
    private static int Closing(string value)
    {
        for (var i = 1; i < value.Length; i++)
        {
            if (value[i] == value[0])
                return i;
            if (value[i] == '\\' && value[0] == '"')
                i++;
        }

        return -1;
    }

    private static string Quoted(string value)
    {
        var text = SourceText.Shown(value.Trim());
        return text.Contains('"', StringComparison.Ordinal) ? $"'{text}'" : $"\"{text}\"";
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

    [GeneratedRegex(@"^(?<number>[0-9]{1,6}(\.[0-9]{1,6})?)\s*%$", Plain)]
    private static partial Regex PerCent();

    [GeneratedRegex(@"^[+-]?(\.[0-9]{1,9}|[0-9]{1,9}\.|0[0-9]{1,9}(\.[0-9]{1,9})?)$", Plain)]
    private static partial Regex BrokenNumber();
}
