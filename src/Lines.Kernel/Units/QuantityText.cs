namespace Lines.Kernel.Units;

/// <summary>The parts that the texts of all quantities but lengths have in common: one number, then a unit.</summary>
internal static class QuantityText
{
    /// <summary>Opens a text at its first sign that is no blank.</summary>
    /// <param name="text">The text.</param>
    /// <param name="what">What it should be, with its article: an area.</param>
    /// <param name="notations">How one is written.</param>
    /// <param name="scan">Stands on the first sign.</param>
    /// <returns>What is wrong; null where nothing is so far.</returns>
    public static UnitFault? Open(string text, string what, string notations, out UnitScanner scan)
    {
        scan = default;
        if (text.Length > UnitScanner.LongestText)
            return new UnitFault($"is too long to be {what}", notations);
        scan = new UnitScanner(text);
        scan.SkipBlanks();
        return scan.AtEnd ? new UnitFault("is empty", notations) : null;
    }

    /// <summary>Takes the number, and blanks after it, as far as the unit.</summary>
    /// <param name="scan">Stands on the number.</param>
    /// <param name="text">The whole text.</param>
    /// <param name="what">What it should be, with its article.</param>
    /// <param name="notations">How one is written.</param>
    /// <param name="units">The two units that a bare number could mean.</param>
    /// <param name="sign">1, or -1 where a minus stood before.</param>
    /// <param name="value">The number with its sign.</param>
    /// <returns>What is wrong; null where a unit follows.</returns>
    public static UnitFault? Number(ref UnitScanner scan, string text, string what, string notations, (string One, string Other) units, int sign, out double value)
    {
        if (!scan.TakeNumber(out value, out _, out var problem))
            return new UnitFault($"is not {what}", notations);
        if (problem is not null)
            return new UnitFault(problem, notations);
        value *= sign;
        scan.SkipBlanks();
        if (scan.AtEnd)
            return new UnitFault("has no unit", $"write {text.Trim()} {units.One}, or {text.Trim()} {units.Other}, whichever is meant", value);
        return scan.Next == ',' ? new UnitFault("has a comma", $"the decimal mark is a point, so write {text.Trim().Replace(',', '.')}") : null;
    }

    /// <summary>Takes the unit, after which nothing may stand.</summary>
    /// <param name="scan">Stands on the unit.</param>
    /// <param name="notations">How a quantity of the kind is written.</param>
    /// <param name="unit">The unit.</param>
    public static UnitFault? Unit(ref UnitScanner scan, string notations, out string unit)
    {
        unit = scan.TakeUnit();
        scan.SkipBlanks();
        return scan.AtEnd ? null : new UnitFault($"has \"{scan.Rest}\" after the unit", notations);
    }
}
