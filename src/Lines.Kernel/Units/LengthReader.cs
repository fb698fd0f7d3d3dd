using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>Reads lengths in every notation, with a clear word about what is not one.</summary>
internal static class LengthReader
{
    /// <summary>Unit names with how many of them make how many meters: whole numbers, so that a reading is rounded once.</summary>
    private static readonly (string Name, int Meters, int Count)[] Units =
    [
        ("mm", 1, 1000), ("cm", 1, 100), ("m", 1, 1), ("in", 127, 5000), ("ft", 381, 1250),
        ("\"", 127, 5000), ("inch", 127, 5000), ("inches", 127, 5000),
        ("'", 381, 1250), ("foot", 381, 1250), ("feet", 381, 1250),
        ("metre", 1, 1), ("metres", 1, 1), ("meter", 1, 1), ("meters", 1, 1),
    ];

    private const string Notations = "write it like 740 mm, 5.20 m, 29 1/8 in, 17' 6 1/2\" or 2-3-5+";

    public static UnitFault? Read(string text, out Length length, out LengthNotation notation)
    {
        length = default;
        notation = LengthNotation.Millimeters;
        if (text.Length > UnitScanner.LongestText)
            return new UnitFault("is too long to be a length", Notations);

        var scan = new UnitScanner(text);
        scan.SkipBlanks();
        if (scan.AtEnd)
            return new UnitFault("is empty", Notations);
        var negative = scan.Take('-');
        if (!negative)
            scan.Take('+');
        scan.SkipBlanks();

        var fault = ReadEighths(scan, out var meters, out var tried);
        if (tried)
            notation = LengthNotation.FeetInchesEighths;
        else
            fault = ReadUnits(ref scan, text, negative, out meters, out notation);
        if (fault is null)
            length = new Length(negative && meters != 0 ? -meters : meters);
        return fault;
    }

    /// <summary>Feet-inches-eighths; <paramref name="tried"/> says whether the text has that shape at all.</summary>
    private static UnitFault? ReadEighths(UnitScanner scan, out double meters, out bool tried)
    {
        meters = 0;
        tried = scan.TakeWhole(out var feet);
        tried = tried && scan.Take('-');
        tried = scan.TakeWhole(out var inches) && tried && scan.Next != '/';
        if (!tried)
            return null;
        if (!scan.Take('-') || !scan.TakeWhole(out var eighths))
            return new UnitFault("has two figures joined by a hyphen", "write three for feet-inches-eighths like 2-3-5, or a fraction like 29 1/8 in");
        var sixteenth = scan.Take('+') ? 1 : scan.Take('-') ? -1 : 0;
        scan.SkipBlanks();
        if (!scan.AtEnd)
            return new UnitFault($"has \"{scan.Rest}\" after feet-inches-eighths", "end it with the eighths, or a + or - for a sixteenth more or less");
        if (inches > 11)
            return new UnitFault(Invariant($"has {inches} inches"), "the middle figure of feet-inches-eighths is 0 to 11");
        if (eighths > 7)
            return new UnitFault(Invariant($"has {eighths} eighths"), "the last figure of feet-inches-eighths is 0 to 7");
        meters = ((feet * 192) + (inches * 16) + (eighths * 2) + sixteenth) * 127 / 80000.0;
        return null;
    }

    private static UnitFault? ReadUnits(ref UnitScanner scan, string text, bool negative, out double meters, out LengthNotation notation)
    {
        meters = 0;
        notation = LengthNotation.Millimeters;
        if (!scan.TakeNumber(out var value, out var whole, out var problem))
            return new UnitFault("is not a length", Notations);
        if (problem is not null)
            return new UnitFault(problem, Notations);
        scan.SkipBlanks();
        if (scan.AtEnd)
            return Bare(text, negative ? -value : value);
        if (scan.Next == ',')
            return Comma(text.Trim());

        var name = scan.TakeUnit();
        if (!Known(name, out var unit))
            return Unknown(name, scan.Rest);
        meters = value * unit.Meters / unit.Count;
        notation = unit.Count switch { 1250 => LengthNotation.FeetInches, 5000 => LengthNotation.Inches, _ => notation };
        scan.SkipBlanks();
        if (scan.AtEnd)
            return null;
        if (notation != LengthNotation.FeetInches)
            return new UnitFault($"has \"{scan.Rest}\" after the unit", Notations);
        return ReadInches(ref scan, value, whole, ref meters);
    }

    private static UnitFault? ReadInches(ref UnitScanner scan, double feet, bool whole, ref double meters)
    {
        if (!whole)
            return new UnitFault("has inches after a broken number of feet", "write whole feet before inches, like 17 ft 6 in");
        if (!scan.TakeNumber(out var inches, out _, out var problem))
            return new UnitFault($"has \"{scan.Rest}\" after the feet", "write inches after feet, like 17 ft 6 in");
        if (problem is not null)
            return new UnitFault(problem, Notations);
        scan.SkipBlanks();
        if (scan.AtEnd)
            return new UnitFault(Invariant($"has {inches} after the feet without a unit"), Invariant($"write {feet}' {inches}\" if inches are meant"));
        var name = scan.TakeUnit();
        if (!Known(name, out var unit) || unit.Count != 5000)
            return new UnitFault($"has \"{name}{scan.Rest}\" after the feet", "write inches after feet, like 17 ft 6 in");
        scan.SkipBlanks();
        if (!scan.AtEnd)
            return new UnitFault($"has \"{scan.Rest}\" after the inches", Notations);
        meters = ((feet * 12) + inches) * 127 / 5000;
        if (inches < 12)
            return null;
        var meant = new Length(meters);
        return new UnitFault(
            Invariant($"has {inches} inches"),
            $"after feet write 0 to 11, so {meant.ToText(LengthNotation.FeetInches)} or {meant.ToText(LengthNotation.Millimeters)}");
    }

    private static UnitFault Comma(string text)
    {
        var comma = text.IndexOf(',', StringComparison.Ordinal);
        var after = text.AsSpan(comma + 1);
        var figures = after.IndexOfAnyExceptInRange('0', '9') is var end && end < 0 ? after.Length : end;
        var thousands = figures == 3 ? $", or {text.Remove(comma, 1)} if the comma parts thousands" : "";
        return new UnitFault("has a comma", $"the decimal mark is a point, so write {text.Replace(',', '.')}{thousands}");
    }

    private static UnitFault Bare(string text, double value)
    {
        var number = text.Trim();
        return new UnitFault("has no unit", $"write {number} mm, {number} cm, {number} m, {number} in or {number} ft, whichever is meant", value);
    }

    private static UnitFault Unknown(string name, string rest)
    {
        if (name.Length == 0)
            return new UnitFault($"has \"{rest}\" where a unit should be", Notations);
        var lower = name.ToLower(CultureInfo.InvariantCulture);
        return Known(lower, out _)
            ? new UnitFault($"has the unit \"{name}\"", $"units are written small: {lower}")
            : new UnitFault($"has the unknown unit \"{name}\"", "units are mm, cm, m, in and ft");
    }

    private static bool Known(string name, out (int Meters, int Count) unit)
    {
        var index = Array.FindIndex(Units, u => u.Name.Equals(name, StringComparison.Ordinal));
        unit = index < 0 ? default : (Units[index].Meters, Units[index].Count);
        return index >= 0;
    }
}
