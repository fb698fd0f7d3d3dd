namespace Lines.Kernel.Numerics;

/// <summary>Simpson's rules for areas under curves that are known at a few ordinates only.</summary>
/// <remarks>
/// <para><b>Method.</b> First rule 1 4 1, a parabola through three ordinates; second rule 1 3 3 1, a cubic through four; third
/// rule 5 8 −1, the part of the parabola between the first two. Unequal spacings use the parabola through three ordinates as well.</para>
/// <para><b>Accuracy.</b> First and second rule are exact for cubics, the third and unequal spacings for parabolas.</para>
/// </remarks>
public static class SimpsonRules
{
    /// <summary>First rule, 1 4 2 4 … 4 1.</summary>
    /// <param name="ordinates">An odd number of ordinates, at least 3.</param>
    /// <param name="spacing">Common interval.</param>
    /// <returns>The area, in the product of the units.</returns>
    /// <exception cref="ArgumentException">The number of ordinates is even or below 3.</exception>
    public static double First(IReadOnlyList<double> ordinates, double spacing)
    {
        ArgumentNullException.ThrowIfNull(ordinates);
        if (ordinates.Count < 3 || ordinates.Count % 2 == 0)
            throw new ArgumentException(Invariant($"Simpson's first rule needs an odd number of ordinates from 3, not {ordinates.Count}"), nameof(ordinates));
        var sum = ordinates[0] + ordinates[^1];
        for (var i = 1; i < ordinates.Count - 1; i++)
            sum += (i % 2 == 1 ? 4 : 2) * ordinates[i];
        return spacing / 3 * sum;
    }

    /// <summary>Second rule, 1 3 3 2 3 3 … 1.</summary>
    /// <param name="ordinates">4, 7, 10 … ordinates.</param>
    /// <param name="spacing">Common interval.</param>
    /// <exception cref="ArgumentException">The number of ordinates is not one more than a multiple of three.</exception>
    public static double Second(IReadOnlyList<double> ordinates, double spacing)
    {
        ArgumentNullException.ThrowIfNull(ordinates);
        if (ordinates.Count < 4 || ordinates.Count % 3 != 1)
            throw new ArgumentException(Invariant($"Simpson's second rule needs 4, 7, 10 ... ordinates, not {ordinates.Count}"), nameof(ordinates));
        var sum = ordinates[0] + ordinates[^1];
        for (var i = 1; i < ordinates.Count - 1; i++)
            sum += (i % 3 == 0 ? 2 : 3) * ordinates[i];
        return 3 * spacing / 8 * sum;
    }

    /// <summary>Third rule, 5 8 −1: the area between the first two of three ordinates.</summary>
    /// <param name="first">Ordinate at the start of the area.</param>
    /// <param name="second">Ordinate at its end.</param>
    /// <param name="beyond">The next ordinate, outside the area.</param>
    /// <param name="spacing">Common interval.</param>
    public static double Third(double first, double second, double beyond, double spacing) =>
        spacing / 12 * ((5 * first) + (8 * second) - beyond);

    /// <summary>Area under ordinates at any places, equally spaced or not.</summary>
    /// <remarks><b>Method.</b> On every interval the mean of the two parabolas through its ends and the neighbor on either side; the
    /// one parabola there is at the ends of the table. Two ordinates make a trapezoid.</remarks>
    /// <param name="places">Strictly rising places.</param>
    /// <param name="ordinates">As many ordinates.</param>
    /// <exception cref="ArgumentException">The counts differ, are below 2, or a place is not above the one before it.</exception>
    public static double Unequal(IReadOnlyList<double> places, IReadOnlyList<double> ordinates)
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(ordinates);
        if (places.Count != ordinates.Count || places.Count < 2)
            throw new ArgumentException(Invariant($"{ordinates.Count} ordinates at {places.Count} places; both must be the same number from 2"), nameof(ordinates));
        var sum = 0.0;
        for (var i = 1; i < places.Count; i++)
        {
            var h = places[i] - places[i - 1];
            if (!(h > 0))
                throw new ArgumentException(Invariant($"place {i} ({places[i]}) does not follow {places[i - 1]}"), nameof(places));
            double bend = 0;
            var parabolas = 0;
            if (i >= 2)
                (bend, parabolas) = (bend + Bend(i - 2), parabolas + 1);
            if (i + 1 < places.Count)
                (bend, parabolas) = (bend + Bend(i - 1), parabolas + 1);
            sum += (h / 2 * (ordinates[i - 1] + ordinates[i])) - (parabolas == 0 ? 0 : h * h * h / 6 * bend / parabolas);
        }

        return sum;

        // Second divided difference of three neighbors: half the second derivative of the parabola through them.
        double Bend(int k)
        {
            double a = (ordinates[k + 1] - ordinates[k]) / (places[k + 1] - places[k]);
            double b = (ordinates[k + 2] - ordinates[k + 1]) / (places[k + 2] - places[k + 1]);
            return (b - a) / (places[k + 2] - places[k]);
        }
    }
}
