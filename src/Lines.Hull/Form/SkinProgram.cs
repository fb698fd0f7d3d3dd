using System.Numerics.Tensors;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The least-energy surface through the character lines, kept convex by elastic rows linearized at the surface itself.</summary>
/// <remarks>
/// <para><b>Method.</b> x of the net is given. y and z of all poles are unknowns; edges, design waterline, midship section and its
/// lengthwise slopes are equations. At sample points of the surface y is looked on as a function of x and z: y_xx ≤ 0 keeps
/// waterlines from hollows, y_zz ≤ 0 the sections, the same along a plane at 45 degrees the diagonals, and
/// x_u z_v - x_v z_u > 0 keeps heights rising up every section. All but the last are linearized and solved again.</para>
/// </remarks>
internal sealed class SkinProgram : IDisposable
{
    /// <summary>Passes at each softness before the last: begun hard, a dial turned by a thousandth ended in another of the valleys of the cost.</summary>
    private const int SoftPasses = 6;

    private const int Passes = 36;
    private const int PassesForMore = 12;

    /// <summary>Passes from a skin of nearly the same dials: more are not seen in a picture.</summary>
    private const int PassesNear = 2;

    /// <summary>Part of the cost whose saving ends a descent: each pass saves about a tenth of what the one before it did.</summary>
    private const double Saved = 1e-8;
    private const double FarHeld = 1e7;

    /// <summary>Least part of a step that is tried.</summary>
    private const double LeastPart = 0.02;

    /// <summary>How near a fullness is brought, and how often what is short of it is asked for again.</summary>
    private const double ExactFullness = 1e-6;

    private const int MostUpdates = 6;

    /// <summary>A fullness that is still this far off excludes something else that was asked.</summary>
    private const double OutOfReach = 1e-3;

    private readonly SplineBasis _u;
    private readonly SplineBasis _v;
    private readonly double[] _x;
    private readonly ElasticProgram _program;
    private readonly SkinBounds _bounds;
    private readonly List<ElasticRow> _fixed;

    // Room for what every pass fills anew.
    private readonly List<ElasticRow> _rows = [];
    private readonly List<Bow> _bows = [];
    private readonly List<Bow> _next = [];
    private readonly List<AreaGoal> _areas = [];
    private readonly int _net;
    private double[] _solved = [];

    public SkinProgram(SplineBasis u, SplineBasis v, double[] x, SkinScale scale, bool convex)
    {
        (_u, _v, _x) = (u, v, x);
        _net = u.Count * v.Count;
        _program = new ElasticProgram(2 * _net);
        _bounds = new SkinBounds(u, v, x, scale, convex);
        _fixed = _bounds.Fold();
        AddEnergy();
    }

    public double Contradiction => _program.Contradiction;

    /// <summary>Fixes a pole's y and z.</summary>
    public void Fix(int i, int j, double? y, double? z)
    {
        var k = (i * _v.Count) + j;
        if (y is double yv)
            _program.AddEquation(new SparseRow([k], [1]), yv);
        if (z is double zv)
            _program.AddEquation(new SparseRow([_net + k], [1]), zv);
    }

    /// <summary>Equation over the poles of one v: Σ row·pole = value, in y or z.</summary>
    public void AlongU(SparseRow row, int j, bool height, double value) =>
        _program.AddEquation(row with { Indices = Array.ConvertAll(row.Indices, i => (height ? _net : 0) + (i * _v.Count) + j) }, value);

    /// <summary>Equation over the poles of one u.</summary>
    public void AlongV(SparseRow row, int i, bool height, double value) =>
        _program.AddEquation(row.Shifted((height ? _net : 0) + (i * _v.Count)), value);

    /// <summary>A line of the net in plan, left to the skin: it keeps a batten's curvature as nearly as the skin lets it, and one-sided.</summary>
    /// <remarks>A sheer or a waterline laid down before the skin often left no convex topsides or bottom beside itself.</remarks>
    /// <param name="v">The iso-line, as a row up the section.</param>
    /// <param name="batten">The line as a batten of its own would lie.</param>
    /// <param name="kept">Rows over the batten's poles that keep their values exactly.</param>
    /// <param name="stiffness">Of its departure from the batten.</param>
    /// <param name="convex">Parameters between which it must bulge; null where it need not.</param>
    public void Loose(SparseRow v, BattenLine batten, IEnumerable<SparseRow> kept, double stiffness, (double From, double To)? convex)
    {
        SplineRows.ForGaussPoints(_u, 0, 1, 4, (u, w) =>
        {
            var bend = Batten.Bending(_u, batten.Abscissa, u, out var stretch);
            var length = batten.Abscissa[^1] - batten.Abscissa[0];
            _program.AddSquare(Breadth(bend, v), bend.Dot(batten.Ordinate), stiffness * w * stretch / length);
        });
        foreach (var row in kept)
            _program.AddEquation(Breadth(row, v), row.Dot(batten.Ordinate));
        foreach (var u in convex is { } part ? Batten.CurvaturePlaces(_u).Where(u => u >= part.From && u <= part.To) : [])
            _fixed.Add(new ElasticRow(Breadth(Batten.Bending(_u, batten.Abscissa, u, out _), v), 0, Batten.CurvatureStiffness));
    }

