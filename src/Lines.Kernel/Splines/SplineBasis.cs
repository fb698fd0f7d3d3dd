namespace Lines.Kernel.Splines;

/// <summary>The B-spline basis functions of one degree on one clamped knot vector.</summary>
/// <remarks>
/// <para><b>Method.</b> Cox-de Boor recursion for values, Algorithm A2.3 of [PiegTill] for derivatives.</para>
/// <para><b>Accuracy.</b> Rounding only.</para>
/// </remarks>
public sealed class SplineBasis
{
    private readonly double[] _knots;
    private readonly int[][] _runs;

    /// <summary>Makes the basis on a clamped knot vector.</summary>
    /// <param name="degree">Polynomial degree, 1 to 7.</param>
    /// <param name="knots">Non-decreasing knots; first and last repeated degree + 1 times.</param>
    /// <exception cref="ArgumentException">Too few knots, knots that decrease, or ends that are not clamped.</exception>
    public SplineBasis(int degree, IReadOnlyList<double> knots)
    {
        ArgumentNullException.ThrowIfNull(knots);
        if (degree is < 1 or > 7)
            throw new ArgumentException(Invariant($"degree {degree} is outside 1 to 7"), nameof(degree));
        if (knots.Count < 2 * (degree + 1))
            throw new ArgumentException(Invariant($"{knots.Count} knots are too few for degree {degree}"), nameof(knots));
        _knots = [.. knots];
        for (var i = 1; i < _knots.Length; i++)
        {
            if (!(_knots[i] >= _knots[i - 1]))
                throw new ArgumentException(Invariant($"knot {i} decreases or is not a number"), nameof(knots));
        }

        if (_knots[degree] != _knots[0] || _knots[^(degree + 1)] != _knots[^1] || !(_knots[^1] > _knots[0]))
            throw new ArgumentException("the knot vector is not clamped", nameof(knots));
        Breaks = [.. _knots.Distinct()];
        Degree = degree;
        Count = _knots.Length - degree - 1;
        _runs = new int[Count][];
    }

    /// <summary>Polynomial degree.</summary>
    public int Degree { get; }

    /// <summary>Number of basis functions, which is the number of poles they weigh.</summary>
    public int Count { get; }

    /// <summary>All knots, ends repeated.</summary>
    public IReadOnlyList<double> Knots => _knots;

    /// <summary>First parameter of the domain.</summary>
    public double Start => _knots[0];

    /// <summary>Last parameter of the domain.</summary>
    public double End => _knots[^1];

    /// <summary>The distinct knots, ends included: where the polynomial pieces join.</summary>
    public IReadOnlyList<double> Breaks { get; }

    /// <summary>The clamped basis with simple interior knots at the given breaks.</summary>
    /// <param name="degree">Polynomial degree.</param>
    /// <param name="breaks">Strictly increasing breaks, ends included.</param>
    public static SplineBasis Clamped(int degree, IReadOnlyList<double> breaks)
    {
        ArgumentNullException.ThrowIfNull(breaks);
        return new SplineBasis(
            degree,
            [.. Enumerable.Repeat(breaks[0], degree), .. breaks, .. Enumerable.Repeat(breaks[^1], degree)]);
    }

    /// <summary>Mean of the knots that pole <paramref name="index"/> sees: the parameter it sits over.</summary>
    public double GrevilleAt(int index)
    {
        var sum = 0.0;
        for (var k = 1; k <= Degree; k++)
            sum += _knots[index + k];
        return sum / Degree;
    }

    /// <summary>Index of the knot span that holds a parameter; parameters outside the domain fall in the end spans.</summary>
    public int SpanAt(double u)
    {
        if (u >= _knots[Count])
            return LastSpan();
        if (u <= _knots[Degree])
            return Degree;
        int low = Degree, high = Count;
        while (high - low > 1)
        {
            var mid = (low + high) / 2;
            if (u < _knots[mid])
                high = mid;
            else
                low = mid;
        }

        return low;
    }

    /// <summary>Values and derivatives of the Degree + 1 functions that are not zero at a parameter.</summary>
    /// <remarks>Outside the domain the polynomial of the end span is continued.</remarks>
    /// <param name="u">Parameter.</param>
    /// <param name="derivatives">Highest derivative wanted, 0 to Degree.</param>
    /// <param name="values">Receives row k = k-th derivatives, (derivatives + 1) rows of Degree + 1 numbers.</param>
    /// <returns>Index of the first function that is not zero.</returns>
    public int Evaluate(double u, int derivatives, Span<double> values)
    {
        var p = Degree;
        var span = SpanAt(u);
        if (p == 3)
        {
            EvaluateCubic(u, span, derivatives, values);
            return span - p;
        }

        Span<double> left = stackalloc double[p + 1];
        Span<double> right = stackalloc double[p + 1];
        Span<double> ndu = stackalloc double[(p + 1) * (p + 1)];
        var w = p + 1;
        ndu[0] = 1;
        for (var j = 1; j <= p; j++)
        {
            left[j] = u - _knots[span + 1 - j];
            right[j] = _knots[span + j] - u;
            var saved = 0.0;
            for (var r = 0; r < j; r++)
            {
                ndu[(j * w) + r] = right[r + 1] + left[j - r];
                var temp = ndu[(r * w) + j - 1] / ndu[(j * w) + r];
                ndu[(r * w) + j] = saved + (right[r + 1] * temp);
                saved = left[j - r] * temp;
            }

            ndu[(j * w) + j] = saved;
        }

        for (var j = 0; j <= p; j++)
            values[j] = ndu[(j * w) + p];
        if (derivatives > 0)
            EvaluateDerivatives(derivatives, ndu, values);
        return span - p;
    }

