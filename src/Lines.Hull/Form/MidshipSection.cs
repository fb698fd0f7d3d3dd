using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The section at the widest station: least-energy, convex, with its beam, depth, deadrise, flare and fullness.</summary>
/// <remarks>
/// <para><b>Method.</b> Poles of y(v) and z(v) minimize ∫ (y″² + z″²) dv. Heights, breadth and end tangents are linear equations;
/// the immersed area is bilinear and is met by Newton's iteration; convexity rows are elastic, linearized at each step. The
/// parameter of the design waterline follows the girth, so that the parameter runs evenly along the section.</para>
/// <para><b>Accuracy.</b> Fullness to 1e-10, lengths to rounding.</para>
/// </remarks>
internal sealed record MidshipSection(SplineBasis V, double WaterlineV, double[] Y, double[] Z, double Hollow, double Residual)
{
    private const int Degree = 3;

    /// <summary>Whether its fullness came out as asked.</summary>
    public bool IsMet => Residual <= 1e-8;

    /// <summary>Half-breadth at the design waterline [m].</summary>
    public double WaterlineHalfBreadth => SplineRows.Value(V, WaterlineV, 0, Y);

    /// <summary>Length of the half-girth [m].</summary>
    public double Girth => GirthBelow(1);

    /// <summary>Greatest fullness that a convex section with this deadrise and flare can have.</summary>
    /// <remarks>
    /// <b>Method.</b> A convex section lies within the tangent at its keel, and below the water within the line from the sheer through its own waterline
    /// end, for it spreads no slower below than above. Where it comes to the water is its own to choose, between the straight line from keel to sheer and what the
    /// two tangents leave; the fullest choice counts.
    /// </remarks>
    /// <param name="d">Dials.</param>
    /// <param name="keel">Height of the keel at the section [m].</param>
    /// <returns>Fullness; not a number when the two tangents exclude a convex section altogether.</returns>
    public static double GreatestFullness(HullDials d, double keel)
    {
        double half = d.Beam / 2, td = Math.Tan(d.Midship.Deadrise), tf = Math.Tan(Math.Max(0, d.Midship.Flare));
        double depth = d.Depth - keel, draft = d.Draft - keel;

        // Corner of z = y tan(deadrise) and y = half - (depth - z) tan(flare).
        var corner = (half - (depth * tf)) / (1 - (td * tf));
        if (!(corner > 0) || !(corner * td < depth))
            return double.NaN;
        double least = half * draft / depth, most = half - ((depth - draft) * tf);
        return Peak.Over(Fullest, [.. Enumerable.Range(0, 9).Select(k => least + ((Math.Min(most, td > 0 ? draft / td : most) - least) * k / 8))]).Value;

        double Fullest(double end)
        {
            var spread = (half - end) / (depth - draft); // dy/dz of the line from the sheer through the waterline's end
            var breadth = (end - (spread * draft)) / (1 - (td * spread)); // where that line meets the keel's tangent
            var height = td * breadth;
            return ((breadth * height) + ((draft - height) * (breadth + end))) / (2 * end * draft);
        }
    }

    /// <summary>Shapes the section.</summary>
    /// <param name="d">Dials.</param>
    /// <param name="keel">Height of the keel at the section [m].</param>
    /// <param name="spansBelow">Polynomial pieces below the design waterline.</param>
    /// <param name="spansAbove">Pieces above it.</param>
    public static MidshipSection Shape(HullDials d, double keel, int spansBelow = 3, int spansAbove = 2)
    {
        var girth = StartingGirth(d, keel);
        var edge = d.Beam / 2;
        var section = Solve(d, keel, edge, girth, spansBelow, spansAbove, null);
        for (var pass = 0; pass < 2; pass++)
            section = Solve(d, keel, edge, section.GirthRatio(), spansBelow, spansAbove, null);

        // Tumblehome: the greatest breadth lies inside; the breadth at the sheer is what puts it where it should be.
        for (var pass = 0; d.Midship.Flare < 0 && pass < 30; pass++)
        {
            var excess = new SectionBatten(section.V, section.Y, section.Z, 0).GreatestHalfBreadth() - (d.Beam / 2);
            if (Math.Abs(excess) < 1e-9)
                break;
            edge -= excess;
            section = Solve(d, keel, edge, section.WaterlineV, spansBelow, spansAbove, section);
        }

        return section;
    }

    /// <summary>Whether the dials a section hangs on are the same.</summary>
    public static bool AreAlike(HullDials a, HullDials b) => (a.Beam, a.Depth, a.Draft, a.Midship) == (b.Beam, b.Depth, b.Draft, b.Midship);

    private static double StartingGirth(HullDials d, double keel)
    {
        double half = d.Beam / 2, below = half + ((d.Draft - keel) * 0.6);
        return Math.Clamp(below / (below + (d.Depth - d.Draft)), 0.35, 0.8);
    }

