using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>Takes numbers, fractions and unit names off the front of a text, in plain digits and points whatever the locale.</summary>
/// <remarks>The hyphens, dashes, primes and curled quotes of typesetters count as what a keyboard has: our own tables are set with the hyphen that does
/// not break, and a word processor curls quotes.</remarks>
internal ref struct UnitScanner(string text)
{
    /// <summary>A quantity needs no more than this; longer text is not one.</summary>
    public const int LongestText = 48;

    /// <summary>The fractions of the type case, as a keyboard's auto-correction puts them.</summary>
    private const string Vulgar = "½¼¾⅛⅜⅝⅞";

    private static readonly double[] VulgarValues = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875];

    private readonly ReadOnlySpan<char> _text = Plain(text);
    private int _at;

    public readonly bool AtEnd => _at >= _text.Length;

    public readonly char Next => AtEnd ? '\0' : _text[_at];

    public readonly string Rest => _text[_at..].ToString();

    public void SkipBlanks()
    {
        while (!AtEnd && (_text[_at] is ' ' or '\t'))
            _at++;
    }

    public bool Take(char wanted)
    {
        if (Next != wanted)
            return false;
        _at++;
        return true;
    }

    /// <summary>Takes a run of ASCII digits.</summary>
    public bool TakeWhole(out long value)
    {
        var start = _at;
        value = 0;
        while (!AtEnd && char.IsAsciiDigit(_text[_at]) && _at - start < 15)
            value = (value * 10) + (_text[_at++] - '0');
        return _at > start && !char.IsAsciiDigit(Next);
    }

    /// <summary>Takes <c>29</c>, <c>29.125</c>, <c>1/8</c>, <c>29 1/8</c>, <c>29-1/8</c> or <c>29½</c>; nothing moves where there is none.</summary>
    /// <param name="value">The number, not negative.</param>
    /// <param name="whole">Whether it was written without point and fraction.</param>
    /// <param name="problem">What is wrong with a number that begins well; null otherwise.</param>
    public bool TakeNumber(out double value, out bool whole, out string? problem)
    {
        problem = null;
        value = 0;
        whole = false;
        if (TakeVulgar(out value))
            return true;
        if (!TakeDecimal(out value, out whole))
            return false;

        if (whole && Next == '/')
        {
            _at++;
            whole = false;
            return TakeDenominator(value, ref value, out problem);
        }

        var back = _at;
        if (!Take('-'))
            SkipBlanks();
        if (TakeVulgar(out var part))
        {
            problem = whole ? null : "mixes a decimal point and a fraction";
            value += part;
            whole = false;
            return true;
        }

        if (TakeWhole(out var numerator) && Take('/'))
        {
            var fraction = 0.0;
            TakeDenominator(numerator, ref fraction, out problem);
            if (problem is null && !whole)
                problem = "mixes a decimal point and a fraction";
            if (problem is null && fraction >= 1)
                problem = Invariant($"has a fraction of {fraction} beside a whole number");
            value += fraction;
            whole = false;
            return true;
        }

        _at = back;
        return true;
    }

    /// <summary>Takes a run of letters, or one of the marks ' " and ° (two single marks are a double one).</summary>
    public string TakeUnit()
    {
        SkipBlanks();
        if (Take('\''))
            return Take('\'') ? "\"" : "'";
        if (Take('"'))
            return "\"";
        if (Take('°'))
            return "°";

        var start = _at;
        while (!AtEnd && char.IsLetter(_text[_at]))
            _at++;
        return _text[start.._at].ToString();
    }

    /// <summary>The text with the marks of typesetters as a keyboard has them, one for one.</summary>
    private static string Plain(string text) => string.Create(text.Length, text, static (plain, from) =>
    {
        for (var k = 0; k < plain.Length; k++)
        {
            plain[k] = from[k] switch
            {
                '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2212' => '-',
                '\u2032' or '\u2019' or '\u2018' => '\'',
                '\u2033' or '\u201D' or '\u201C' => '"',
                '\u00A0' or '\u2009' or '\u202F' => ' ',
                '\u00BA' or '\u02DA' => '°',
                '\u2044' => '/',
                var c => c,
            };
        }
    });

    private bool TakeVulgar(out double value)
    {
        var index = AtEnd ? -1 : Vulgar.IndexOf(Next, StringComparison.Ordinal);
        value = index < 0 ? 0 : VulgarValues[index];
        if (index >= 0)
            _at++;
        return index >= 0;
    }

    private bool TakeDecimal(out double value, out bool whole)
    {
        var start = _at;
        while (!AtEnd && char.IsAsciiDigit(_text[_at]))
            _at++;
        var digits = _at - start;
        whole = true;
        if (Next == '.')
        {
            whole = false;
            _at++;
            while (!AtEnd && char.IsAsciiDigit(_text[_at]))
            {
                _at++;
                digits++;
            }
        }

        value = 0;
        if (digits == 0)
        {
            _at = start;
            return false;
        }

        return double.TryParse(_text[start.._at], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }

    private bool TakeDenominator(double numerator, ref double value, out string? problem)
    {
        problem = null;
        if (!TakeWhole(out var denominator) || denominator == 0)
        {
            problem = "has a fraction without a denominator";
            return true;
        }

        value = numerator / denominator;
        return true;
    }
}
