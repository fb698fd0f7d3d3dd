using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>One end of the hull from the keel up to the sheer: stem, sternpost, or the edge of a transom.</summary>
/// <param name="Inward">Poles of the distance from the hull's extreme point at this end, inward [m].</param>
/// <param name="Y">Poles of the half-breadth [m]; all zero at a stem.</param>
/// <param name="Z">Poles of the height [m].</param>
/// <param name="Hollow">By how much the profile's or the edge's convexity gave way [m].</param>
internal sealed record EndProfile(double[] Inward, double[] Y, double[] Z, double Hollow)
{
    /// <summary>Least rate at which a stem leaves its foot, as a part of an even one.</summary>
    private const double LeastRate = 0.3;

    /// <summary>Distance inward of the profile at a height between its foot and its head [m].</summary>
    public double InwardAt(SplineBasis v, double height)
    {
        var at = Root.FirstWhere(t => SplineRows.Value(v, t, 0, Z) >= height, 0, 1);
        return SplineRows.Value(v, at, 0, Inward);
    }

    /// <summary>Shapes a stem that leaves the keel tangentially and runs up to the sheer as its profile asks.</summary>
    /// <remarks>
    /// <para><b>Method.</b> The profile is an arc of a conic (<see cref="StemConic"/>). The way round it, by the angle of its ellipse, is a line and a power
    /// of the parameter that put the reference line on its iso-line and leave the foot at a rate of their own, so that the turn into the keel is no knuckle.
    /// Fitted by least squares with its ends, the height of the reference line and both end tangents as equations, and turning one way.</para>
    /// </remarks>
    /// <param name="v">Basis up the section.</param>
    /// <param name="waterlineV">Parameter of the design waterline.</param>
    /// <param name="keel">Height of the profile's foot [m].</param>
    /// <param name="reference">Height at which the reference line ends on it [m].</param>
    /// <param name="sheer">Height of the sheer [m].</param>
    /// <param name="foot">Distance of the foot from the extreme point [m].</param>
    /// <param name="slope">Rise of the keel toward this end at the foot, per meter.</param>
    /// <param name="profile">What the stem looks like.</param>
    public static EndProfile Stem(
        SplineBasis v, double waterlineV, double keel, double reference, double sheer, double foot, double slope, StemProfile profile)
    {
        var conic = StemConic.Of(keel, sheer, foot, slope, profile);
        var turn = conic.AngleAt(reference) / (Math.PI / 2);
        var rate = (turn - (waterlineV * waterlineV)) / (waterlineV * (1 - waterlineV));
        var power = 2.0;
        if (rate < LeastRate)
        {
            rate = Math.Min(LeastRate, 0.6 * turn / waterlineV);
            power = Math.Log((turn - (rate * waterlineV)) / (1 - rate)) / Math.Log(waterlineV);
        }

        // Heights and distances together: the first leg runs along the keel's slope.
        var n = v.Count;
        using var program = new ElasticProgram(2 * n);
        SparseRow In(double t, int k) => SplineRows.At(v, t, k);
        SparseRow Up(double t, int k) => SplineRows.At(v, t, k).Shifted(n);
        program.AddEquation(In(0, 0), foot);
        program.AddEquation(In(1, 0), 0);
        var (leanX, leanZ) = conic.HeadDirection;
        program.AddEquation(In(1, 1).Times(leanZ).Plus(Up(1, 1).Times(-leanX)), 0);
        program.AddEquation(Up(0, 0), keel);
        program.AddEquation(Up(1, 0), sheer);
        program.AddEquation(Up(waterlineV, 0), reference);
        program.AddEquation(Up(0, 1).Plus(In(0, 1).Times(slope)), 0);
        var rows = new List<ElasticRow>();
        for (var k = 0; k <= 40; k++)
        {
            double t = k / 40.0, angle = Math.PI / 2 * ((rate * t) + ((1 - rate) * Math.Pow(t, power)));
            double rate1 = Math.PI / 2 * (rate + ((1 - rate) * power * Math.Pow(t, power - 1))), rate2 = Math.PI / 2 * (1 - rate) * power * (power - 1) * Math.Pow(t, power - 2);
            var (x, z) = conic.At(angle);
            program.AddSquare(In(t, 0), x, 1);
            program.AddSquare(Up(t, 0), z, 1);
            rows.Add(new ElasticRow(Up(t, 1).Times(-1), -0.02 * t * (sheer - keel), 1e4));
            rows.Add(new ElasticRow(In(t, 1), 0, 1e4));

            // It turns one way all the way up: its sag over an eighth of the parameter, linearized at the conic.
            var ((x1, z1), (x2, z2)) = conic.Derivatives(angle);
            (x2, z2) = ((x2 * rate1 * rate1) + (x1 * rate2), (z2 * rate1 * rate1) + (z1 * rate2));
            (x1, z1) = (x1 * rate1, z1 * rate1);
            var sag = 1 / (512 * (foot + sheer - keel));
            var row = In(t, 2).Times(-z1).Plus(Up(t, 1).Times(-x2)).Plus(In(t, 1).Times(z2)).Plus(Up(t, 2).Times(x1)).Times(sag);
            rows.Add(new ElasticRow(row, ((x1 * z2) - (x2 * z1)) * sag, 1e9));
        }

        var result = program.Solve(rows);
        return new EndProfile(result.X[..n], new double[n], result.X[n..], result.Violation);
    }

