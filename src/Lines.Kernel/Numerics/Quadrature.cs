namespace Lines.Kernel.Numerics;

/// <summary>Several functions of one variable, evaluated together.</summary>
/// <param name="t">The variable.</param>
/// <param name="values">Receives the value of each function.</param>
public delegate void Integrand(double t, Span<double> values);

/// <summary>Several functions of two variables, evaluated together.</summary>
/// <param name="s">The first variable.</param>
/// <param name="t">The second variable.</param>
/// <param name="values">Receives the value of each function.</param>
public delegate void PlanarIntegrand(double s, double t, Span<double> values);

/// <summary>Integrals over intervals and rectangles to a relative error that is asked for.</summary>
/// <remarks>
/// <para><b>Method.</b> Six Gauss-Legendre nodes each way on every piece, against the same on its halves (quarters); the
/// piece with the greatest difference is divided until the differences together are below the tolerance.</para>
/// <para><b>Accuracy.</b> For each function the sum of the differences stays below the tolerance times the sum of the
/// absolute integrals of the pieces, or times the size named beside it, below which an integral is as good as nothing (rounding
/// of a function that vanishes has no relative error). On smooth functions the true error is far smaller, as the finer values are kept;
/// polynomials up to degree 11 each way are exact to rounding.</para>
/// </remarks>
public static class Quadrature
{
    /// <summary>Pieces after which an integral is given up: far above what a piecewise smooth function needs.</summary>
    private const int MostPieces = 5_000;

    /// <summary>Nodes each way on a piece; exact to degree 11, the moments of a bicubic surface over a parameter rectangle.</summary>
    private const int Nodes = 6;

    private static readonly GaussLegendre s_rule = GaussLegendre.Rule(Nodes);

    /// <summary>Integrals over an interval, broken where the functions are not smooth.</summary>
    /// <param name="f">The functions.</param>
    /// <param name="sizes">For each function the size below which its integral counts as nothing; 0 where there is none such.</param>
    /// <param name="breaks">Rising places, ends included; fewer than two is an empty interval.</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    /// <returns>One integral for each function; zeros over an empty interval.</returns>
    /// <exception cref="ArithmeticException">The tolerance was not met; the message carries the error that was left.</exception>
    public static double[] Over(Integrand f, IReadOnlyList<double> sizes, IReadOnlyList<double> breaks, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentNullException.ThrowIfNull(breaks);
        var cells = new List<Cell>();
        for (var i = 1; i < breaks.Count; i++)
            cells.Add(new Cell(breaks[i - 1], breaks[i], 0, 1));
        return Sum(cells, sizes, tolerance, Estimate, c => [new(c.S0, c.SMid, 0, 1), new(c.SMid, c.S1, 0, 1)]);

        void Estimate(Cell cell, Span<double> sums)
        {
            Span<double> values = stackalloc double[sizes.Count];
            var half = (cell.S1 - cell.S0) / 2;
            for (var i = 0; i < Nodes; i++)
            {
                f(cell.SMid + (half * s_rule.Abscissas[i]), values);
                Add(sums, values, half * s_rule.Weights[i]);
            }
        }
    }

    /// <summary>Integrals over rectangles.</summary>
    /// <param name="f">The functions.</param>
    /// <param name="sizes">For each function the size below which its integral counts as nothing; 0 where there is none such.</param>
    /// <param name="cells">The rectangles, chosen so that the functions are smooth inside each; none gives zeros.</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    /// <returns>One integral for each function.</returns>
    /// <exception cref="ArithmeticException">The tolerance was not met; the message carries the error that was left.</exception>
    public static double[] Over(PlanarIntegrand f, IReadOnlyList<double> sizes, IReadOnlyList<Cell> cells, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentNullException.ThrowIfNull(cells);
        return Sum(cells, sizes, tolerance, Estimate, Quarters);

        void Estimate(Cell cell, Span<double> sums)
        {
            Span<double> values = stackalloc double[sizes.Count];
            double halfS = (cell.S1 - cell.S0) / 2, halfT = (cell.T1 - cell.T0) / 2;
            for (var i = 0; i < Nodes; i++)
            {
                var s = cell.SMid + (halfS * s_rule.Abscissas[i]);
                for (var j = 0; j < Nodes; j++)
                {
                    f(s, cell.TMid + (halfT * s_rule.Abscissas[j]), values);
                    Add(sums, values, halfS * halfT * s_rule.Weights[i] * s_rule.Weights[j]);
                }
            }
        }
    }

