using Lines.Kernel.Geometry;

namespace Lines.Kernel.Splines;

/// <summary>A B-spline surface up to degree 3 taken apart into its bicubic polynomial pieces.</summary>
/// <remarks>
/// <para><b>Method.</b> Each piece by its Taylor coefficients at the knot it begins at, over its own unit square, and by its sixteen
/// Bezier points; neighbors share the points of their common edge to the last bit, so that what is decided there is decided alike.</para>
/// <para><b>Accuracy.</b> Rounding only.</para>
/// </remarks>
public sealed class BezierNet
{
    /// <summary>Numbers that hold one piece: 4 × 4 coefficients of three coordinates.</summary>
    public const int PieceSize = 48;

    private readonly double[] _alongU;
    private readonly double[] _alongV;

    /// <summary>Takes a surface apart.</summary>
    /// <param name="surface">The surface.</param>
    /// <exception cref="ArgumentException">A degree above 3.</exception>
    public BezierNet(BSplineSurface surface)
    {
        ArgumentNullException.ThrowIfNull(surface);
        if (surface.U.Degree > 3 || surface.V.Degree > 3)
            throw new ArgumentException(Invariant($"degrees {surface.U.Degree} and {surface.V.Degree}; pieces hold degree 3"), nameof(surface));
        Surface = surface;
        UBreaks = [.. surface.U.Breaks];
        VBreaks = [.. surface.V.Breaks];
        Rows = UBreaks.Count - 1;
        Columns = VBreaks.Count - 1;
        Stride = (3 * Columns) + 1;
        Points = new Point3[((3 * Rows) + 1) * Stride];
        _alongU = new double[Rows * Columns * PieceSize];
        _alongV = new double[_alongU.Length];
        for (var i = 0; i < Rows; i++)
        {
            for (var j = 0; j < Columns; j++)
                Fill(i, j);
        }
    }

    /// <summary>The surface.</summary>
    public BSplineSurface Surface { get; }

    /// <summary>Distinct knots along u, ends included.</summary>
    public IReadOnlyList<double> UBreaks { get; }

    /// <summary>Distinct knots along v, ends included.</summary>
    public IReadOnlyList<double> VBreaks { get; }

    /// <summary>Pieces along u.</summary>
    public int Rows { get; }

    /// <summary>Pieces along v.</summary>
    public int Columns { get; }

    /// <summary>Bezier points along v; point (i, j) of the whole net stands at i × stride + j.</summary>
    public int Stride { get; }

    /// <summary>The Bezier points of all pieces, 3 rows + 1 by 3 columns + 1.</summary>
    public Point3[] Points { get; }

    /// <summary>Coefficients of one piece: of x, then y, then z; power k of the first variable and l of the second at 4k + l.</summary>
    /// <param name="row">Piece along u.</param>
    /// <param name="column">Piece along v.</param>
    /// <param name="uFirst">Whether u is the first variable; else v is.</param>
    public ReadOnlySpan<double> Piece(int row, int column, bool uFirst) =>
        (uFirst ? _alongU : _alongV).AsSpan(((row * Columns) + column) * PieceSize, PieceSize);

    private static double[,] Taylor(SplineBasis basis, double from, double to, out int first)
    {
        var p = basis.Degree;
        Span<double> values = stackalloc double[16];
        first = basis.Evaluate(from, p, values);
        var taylor = new double[4, p + 1];
        var factor = 1.0;
        for (var k = 0; k <= p; k++)
        {
            for (var i = 0; i <= p; i++)
                taylor[k, i] = factor * values[(k * (p + 1)) + i];
            factor *= (to - from) / (k + 1);
        }

        return taylor;
    }

    private void Fill(int row, int column)
    {
        var u = Taylor(Surface.U, UBreaks[row], UBreaks[row + 1], out var i0);
        var v = Taylor(Surface.V, VBreaks[column], VBreaks[column + 1], out var j0);
        var at = ((row * Columns) + column) * PieceSize;
        var piece = new Vector3[4, 4];
        for (var k = 0; k < 4; k++)
        {
            for (var l = 0; l < 4; l++)
            {
                var sum = default(Vector3);
                for (var i = 0; i <= Surface.U.Degree; i++)
                {
                    for (var j = 0; j <= Surface.V.Degree; j++)
                    {
                        var pole = Surface.PoleAt(i0 + i, j0 + j);
                        sum += u[k, i] * v[l, j] * new Vector3(pole.X, pole.Y, pole.Z);
                    }
                }

                piece[k, l] = sum;
                Store(_alongU, at + (4 * k) + l, sum);
                Store(_alongV, at + (4 * l) + k, sum);
            }
        }

        SetPoints(row, column, piece);
    }

    private static void Store(double[] store, int at, Vector3 c)
    {
        store[at] = c.X;
        store[at + 16] = c.Y;
        store[at + 32] = c.Z;
    }

    private void SetPoints(int row, int column, Vector3[,] piece)
    {
        for (var k = 0; k < 4; k++)
            (piece[k, 0], piece[k, 1], piece[k, 2], piece[k, 3]) = Bezier(piece[k, 0], piece[k, 1], piece[k, 2], piece[k, 3]);
        for (var l = 0; l < 4; l++)
        {
            var (a, b, c, d) = Bezier(piece[0, l], piece[1, l], piece[2, l], piece[3, l]);
            var at = (3 * row * Stride) + (3 * column) + l;
            foreach (var value in (ReadOnlySpan<Vector3>)[a, b, c, d])
            {
                Points[at] = new Point3(value.X, value.Y, value.Z);
                at += Stride;
            }
        }
    }

    private static (Vector3 A, Vector3 B, Vector3 C, Vector3 D) Bezier(Vector3 c0, Vector3 c1, Vector3 c2, Vector3 c3)
    {
        var b1 = c0 + ((1.0 / 3) * c1);
        return (c0, b1, b1 + ((1.0 / 3) * (c1 + c2)), c0 + c1 + c2 + c3);
    }
}