    /// <summary>Shapes the edge of a transom: a convex batten in its plane from the foot through the waterline to the sheer.</summary>
    /// <param name="v">Basis up the section.</param>
    /// <param name="waterlineV">Parameter of the design waterline.</param>
    /// <param name="reference">Height at which the reference line ends on it [m].</param>
    /// <param name="d">Dials.</param>
    /// <param name="t">The transom's own dials.</param>
    /// <param name="waterlineY">Half-breadth where the reference line ends on the transom [m].</param>
    /// <param name="midship">Section at the widest station, whose character the transom takes.</param>
    public static EndProfile Transom(
        SplineBasis v, double waterlineV, double reference, HullDials d, TransomStern t, double waterlineY, MidshipSection midship)
    {
        var edge = t.Breadth / 2 * (d.Midship.Flare < 0 ? midship.Y[^1] / (d.Beam / 2) : 1);
        var section = SectionBatten.Through(v, waterlineV, waterlineY, t.Foot, reference, t.Sheer, edge, midship);
        for (var pass = 0; d.Midship.Flare < 0 && pass < 30; pass++)
        {
            var excess = section.GreatestHalfBreadth() - (t.Breadth / 2);
            if (Math.Abs(excess) < 1e-10)
                break;
            edge -= excess;
            section = SectionBatten.Through(v, waterlineV, waterlineY, t.Foot, reference, t.Sheer, edge, midship);
        }

        double slope = Math.Tan(t.Rake), aftmost = t.Rake >= 0 ? t.Sheer : t.Foot;
        return new EndProfile(Array.ConvertAll(section.Z, z => slope * (aftmost - z)), section.Y, section.Z, section.Hollow);
    }

    /// <summary>The arc of a conic from a foot on the keel, where it has the keel's slope, to a head on the sheer.</summary>
    /// <remarks>
    /// With weight 1 it is the quarter ellipse inscribed in the corner where the tangents of its ends meet; a greater weight draws it into that corner
    /// (conics as rational quadratics: G. Farin, "Curves and Surfaces for CAGD", from memory; the form by the ellipse's own angle is worked out here).
    /// </remarks>
    private readonly record struct StemConic(Vector2 Foot, Vector2 Corner, Vector2 Head, double Weight)
    {
        /// <summary>The conic of a profile.</summary>
        public static StemConic Of(double keel, double head, double foot, double keelSlope, StemProfile profile)
        {
            // Where the tangent of the head meets that of the keel, as a part of the foot's distance from the extreme point; proportions by eye.
            var (corner, weight) = profile switch
            {
                StemProfile.Plumb => (0.0, 2.2),
                StemProfile.Raked => (0.6, 1.4),
                _ => (0.0, 1.0),
            };
            return new(new(foot, keel), new(corner * foot, keel + (keelSlope * foot * (1 - corner))), new(0, head), weight);
        }

        /// <summary>Direction at the head, of unit length: inward and up.</summary>
        public (double Inward, double Up) HeadDirection => (Head - Corner).Unit() is var lean ? (lean.X, lean.Y) : default;

        /// <summary>Distance inward and height at an angle from the foot [rad].</summary>
        public (double Inward, double Height) At(double angle)
        {
            var (p, _, _) = Jet(angle);
            return (p.X, p.Y);
        }

        /// <summary>First and second derivatives of <see cref="At"/>.</summary>
        public ((double Inward, double Height) First, (double Inward, double Height) Second) Derivatives(double angle)
        {
            var (_, p1, p2) = Jet(angle);
            return ((p1.X, p1.Y), (p2.X, p2.Y));
        }

        public double AngleAt(double height)
        {
            var conic = this;
            return Root.FirstWhere(angle => conic.At(angle).Height >= height, 0, Math.PI / 2);
        }

        private (Vector2 At, Vector2 First, Vector2 Second) Jet(double angle)
        {
            double s = Math.Sin(angle), c = Math.Cos(angle);
            var (n, d) = Mix(1 - s, s + c - 1, 1 - c);
            var (n1, d1) = Mix(-c, c - s, s);
            var (n2, d2) = Mix(s, -s - c, c);
            var p = (1 / d) * n;
            var p1 = (1 / d) * (n1 - (d1 * p));
            return (p, p1, (1 / d) * (n2 - (2 * d1 * p1) - (d2 * p)));
        }

        private (Vector2 Point, double Weight) Mix(double foot, double corner, double head) =>
            ((foot * Foot) + (Weight * corner * Corner) + (head * Head), foot + (Weight * corner) + head);
    }
}