    // The same recursion written out for degree 3, which nearly every curve and surface here has: a third of the time.
    private void EvaluateCubic(double u, int span, int derivatives, Span<double> values)
    {
        var t = _knots.AsSpan(span - 2, 6);
        double a1 = u - t[2], a2 = u - t[1], a3 = u - t[0], b1 = t[3] - u, b2 = t[4] - u, b3 = t[5] - u;
        double d = a1 + b1, p0 = b1 / d, p1 = a1 / d; // degree 1
        double e0 = p0 / (b1 + a2), e1 = p1 / (b2 + a1);
        double q0 = b1 * e0, q1 = (a2 * e0) + (b2 * e1), q2 = a1 * e1; // degree 2
        double f0 = q0 / (b1 + a3), f1 = q1 / (b2 + a2), f2 = q2 / (b3 + a1);
        values[0] = b1 * f0;
        values[1] = (a3 * f0) + (b2 * f1);
        values[2] = (a2 * f1) + (b3 * f2);
        values[3] = a1 * f2;
        if (derivatives > 0)
            Differences(f0, f1, f2, 3, values[4..]);
        if (derivatives > 1)
            Differences(-2 * e0 / (b1 + a3), 2 * (e0 - e1) / (b2 + a2), 2 * e1 / (b3 + a1), 3, values[8..]);
        if (derivatives > 2)
        {
            double g0 = 1 / (d * (b1 + a2)), g1 = 1 / (d * (b2 + a1));
            Differences(2 * g0 / (b1 + a3), -2 * (g0 + g1) / (b2 + a2), 2 * g1 / (b3 + a1), 3, values[12..]);
        }

        static void Differences(double x0, double x1, double x2, double factor, Span<double> row)
        {
            row[0] = -factor * x0;
            row[1] = factor * (x0 - x1);
            row[2] = factor * (x1 - x2);
            row[3] = factor * x2;
        }
    }

    private void EvaluateDerivatives(int derivatives, ReadOnlySpan<double> ndu, Span<double> values)
    {
        var p = Degree;
        var w = p + 1;
        Span<double> a = stackalloc double[2 * w];
        for (var r = 0; r <= p; r++)
        {
            int s1 = 0, s2 = 1;
            a[0] = 1;
            for (var k = 1; k <= derivatives; k++)
            {
                var d = 0.0;
                int rk = r - k, pk = p - k;
                if (r >= k)
                {
                    a[s2 * w] = a[s1 * w] / ndu[((pk + 1) * w) + rk];
                    d = a[s2 * w] * ndu[(rk * w) + pk];
                }

                var j1 = rk >= -1 ? 1 : -rk;
                var j2 = r - 1 <= pk ? k - 1 : p - r;
                for (var j = j1; j <= j2; j++)
                {
                    a[(s2 * w) + j] = (a[(s1 * w) + j] - a[(s1 * w) + j - 1]) / ndu[((pk + 1) * w) + rk + j];
                    d += a[(s2 * w) + j] * ndu[((rk + j) * w) + pk];
                }

                if (r <= pk)
                {
                    a[(s2 * w) + k] = -a[(s1 * w) + k - 1] / ndu[((pk + 1) * w) + r];
                    d += a[(s2 * w) + k] * ndu[(r * w) + pk];
                }

                values[(k * w) + r] = d;
                (s1, s2) = (s2, s1);
            }
        }

        var factor = (double)p;
        for (var k = 1; k <= derivatives; k++)
        {
            for (var j = 0; j <= p; j++)
                values[(k * w) + j] *= factor;
            factor *= p - k;
        }
    }

    /// <summary>Indices of the functions that are not zero where one is the first of them: one array for all who ask, to be read only.</summary>
    /// <param name="first">That one, as <see cref="Evaluate"/> returns it.</param>
    public int[] RunFrom(int first) => _runs[first] ??= [.. Enumerable.Range(first, Degree + 1)];

    private int LastSpan()
    {
        var span = Count - 1;
        while (_knots[span] == _knots[Count])
            span--;
        return span;
    }
}
