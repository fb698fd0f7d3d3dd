namespace Lines.Design.Text;

/// <summary>A stretch of one line of a design file.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column of its first character, from 1.</param>
/// <param name="Length">Characters it covers on that line, at least 1.</param>
public readonly record struct Place(int Line, int Column, int Length = 1) : IComparable<Place>
{
    /// <summary>The beginning of a file: where a fault of the whole is shown.</summary>
    public static Place Start { get; } = new(1, 1);

    /// <summary>Orders places as they are read.</summary>
    public int CompareTo(Place other) => Line != other.Line ? Line.CompareTo(other.Line) : Column.CompareTo(other.Column);

    /// <summary>Whether one place is read before another.</summary>
    public static bool operator <(Place left, Place right) => left.CompareTo(right) < 0;

    /// <summary>Whether one place is read after another.</summary>
    public static bool operator >(Place left, Place right) => left.CompareTo(right) > 0;

    /// <summary>Whether one place is read no later than another.</summary>
    public static bool operator <=(Place left, Place right) => left.CompareTo(right) <= 0;

    /// <summary>Whether one place is read no earlier than another.</summary>
    public static bool operator >=(Place left, Place right) => left.CompareTo(right) >= 0;
}
