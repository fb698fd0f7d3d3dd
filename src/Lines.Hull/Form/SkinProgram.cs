using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The least-energy surface through the character lines, kept convex by elastic rows linearised at the surface itself.</summary>
/// <remarks>
/// <para><b>Method.</b> x of the net is given. y and z of all poles are unknowns; edges, design waterline, midship section and its
/// lengthwise slopes are equations. At sample points of the surface y is looked on as a function of x and z: y_xx ≤ 0 keeps
/// waterlines from hollows, y_zz ≤ 0 the sections, the same along a plane at 45 degrees the diagonals, and
/// x_u z_v - x_v z_u > 0 keeps heights rising up every section. All but the last are linearised and solved again.</para>
/// </remarks>
internal sealed class SkinProgram
{
    /// <summary>A bulge that is no longer watched in a step [m].</summary>
    private const double Ample = 0.002;

    private readonly SplineBasis _u;
    private readonly SplineBasis _v;
    private readonly double[] _x;
    private readonly ElasticProgram _program;
    private readonly List<Sample> _samples = [];
    private readonly List<Sample> _edge = [];
    private readonly int _net;
    private readonly SkinScale _scale;
    private double _hardness = 0.1;

    public SkinProgram(SplineBasis u, SplineBasis v, double[] x, SkinScale scale, SkinStiffness stiffness)
    {
        (_u, _v, _x, _scale, Stiffness) = (u, v, x, scale, stiffness);
        _net = u.Count * v.Count;
        _program = new ElasticProgram(2 * _net);
        AddEnergy();
        AddSamples();
    }

    public SkinStiffness Stiffness { get; }

    public double Contradiction => _program.Contradiction;

    public int Steps { get; private set; }

    public int Passes { get; private set; }

    /// <summary>Fixes a pole's y and z.</summary>
    public void Fix(int i, int j, double? y, double? z)
    {
        var k = (i * _v.Count) + j;
        if (y is double yv)
            _program.AddEquation(new SparseRow([k], [1]), yv);
        if (z is double zv)
            _program.AddEquation(new SparseRow([_net + k], [1]), zv);
    }

    /// <summary>Equation over one row or column of the net: Σ row·pole = value, in y (offset 0) or z.</summary>
    public void AlongU(SparseRow row, int j, bool height, double value) =>
        _program.AddEquation(new SparseRow(Array.ConvertAll(row.Indices, i => (height ? _net : 0) + (i * _v.Count) + j), row.Values), value);

    /// <summary>Equation over one column of the net.</summary>
    public void AlongV(SparseRow row, int i, bool height, double value) =>
        _program.AddEquation(new SparseRow(Array.ConvertAll(row.Indices, j => (height ? _net : 0) + (i * _v.Count) + j), row.Values), value);

    /// <summary>Angle of the section from level at the keel.</summary>
    public void KeelAngle(double u, double angle, double rise)
    {
        // z_v - tan(angle) y_v = z_u x_v / x_u on the edge v = 0, where z_u is the keel's own.
        SparseRow nu = SplineRows.At(_u, u, 0), nuu = SplineRows.At(_u, u, 1), dv = SplineRows.At(_v, 0, 1);
        double xu = 0, xv = 0;
        var indices = new List<int>();
        var values = new List<double>();
        for (var a = 0; a < nu.Count; a++)
        {
            for (var b = 0; b < dv.Count; b++)
            {
                var k = (nu.Indices[a] * _v.Count) + dv.Indices[b];
                var w = nu.Values[a] * dv.Values[b];
                xv += w * _x[k];
                indices.Add(_net + k);
                values.Add(w);
                indices.Add(k);
                values.Add(-Math.Tan(angle) * w);
            }

            xu += nuu.Values[a] * _x[nuu.Indices[a] * _v.Count];
        }

        _program.AddEquation(new SparseRow([.. indices], [.. values]), rise * xv / xu);
    }

