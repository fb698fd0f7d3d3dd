namespace Lines.Hull.Hydrostatics;

/// <summary>Integrals over a waterplane as integrals along its rim: -∮ b da and its moments (Green's theorem).</summary>
internal static class WaterplaneRim
{
    private static readonly double s_node = 1 / Math.Sqrt(3);

    /// <summary>Adds A, ∫a, ∫b, ∫a², ∫ab, ∫b² of one element of the rim, run counterclockwise as seen from above.</summary>
    public static void Add(double a, double b, double da, Span<double> sums)
    {
        var strip = -b * da;
        sums[0] += strip;
        sums[1] += a * strip;
        sums[2] += b / 2 * strip;
        sums[3] += a * a * strip;
        sums[4] += a * b / 2 * strip;
        sums[5] += b * b / 3 * strip;
    }

    /// <summary>Adds a straight piece of the rim; two nodes are exact, the degree being 3.</summary>
    public static void AddStraight((double A, double B) from, (double A, double B) to, double sign, Span<double> sums)
    {
        double half = (to.A - from.A) / 2, middleA = (to.A + from.A) / 2, middleB = (to.B + from.B) / 2, halfB = (to.B - from.B) / 2;
        Add(middleA - (s_node * half), middleB - (s_node * halfB), sign * half, sums);
        Add(middleA + (s_node * half), middleB + (s_node * halfB), sign * half, sums);
    }
}
