using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>What the section at the widest station and the edge of a transom share: a convex plane curve y(v), z(v).</summary>
/// <param name="V">Basis.</param>
/// <param name="Y">Poles of the half-breadth [m].</param>
/// <param name="Z">Poles of the height [m].</param>
/// <param name="Hollow">By how much convexity gave way [m].</param>
internal sealed record SectionBatten(SplineBasis V, double[] Y, double[] Z, double Hollow)
{
    /// <summary>A convex batten from a foot on the centerplane through a point of the waterline to the sheer.</summary>
    /// <remarks><b>Method.</b> Least ∫ |P″ - R″|² dv, R being the section at the widest station scaled to size, so that the transom
    /// takes that section's character; convexity rows linearized until they settle.</remarks>
    public static SectionBatten Through(
        SplineBasis v, double waterlineV, double waterlineY, double foot, double draft, double sheer, double edge, MidshipSection like)
    {
        var n = v.Count;
        double scaleY = edge / like.Y[^1], scaleZ = (sheer - foot) / (like.Z[^1] - like.Z[0]);
        double[] y = Array.ConvertAll(like.Y, k => k * scaleY), z = Array.ConvertAll(like.Z, k => foot + ((k - like.Z[0]) * scaleZ));
        double[] refY = y, refZ = z;
        var hollow = 0.0;
        for (var pass = 0; pass < 12; pass++)
        {
            using var program = new ElasticProgram(2 * n);
            SplineRows.ForGaussPoints(v, 0, 1, 3, (t, w) =>
            {
                var row = SplineRows.At(v, t, 2);
                program.AddSquare(row, row.Dot(refY), w);
                program.AddSquare(row.Shifted(n), row.Dot(refZ), w);
            });
            program.AddEquation(SplineRows.At(v, 0, 0), 0);
            program.AddEquation(SplineRows.At(v, 1, 0), edge);
            program.AddEquation(SplineRows.At(v, waterlineV, 0), waterlineY);
            program.AddEquation(SplineRows.At(v, 0, 0).Shifted(n), foot);
            program.AddEquation(SplineRows.At(v, 1, 0).Shifted(n), sheer);
            program.AddEquation(SplineRows.At(v, waterlineV, 0).Shifted(n), draft);
            var result = program.Solve(Convexity(v, y, z));
            var change = 0.0;
            for (var k = 0; k < n; k++)
                change = Math.Max(change, Math.Abs(result.X[k] - y[k]) + Math.Abs(result.X[n + k] - z[k]));
            (y, z, hollow) = (result.X[..n], result.X[n..], result.Violation);
            if (change < 1e-10)
                break;
        }

        return new SectionBatten(v, y, z, hollow);
    }

    /// <summary>Rows over y then z, linearized at a curve, that keep the turn y′z″ - z′y″ to the left and heights rising.</summary>
    public static List<ElasticRow> Convexity(SplineBasis basis, double[] y, double[] z)
    {
        var n = basis.Count;
        var rows = new List<ElasticRow>();
        var breaks = basis.Breaks;
        for (var s = 0; s + 1 < breaks.Count; s++)
        {
            for (var k = s == 0 ? 0 : 1; k <= 4; k++)
            {
                var v = breaks[s] + ((breaks[s + 1] - breaks[s]) * k / 4);
                SparseRow d1 = SplineRows.At(basis, v, 1), d2 = SplineRows.At(basis, v, 2);
                double y1 = d1.Dot(y), y2 = d2.Dot(y), z1 = d1.Dot(z), z2 = d2.Dot(z);

                // Bow of a tenth of the girth with this curvature: κ ℓ² / 8 with ℓ = 0.1 |P′|.
                var scale = 0.01 / 8 / Math.Max(1e-6, Math.Sqrt((y1 * y1) + (z1 * z1)));
                var turn = new double[2 * n];
                d1.AddTo(turn, -scale * z2);
                d2.Shifted(n).AddTo(turn, -scale * y1);
                d1.Shifted(n).AddTo(turn, scale * y2);
                d2.AddTo(turn, scale * z1);
                rows.Add(new ElasticRow(SparseRow.Full(turn), -scale * ((y1 * z2) - (z1 * y2)), 1e9));
                rows.Add(new ElasticRow(d1.Shifted(n).Times(-1), 0, 1e6));
            }
        }

        return rows;
    }

    /// <summary>Greatest half-breadth [m]; a convex section has one maximum.</summary>
    public double GreatestHalfBreadth()
    {
        double low = 0, high = 1;
        for (var k = 0; k < 120; k++)
        {
            double a = low + ((high - low) / 3), b = high - ((high - low) / 3);
            if (SplineRows.Value(V, a, 0, Y) < SplineRows.Value(V, b, 0, Y))
                low = a;
            else
                high = b;
        }

        return SplineRows.Value(V, (low + high) / 2, 0, Y);
    }
}
