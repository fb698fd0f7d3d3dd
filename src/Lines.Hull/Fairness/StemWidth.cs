using Lines.Hull.Sections;

namespace Lines.Hull.Fairness;

/// <summary>The turn of the stem: the end of a line that no batten is laid to.</summary>
/// <remarks>
/// <para>Within half the thickness of stem and keel from the centerplane a line lies on those pieces, which are worked to the profile's
/// mold, and battens and planks end on their faces (common practice, no source). There the skin closes on the profile, and a waterline
/// that runs out on the turn of the forefoot, or onto a keel that rises slowly through it, turns within a few millimeters.</para>
/// <para><b>Method.</b> The samples at the ends of a line are left out as long as they lie within 10 mm of the centerplane, half the
/// siding of a common inner stem, and within a three-hundredth of the hull's length where that is less.</para>
/// </remarks>
public static class StemWidth
{
    private const double HalfSiding = 0.010;
    private const double OfLength = 1.0 / 300;

    /// <summary>Half the width that is left to the stem [m].</summary>
    /// <param name="length">Length of the hull [m].</param>
    public static double Half(double length) => Math.Min(HalfSiding, OfLength * length);

    /// <summary>A line without what lies within the stem and the keel; the whole line where it keeps to the centerplane.</summary>
    /// <param name="line">The line.</param>
    /// <param name="trace">Its trace.</param>
    public static LineTrace LeftOut(HullLine line, LineTrace trace)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(trace);
        var half = Half(line.Hull.Dials.Length);
        int first = 0, last = trace.Samples.Count - 1;
        while (first < last && Within(first))
            first++;
        while (last > first && Within(last))
            last--;
        return last - first < 2 ? trace : trace.Between(first, last);

        bool Within(int k) => line.At(trace.Places[k]).Point.Y < half;
    }
}
