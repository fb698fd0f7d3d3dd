using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>Words with lengths among them, kept apart until it is known in which notation they are read.</summary>
public static class LengthClause
{
    /// <summary>The words with every <see cref="Length"/> among them in one notation.</summary>
    /// <param name="clause">The words.</param>
    /// <param name="notation">The notation.</param>
    public static string Told(this FormattableString clause, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(clause);
        return string.Format(CultureInfo.InvariantCulture, clause.Format, [.. clause.GetArguments().Select(a => a is Length length ? length.ToText(notation) : a)]);
    }
}