    /// <summary>A line of the net in plan comes to its end at a batten's angle, but for what convexity takes.</summary>
    /// <param name="u">The slope at the end, as a row along the line.</param>
    /// <param name="v">The iso-line, as a row up the section.</param>
    /// <param name="batten">The batten.</param>
    public void Lean(SparseRow u, SparseRow v, BattenLine batten) =>
        _program.AddSquare(Breadth(u, v), u.Dot(batten.Ordinate), SkinStiffness.EndAngle);

    /// <summary>Asks for the fullness of a waterline that is no line of the net.</summary>
    public void Enclose(CutArea area, double fullness) => _areas.Add(new AreaGoal(area, fullness) { Asked = fullness });

    /// <summary>Keeps one iso-line from falling inside another.</summary>
    /// <param name="outer">The outer, as a row up the section.</param>
    /// <param name="inner">The inner.</param>
    public void KeepOutside(SparseRow outer, SparseRow inner)
    {
        for (var k = 1; k < 20; k++)
        {
            var u = SplineRows.At(_u, k / 20.0, 0);
            _fixed.Add(new ElasticRow(Breadth(u, inner).Plus(Breadth(u, outer).Times(-1)), 0, SkinStiffness.Side));
        }
    }

    /// <summary>Keeps the side from swelling past the half-breadth of the widest station.</summary>
    /// <param name="half">That half-breadth [m].</param>
    /// <param name="widest">Parameter of that station.</param>
    public void KeepWithin(double half, double widest)
    {
        foreach (var v in (double[])[0.7, 0.85, 1])
        {
            var up = SplineRows.At(_v, v, 0);
            for (var k = 1; k < 20; k++)
            {
                // A hair inside, and more so away from that station, for an elastic row gives a little.
                var away = (k / 20.0) - widest;
                _fixed.Add(new ElasticRow(Breadth(SplineRows.At(_u, k / 20.0, 0), up), half * (1 - (0.01 * away * away)), SkinStiffness.Side));
            }
        }
    }

    /// <summary>The edge of a transom, left to the skin between its ends: it keeps the bend of a batten as nearly as the skin lets it.</summary>
    /// <param name="half">Poles of the batten's half-breadth [m].</param>
    public void LooseTransom(double[] half)
    {
        var last = (_u.Count - 1) * _v.Count;
        SplineRows.ForGaussPoints(_v, 0, 1, 4, (v, w) =>
        {
            var bend = SplineRows.At(_v, v, 2);
            _program.AddSquare(bend.Shifted(last), bend.Dot(half), SkinStiffness.Transom * w);
        });
    }

    /// <summary>Angle of the section from level at the keel.</summary>
    /// <param name="u">Where along the keel.</param>
    /// <param name="angle">The angle [rad].</param>
    /// <param name="rise">dz/du of the keel there [m].</param>
    /// <param name="leastSpread">Least dy/dv of the section there [m].</param>
    public void KeelAngle(double u, double angle, double rise, double leastSpread)
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

