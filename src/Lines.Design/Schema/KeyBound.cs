namespace Lines.Design.Schema;

/// <summary>Gives the sound number of a key, SI, or null where the file has none.</summary>
/// <param name="path">The key with its tables.</param>
public delegate double? KeyNumbers(string path);

/// <summary>A limit that other keys put on one key, within its own range.</summary>
/// <param name="IsUpper">Whether values above the limit are refused; otherwise those below it.</param>
/// <param name="Words">The limit in words: <c>the draft</c>.</param>
/// <param name="From">The keys the limit follows from.</param>
/// <param name="Limit">The limit, SI; null where nothing follows from what is given.</param>
/// <param name="Problem">What a value beyond it does, one clause that follows the value.</param>
public sealed record KeyBound(bool IsUpper, string Words, IReadOnlyList<string> From, Func<KeyNumbers, double?> Limit, string Problem)
{
    /// <summary>Whether the limit itself is refused too.</summary>
    public bool Open { get; init; }

    /// <summary>The part of the one key it follows from, where it is that; null for other limits.</summary>
    public double? Part { get; private init; }

    /// <summary>Whether the words name the limit, so that they can stand beside its value.</summary>
    public bool Named { get; init; } = true;

    /// <summary>Which values are allowed, without the limit: <c>less than</c>.</summary>
    public string Side => (IsUpper, Open) switch
    {
        (true, true) => "less than",
        (true, false) => "at most",
        (false, true) => "more than",
        _ => "at least",
    };

    /// <summary>What else would help, after the value that would be right.</summary>
    public string Otherwise { get; init; } = "";

    /// <summary>At most a part of another key.</summary>
    /// <param name="words">The limit in words.</param>
    /// <param name="from">The other key.</param>
    /// <param name="part">The part of it.</param>
    /// <param name="problem">What more does.</param>
    public static KeyBound AtMost(string words, string from, double part, string problem) => new(true, words, [from], n => n(from) * part, problem) { Part = part };

    /// <summary>At least a part of another key.</summary>
    /// <param name="words">The limit in words.</param>
    /// <param name="from">The other key.</param>
    /// <param name="part">The part of it.</param>
    /// <param name="problem">What less does.</param>
    public static KeyBound AtLeast(string words, string from, double part, string problem) => new(false, words, [from], n => n(from) * part, problem) { Part = part };

    /// <summary>Less than another key.</summary>
    /// <param name="words">The limit in words.</param>
    /// <param name="from">The other key.</param>
    /// <param name="problem">What as much or more does.</param>
    public static KeyBound LessThan(string words, string from, string problem) => AtMost(words, from, 1, problem) with { Open = true };

    /// <summary>More than another key.</summary>
    /// <param name="words">The limit in words.</param>
    /// <param name="from">The other key.</param>
    /// <param name="problem">What as much or less does.</param>
    public static KeyBound MoreThan(string words, string from, string problem) => AtLeast(words, from, 1, problem) with { Open = true };

    /// <summary>Whether a value keeps to the limit, to rounding.</summary>
    /// <param name="value">The value, SI.</param>
    /// <param name="limit">The limit, SI.</param>
    public bool Allows(double value, double limit)
    {
        const double rounding = 1e-12;
        var beyond = IsUpper ? value - limit : limit - value;
        return Open ? beyond < -rounding : beyond <= rounding;
    }
}