    private static Cell[] Quarters(Cell c) =>
    [
        new(c.S0, c.SMid, c.T0, c.TMid), new(c.S0, c.SMid, c.TMid, c.T1),
        new(c.SMid, c.S1, c.T0, c.TMid), new(c.SMid, c.S1, c.TMid, c.T1),
    ];

    private static double[] Sum(
        IReadOnlyList<Cell> cells, IReadOnlyList<double> sizes, double tolerance, Estimator estimate, Func<Cell, Cell[]> divide)
    {
        if (!(tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "the tolerance must be above 0");
        var count = sizes.Count;
        var error = new double[count];
        double[] scale = [.. sizes];
        var leaves = new PriorityQueue<Piece, double>();
        Piece[] first = [.. cells.Select(c => Take(new Part(c, Estimate(c))))];
        foreach (var piece in first)
            leaves.Enqueue(piece, -piece.ErrorRelativeTo(scale));
        while (Worst() > tolerance)
        {
            if (leaves.Count >= MostPieces)
                throw new ArithmeticException(Invariant($"an integral kept a relative error of {Worst():E1} after {MostPieces} pieces; {tolerance:E1} was asked"));
            var worst = leaves.Dequeue();
            Add(error, worst.Error, -1);
            AddAbsolute(scale, worst.Fine, -1);
            foreach (var part in worst.Parts)
            {
                var piece = Take(part);
                leaves.Enqueue(piece, -piece.ErrorRelativeTo(scale));
            }
        }

        var total = new double[count];
        foreach (var (piece, _) in leaves.UnorderedItems)
            Add(total, piece.Fine, 1);
        return total;

        double[] Estimate(Cell cell)
        {
            var sums = new double[count];
            estimate(cell, sums);
            return sums;
        }

        Piece Take(Part whole)
        {
            var piece = new Piece(whole, [.. divide(whole.Cell).Select(c => new Part(c, Estimate(c)))]);
            Add(error, piece.Error, 1);
            AddAbsolute(scale, piece.Fine, 1);
            return piece;
        }

        double Worst()
        {
            var worst = 0.0;
            for (var k = 0; k < count; k++)
                worst = Math.Max(worst, error[k] > 0 ? error[k] / scale[k] : 0);
            return worst;
        }
    }

    private static void Add(Span<double> sums, ReadOnlySpan<double> values, double factor)
    {
        for (var k = 0; k < sums.Length; k++)
            sums[k] += factor * values[k];
    }

    private static void AddAbsolute(Span<double> sums, ReadOnlySpan<double> values, double factor)
    {
        for (var k = 0; k < sums.Length; k++)
            sums[k] += factor * Math.Abs(values[k]);
    }

    private delegate void Estimator(Cell cell, Span<double> sums);

    private readonly record struct Part(Cell Cell, double[] Sums);

    private sealed class Piece
    {
        public Piece(Part whole, Part[] parts)
        {
            Parts = parts;
            Fine = new double[whole.Sums.Length];
            Error = new double[whole.Sums.Length];
            foreach (var part in parts)
                Add(Fine, part.Sums, 1);
            for (var k = 0; k < Error.Length; k++)
                Error[k] = Math.Abs(Fine[k] - whole.Sums[k]);
        }

        public Part[] Parts { get; }

        public double[] Fine { get; }

        public double[] Error { get; }

        public double ErrorRelativeTo(double[] scale)
        {
            var worst = 0.0;
            for (var k = 0; k < Error.Length; k++)
                worst = Math.Max(worst, Error[k] > 0 ? Error[k] / scale[k] : 0);
            return worst;
        }
    }
}

/// <summary>A rectangle of two variables.</summary>
/// <param name="S0">Least first variable.</param>
/// <param name="S1">Greatest first variable.</param>
/// <param name="T0">Least second variable.</param>
/// <param name="T1">Greatest second variable.</param>
public readonly record struct Cell(double S0, double S1, double T0, double T1)
{
    internal double SMid => (S0 + S1) / 2;

    internal double TMid => (T0 + T1) / 2;
}