    /// <summary>Solves, linearising the convexity rows a few times.</summary>
    /// <param name="convex">Whether waterlines and diagonals are kept from hollows; sections always are.</param>
    /// <param name="passes">Times the rows are linearised.</param>
    public BSplineSurface Solve(bool convex, int passes)
    {
        var fold = FoldRows();
        var net = _program.Solve(fold).X;
        var rows = new List<ElasticRow>();
        var merit = MeritOf(net, fold, convex);
        for (Passes = 0; Passes < passes; Passes++)
        {
            if (Passes == Stiffness.SoftPasses)
            {
                _hardness = 1;
                merit = MeritOf(net, fold, convex);
            }

            rows.Clear();
            rows.AddRange(fold);
            foreach (var sample in _samples)
                AddConvexity(rows, sample, net, convex);
            var result = _program.Solve(rows, net);
            Steps += result.Steps;

            // The rows are tangents to curved bounds: go only as far as the true cost falls.
            var better = false;
            for (var length = 1.0; length > 0.02 && !better; length /= 2)
            {
                var trial = new double[net.Length];
                for (var k = 0; k < net.Length; k++)
                    trial[k] = net[k] + (length * (result.X[k] - net[k]));
                var cost = MeritOf(trial, fold, convex);
                better = cost < merit - (1e-6 * Math.Abs(merit));
                if (better)
                    (net, merit) = (trial, cost);
            }

            if (!better && Passes >= Stiffness.SoftPasses)
                break;
        }

        return Surface(net);
    }

    /// <summary>Energy plus what the bounds cost at a net itself, nothing linearised.</summary>
    private double MeritOf(double[] net, List<ElasticRow> fold, bool convex)
    {
        var cost = _program.EnergyOf(net);
        foreach (var row in fold)
            cost += Cost(row.Row.Dot(net) - row.Bound, row.Weight);
        foreach (var sample in _samples)
        {
            if (BowsAt(sample, net, convex) is not Bows bows)
                continue;
            foreach (var bow in bows)
                cost += Cost(bow.Scale * bow.Value, bow.Weight);
        }

        return cost;

        static double Cost(double violation, double weight) => violation > 0 ? 0.5 * weight * violation * violation : 0;
    }

    private BSplineSurface Surface(double[] net)
    {
        var poles = new Point3[_u.Count, _v.Count];
        for (var i = 0; i < _u.Count; i++)
        {
            for (var j = 0; j < _v.Count; j++)
            {
                var k = (i * _v.Count) + j;
                poles[i, j] = new Point3(_x[k], net[k], net[_net + k]);
            }
        }

        return new BSplineSurface(_u, _v, poles);
    }

    private void AddEnergy()
    {
        double[][] a = [Gram(_u, 0), Gram(_u, 1), Gram(_u, 2)], b = [Gram(_v, 0), Gram(_v, 1), Gram(_v, 2)];
        int nu = _u.Count, nv = _v.Count;
        var s = Stiffness;
        for (var i = 0; i < nu; i++)
        {
            for (var k = Math.Max(0, i - 3); k <= Math.Min(nu - 1, i + 3); k++)
            {
                for (var j = 0; j < nv; j++)
                {
                    for (var l = Math.Max(0, j - 3); l <= Math.Min(nv - 1, j + 3); l++)
                    {
                        int ik = (i * nu) + k, jl = (j * nv) + l;
                        var h = (s.Along * a[2][ik] * b[0][jl]) + (2 * s.Twist * a[1][ik] * b[1][jl]) + (s.Across * a[0][ik] * b[2][jl]);
                        int p = (i * nv) + j, q = (k * nv) + l;
                        _program.AddCurvature(p, q, h);
                        _program.AddCurvature(_net + p, _net + q, h);
                    }
                }
            }
        }
    }

    private static double[] Gram(SplineBasis basis, int derivative)
    {
        var n = basis.Count;
        var gram = new double[n * n];
        SplineRows.ForGaussPoints(basis, 0, 1, 4, (t, w) =>
        {
            var row = SplineRows.At(basis, t, derivative);
            for (var a = 0; a < row.Count; a++)
            {
                for (var b = 0; b < row.Count; b++)
                    gram[(row.Indices[a] * n) + row.Indices[b]] += w * row.Values[a] * row.Values[b];
            }
        });
        return gram;
    }

