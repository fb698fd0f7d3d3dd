namespace Lines.Construction;

/// <summary>A hull that comes apart: the pieces between its joints.</summary>
public static class TakeApart
{
    /// <summary>Length of every piece, from the bow.</summary>
    /// <param name="length">Length of the hull [m].</param>
    /// <param name="joints">Take-apart planes, x from the foremost point [m], increasing, inside the hull.</param>
    /// <returns>One length more than there are joints [m]; their sum is the hull's length, saw cuts not deducted.</returns>
    /// <exception cref="ArgumentException">The joints do not increase or do not lie inside the hull.</exception>
    public static IReadOnlyList<double> PieceLengths(double length, IReadOnlyList<double> joints)
    {
        ArgumentNullException.ThrowIfNull(joints);
        double[] ends = [0, .. joints, length];
        double[] pieces = [.. Enumerable.Range(1, ends.Length - 1).Select(k => ends[k] - ends[k - 1])];
        if (pieces.Any(p => !(p > 0)))
            throw new ArgumentException("joints increase and lie inside the hull", nameof(joints));
        return pieces;
    }
}