    private static MidshipSection Solve(
        HullDials d, double keel, double edge, double waterlineV, int spansBelow, int spansAbove, MidshipSection? start)
    {
        var vw = Math.Clamp(waterlineV, 0.35, 0.8);
        double[] breaks =
        [
            .. Enumerable.Range(0, spansBelow).Select(k => vw * k / spansBelow),
            .. Enumerable.Range(0, spansAbove + 1).Select(k => vw + ((1 - vw) * k / spansAbove)),
        ];
        var basis = SplineBasis.Clamped(Degree, breaks);
        var (y, z) = start is not null ? (start.Y, start.Z) : Start(d, keel, basis);
        double hollow = 0, residual = 1;
        for (var pass = 0; pass < 40 && residual > 1e-12; pass++)
        {
            var (y2, z2, worst) = Step(d, keel, edge, basis, vw, y, z);
            residual = Math.Abs((Area(basis, y2, z2, vw) / (SplineRows.Value(basis, vw, 0, y2) * (d.Draft - keel))) - d.Midship.Fullness);
            for (var k = 0; k < y.Length; k++)
                residual = Math.Max(residual, 1e-3 * (Math.Abs(y2[k] - y[k]) + Math.Abs(z2[k] - z[k])));
            (y, z, hollow) = (y2, z2, worst);
        }

        return new MidshipSection(basis, vw, y, z, hollow, residual);
    }

    /// <summary>One Newton step: linearized area and convexity at the current section.</summary>
    private static (double[] Y, double[] Z, double Hollow) Step(
        HullDials d, double keel, double edge, SplineBasis basis, double vw, double[] y, double[] z)
    {
        var n = basis.Count;
        using var program = new ElasticProgram(2 * n);
        SplineRows.ForGaussPoints(basis, 0, 1, 3, (v, w) =>
        {
            var row = SplineRows.At(basis, v, 2);
            program.AddSquare(row, 0, w);
            program.AddSquare(row.Shifted(n), 0, w);
        });
        SparseRow Y(double v, int k) => SplineRows.At(basis, v, k);
        SparseRow Z(double v, int k) => SplineRows.At(basis, v, k).Shifted(n);
        program.AddEquation(Y(0, 0), 0);
        program.AddEquation(Z(0, 0), keel);
        program.AddEquation(Y(1, 0), edge);
        program.AddEquation(Z(1, 0), d.Depth);
        program.AddEquation(Z(vw, 0), d.Draft);
        program.AddEquation(Z(0, 1).Plus(Y(0, 1).Times(-Math.Tan(d.Midship.Deadrise))), 0);
        program.AddEquation(Y(1, 1).Plus(Z(1, 1).Times(-Math.Tan(d.Midship.Flare))), 0);

        // Area ∫ y z′ dv = fullness × y(vw) × draft, linearized.
        var area = new double[2 * n];
        SplineRows.ForGaussPoints(basis, 0, vw, 4, (v, w) =>
        {
            Y(v, 0).AddTo(area, w * SplineRows.Value(basis, v, 1, z));
            Z(v, 1).AddTo(area, w * SplineRows.Value(basis, v, 0, y));
        });
        Y(vw, 0).AddTo(area, -d.Midship.Fullness * (d.Draft - keel));
        program.AddEquation(SparseRow.Full(area), Area(basis, y, z, vw));
        var result = program.Solve(SectionBatten.Convexity(basis, y, z));
        return (result.X[..n], result.X[n..], result.Violation);
    }

    private static (double[] Y, double[] Z) Start(HullDials d, double keel, SplineBasis basis)
    {
        double half = d.Beam / 2, td = Math.Tan(d.Midship.Deadrise), tf = Math.Tan(d.Midship.Flare);
        var corner = Math.Clamp((half - ((d.Depth - keel) * tf)) / (1 - (td * tf)), 0.3 * half, 1.2 * half);
        var zc = keel + Math.Clamp(corner * td, 0, 0.8 * (d.Depth - keel));
        var y = new double[basis.Count];
        var z = new double[basis.Count];
        for (var j = 0; j < basis.Count; j++)
        {
            var t = basis.GrevilleAt(j);
            y[j] = (2 * t * (1 - t) * corner) + (t * t * half);
            z[j] = ((1 - t) * (1 - t) * keel) + (2 * t * (1 - t) * zc) + (t * t * d.Depth);
        }

        return (y, z);
    }

    private static double Area(SplineBasis basis, double[] y, double[] z, double vw)
    {
        var area = 0.0;
        SplineRows.ForGaussPoints(
            basis, 0, vw, 4, (v, w) => area += w * SplineRows.Value(basis, v, 0, y) * SplineRows.Value(basis, v, 1, z));
        return area;
    }

    private double GirthRatio() => GirthBelow(WaterlineV) / Girth;

    private double GirthBelow(double end)
    {
        var girth = 0.0;
        SplineRows.ForGaussPoints(V, 0, end, 6, (v, w) =>
        {
            double across = SplineRows.Value(V, v, 1, Y), up = SplineRows.Value(V, v, 1, Z);
            girth += w * Math.Sqrt((across * across) + (up * up));
        });
        return girth;
    }
}