    private void AddSamples()
    {
        // The end spans hold the short sections that cross the stem: they are sampled closer toward the end.
        var last = _u.Breaks.Count - 1;
        double fore = _u.Breaks[1], aft = 1 - _u.Breaks[last - 1];
        double[] toEnds = [0.04, 0.12, 0.3, 0.5, 0.75];
        List<double> along =
        [
            .. toEnds.Select(t => fore * t),
            .. Between([.. _u.Breaks.Skip(1).Take(last - 1)], Stiffness.SamplesAlong),
            .. toEnds.Reverse().Select(t => 1 - (aft * t)),
        ];
        foreach (var u in along)
        {
            foreach (var v in Between(_v.Breaks, Stiffness.SamplesAcross))
                _samples.Add(new Sample(_u, _v, _x, u, v));
        }

        // The keel's own edge, closer toward the ends where it turns into the stem: the deadrise never falls below level.
        foreach (var u in Between(_u.Breaks, 4).Concat([0.002, 0.006, 0.994, 0.998]))
            _edge.Add(new Sample(_u, _v, _x, u, 0));
        foreach (var u in (double[])[0, 0.005, 0.015, 0.03, 0.97, 0.985, 0.995, 1])
        {
            foreach (var v in (double[])[0.008, 0.02, 0.04, 0.08])
                _edge.Add(new Sample(_u, _v, _x, u, v));
        }
    }

    private static IEnumerable<double> Between(IReadOnlyList<double> breaks, int perSpan)
    {
        for (var s = 0; s + 1 < breaks.Count; s++)
        {
            for (var k = 0; k < perSpan; k++)
                yield return breaks[s] + ((breaks[s + 1] - breaks[s]) * (k + 0.5) / perSpan);
        }
    }

    private List<ElasticRow> FoldRows()
    {
        var rows = new List<ElasticRow>();
        foreach (var s in _samples.Concat(_edge))
        {
            var least = _scale.LeastRise(s.U, s.V);
            var row = s.Row(_net, default, new Partials(s.Xv, -s.Xu, 0, 0, 0));
            rows.Add(new ElasticRow(row.Times(1 / _scale.Length), -least, Stiffness.Fold));
        }

        return rows;
    }

    private void AddConvexity(List<ElasticRow> rows, Sample s, double[] net, bool convex)
    {
        if (BowsAt(s, net, convex) is not Bows bows)
            return;
        foreach (var bow in bows)
        {
            // What bulges this much will not turn hollow in one step; if it did, the true cost would hold the step back.
            if (bow.Scale * bow.Value < -Ample)
                continue;
            var row = bow.Row(s, _net);
            rows.Add(new ElasticRow(row, row.Dot(net) - (bow.Scale * bow.Value), bow.Weight));
        }
    }

    /// <summary>The bows that convexity bounds at a sample; null where the skin is nearly folded and the fold rows come first.</summary>
    private Bows? BowsAt(Sample s, double[] net, bool convex)
    {
        var at = new SkinPoint(s, s.JetOf(net, _net));
        if (at.Delta < 0.3 * _scale.LeastRise(s.U, s.V) * _scale.Length)
            return null;

        // A quarter of the parameter up the section, whatever length that is here; the bow is taken square to the section.
        var section = Bow.Of(at, 0, at.Delta / s.Xu / 4, 1 / (8 * Math.Sqrt(1 + (at.Q * at.Q))), Stiffness.Sections * _hardness);
        if (!convex)
            return new Bows(section, null, null);

        // A hollow this far from the end can be no longer than about twice that distance, nor than an eighth of the hull.
        var reach = _scale.Length * Math.Min(0.125, 2 * Math.Min(s.U, 1 - s.U));
        var cos = 1 / Math.Sqrt(1 + (at.P * at.P));
        var waterline = Bow.Of(at, reach, 0, cos * cos * cos / 8, Stiffness.Waterlines * _hardness);

        // Along a 45-degree diagonal, z falls as y grows: dz/dx = -y', y' = p / (1 + q).
        Bow? diagonal = at.Q > -0.5
            ? Bow.Of(at, reach, -reach * at.P / (1 + at.Q), 1 / (8 * (1 + at.Q)), Stiffness.Diagonals * _hardness)
            : null;
        return new Bows(section, waterline, diagonal);
    }
}