        // A section whose first leg shrinks to nothing would stand at any angle: it leaves the keel with a part of its natural spread.
        var spread = new Sample(_u, _v, _x, u, 0).Row(_net, new Partials(0, -1, 0, 0, 0), default);
        _fixed.Add(new ElasticRow(spread, -leastSpread, SkinStiffness.Fold));
    }

    /// <summary>Solves, linearizing the convexity rows until the true cost falls no more, softly first.</summary>
    public BSplineSurface Solve()
    {
        _solved = _program.Solve(_fixed).X;
        foreach (var hardness in (double[])[0.01, 0.1])
            Descend(SoftPasses, hardness);
        Descend(Passes, hardness: 1);
        return WithAreas();
    }

    /// <summary>Solves from a skin of nearly the same dials, in few steps.</summary>
    /// <param name="near">That skin, with as many poles.</param>
    public BSplineSurface SolveFrom(BSplineSurface near)
    {
        var net = new double[2 * _net];
        for (var k = 0; k < _net; k++)
        {
            var pole = near.PoleAt(k / _v.Count, k % _v.Count);
            (net[k], net[_net + k]) = (pole.Y, pole.Z);
        }

        _solved = _program.Onto(net);
        Descend(PassesNear, hardness: 1);
        return Surface(_solved);
    }

    /// <summary>Solves on, with further places watched for hollows and folds.</summary>
    /// <param name="places">The places.</param>
    public BSplineSurface SolveOn(IEnumerable<WatchedPlace> places)
    {
        _fixed.AddRange(places.Select(_bounds.Watch));
        Descend(PassesForMore, hardness: 1);
        return WithAreas();
    }

    /// <summary>Gives back the room that the program took.</summary>
    public void Dispose() => _program.Dispose();

    private BSplineSurface WithAreas()
    {
        for (var more = 0; more < MostUpdates && AskMore(); more++)
            Descend(PassesForMore, hardness: 1);
        return Surface(_solved);
    }

    /// <summary>Lowers the true cost, at most so many times.</summary>
    private void Descend(int passes, double hardness)
    {
        double[] net = _solved, step = new double[_solved.Length];
        var rows = _rows;
        var (bows, next) = (_bows, _next);
        _bounds.Fill(bows, net);
        double hold = 0, merit = MeritOf(net, bows, hardness);
        for (var pass = 0; pass < passes && hold < FarHeld; pass++)
        {
            rows.Clear();
            rows.AddRange(_fixed);
            _bounds.AddConvexity(rows, bows, net, hardness);
            AddAreas(rows, net);
            var result = _program.Solve(rows, net, hold);

            // The rows are tangents to curved bounds: of a step that does not lower the true cost a part is taken, and the next is held closer.
            var (before, part) = (merit, 1.0);
            for (; part > LeastPart; part *= 0.3)
            {
                TensorPrimitives.Subtract<double>(result.X, net, step);
                TensorPrimitives.MultiplyAdd<double>(step, part, net, step);
                _bounds.Fill(next, step);
                if (MeritOf(step, next, hardness) is var cost && cost < merit)
                {
                    merit = cost;
                    break;
                }
            }

            hold = part == 1 ? (hold < 0.02 ? 0 : hold / 5) : Math.Max(0.1, hold) * (part > 0.1 ? 3 : 10);
            if (!(merit < before))
                continue;
            (net, step) = (step, net);
            (bows, next) = (next, bows);
            if (part > 0.2 && before - merit < Saved * merit)
                break;
        }

        _solved = net;
    }

    /// <summary>Adds two rows for each area asked for, one from either side, linearized at a net.</summary>
    private void AddAreas(List<ElasticRow> rows, double[] net)
    {
        if (_areas.Count == 0)
            return;
        var skin = Surface(net);
        foreach (var goal in _areas)
        {
            var row = goal.Area.Row(skin, _net);
            var bound = row.Dot(net) + goal.Asked - goal.Area.Of(skin);
            rows.Add(new ElasticRow(row, bound, SkinStiffness.Fullness));
            rows.Add(new ElasticRow(row.Times(-1), -bound, SkinStiffness.Fullness));
        }
    }

    /// <summary>Asks for as much more of every area as it fell short.</summary>
    /// <returns>Whether any fell short by more than it may.</returns>
    private bool AskMore()
    {
        if (_areas.Count == 0)
            return false;
        var skin = Surface(_solved);
        var worst = 0.0;
        foreach (var goal in _areas)
        {
            var miss = goal.Fullness - goal.Area.Of(skin);
            goal.Asked += miss;
            worst = Math.Max(worst, Math.Abs(miss));
        }

        return worst is > ExactFullness and < OutOfReach;
    }

    /// <summary>Energy plus what the bounds cost at a net itself, nothing linearized.</summary>
    private double MeritOf(double[] net, List<Bow> bows, double hardness)
    {
        var cost = _program.EnergyOf(net);
        foreach (var row in _fixed)
            cost += Cost(row.Row.Dot(net) - row.Bound, row.Weight);
        foreach (var bow in bows)
            cost += Cost(bow.Depth, bow.Weight * hardness);
        if (_areas.Count > 0)
        {
            var skin = Surface(net);
            foreach (var goal in _areas)
                cost += Cost(Math.Abs(goal.Area.Of(skin) - goal.Asked), SkinStiffness.Fullness);
        }

        return cost;

        static double Cost(double violation, double weight) => violation > 0 ? 0.5 * weight * violation * violation : 0;
    }

    /// <summary>A row over the half-breadths of the net: one along u times one up the section.</summary>
    private SparseRow Breadth(SparseRow u, SparseRow v)
    {
        var indices = new int[u.Count * v.Count];
        var values = new double[indices.Length];
        for (var a = 0; a < u.Count; a++)
        {
            for (var b = 0; b < v.Count; b++)
            {
                indices[(a * v.Count) + b] = (u.Indices[a] * _v.Count) + v.Indices[b];
                values[(a * v.Count) + b] = u.Values[a] * v.Values[b];
            }
        }

        return new SparseRow(indices, values);
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
        for (var i = 0; i < nu; i++)
        {
            for (var k = Math.Max(0, i - 3); k <= Math.Min(nu - 1, i + 3); k++)
            {
                for (var j = 0; j < nv; j++)
                {
                    for (var l = Math.Max(0, j - 3); l <= Math.Min(nv - 1, j + 3); l++)
                    {
                        int ik = (i * nu) + k, jl = (j * nv) + l;
                        var h = (SkinStiffness.Along * a[2][ik] * b[0][jl]) + (2 * SkinStiffness.Twist * a[1][ik] * b[1][jl]) + (SkinStiffness.Across * a[0][ik] * b[2][jl]);
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

    /// <summary>A fullness wanted, and the one asked for so that an elastic row gives it.</summary>
    private sealed record AreaGoal(CutArea Area, double Fullness)
    {
        public double Asked { get; set; }
    }
}
