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
    /// <summary>Shapes a quarter-ellipse stem that leaves the keel tangentially and stands plumb at the sheer.</summary>
    /// <remarks>
    /// <para><b>Method.</b> Heights crowd toward the forefoot by a power law that puts the design waterline on its iso-line;
    /// the profile is the ellipse sheared to the keel's slope, fitted by least squares with its ends, its waterline height and
    /// both end tangents as equations.</para>
    /// </remarks>
    /// <param name="v">Basis up the section.</param>
    /// <param name="waterlineV">Parameter of the design waterline.</param>
    /// <param name="keel">Height of the profile's foot [m].</param>
    /// <param name="draft">Height of the design waterline [m].</param>
    /// <param name="sheer">Height of the sheer [m].</param>
    /// <param name="foot">Distance of the foot from the extreme point [m].</param>
    /// <param name="slope">Rise of the keel toward this end at the foot, per meter.</param>
    public static EndProfile Stem(
        SplineBasis v, double waterlineV, double keel, double draft, double sheer, double foot, double slope)
    {
        var z = StemHeights(v, waterlineV, keel, draft, sheer);
        return new EndProfile(StemDistances(v, z, keel, sheer, foot, slope, out var hollow), new double[v.Count], z, hollow);
    }

    /// <summary>Shapes the edge of a transom: a convex batten in its plane from the foot through the waterline to the sheer.</summary>
    /// <param name="v">Basis up the section.</param>
    /// <param name="waterlineV">Parameter of the design waterline.</param>
    /// <param name="d">Dials.</param>
    /// <param name="t">The transom's own dials.</param>
    /// <param name="waterlineY">Half-breadth where the design waterline ends on the transom [m].</param>
    /// <param name="midship">Section at the widest station, whose character the transom takes.</param>
    public static EndProfile Transom(
        SplineBasis v, double waterlineV, HullDials d, TransomStern t, double waterlineY, MidshipSection midship)
    {
        var edge = t.Breadth / 2 * (d.Midship.Flare < 0 ? midship.Y[^1] / (d.Beam / 2) : 1);
        var section = SectionBatten.Through(v, waterlineV, waterlineY, t.Foot, d.Draft, t.Sheer, edge, midship);
        for (var pass = 0; d.Midship.Flare < 0 && pass < 30; pass++)
        {
            var excess = section.GreatestHalfBreadth() - (t.Breadth / 2);
            if (Math.Abs(excess) < 1e-10)
                break;
            edge -= excess;
            section = SectionBatten.Through(v, waterlineV, waterlineY, t.Foot, d.Draft, t.Sheer, edge, midship);
        }

        double slope = Math.Tan(t.Rake), aftmost = t.Rake >= 0 ? t.Sheer : t.Foot;
        return new EndProfile(Array.ConvertAll(section.Z, z => slope * (aftmost - z)), section.Y, section.Z, section.Hollow);
    }

    private static double[] StemHeights(SplineBasis v, double waterlineV, double keel, double draft, double sheer)
    {
        var power = Math.Clamp(Math.Log((draft - keel) / (sheer - keel)) / Math.Log(waterlineV), 1.2, 8);
        var program = new ElasticProgram(v.Count);
        program.AddEquation(SplineRows.At(v, 0, 0), keel);
        program.AddEquation(SplineRows.At(v, 1, 0), sheer);
        program.AddEquation(SplineRows.At(v, waterlineV, 0), draft);
        var rows = new List<ElasticRow>();
        for (var k = 0; k <= 40; k++)
        {
            var t = k / 40.0;
            program.AddSquare(SplineRows.At(v, t, 0), keel + ((sheer - keel) * Math.Pow(t, power)), 1);
            rows.Add(new ElasticRow(SplineRows.At(v, t, 1).Times(-1), -0.02 * t * (sheer - keel), 1e4));
        }

        return program.Solve(rows).X;
    }

    private static double[] StemDistances(SplineBasis v, double[] z, double keel, double sheer, double foot, double slope, out double hollow)
    {
        var program = new ElasticProgram(v.Count);
        program.AddEquation(SplineRows.At(v, 0, 0), foot);
        program.AddEquation(SplineRows.At(v, 1, 0), 0);
        program.AddEquation(SplineRows.At(v, 1, 1), 0);
        if (slope > 1e-12)
        {
            // Tangent to the keel: the first leg of the net runs along the keel's slope.
            program.AddEquation(new SparseRow([1], [1]), foot - ((z[1] - z[0]) / slope));
        }

        var rows = new List<ElasticRow>();
        for (var k = 0; k <= 40; k++)
        {
            var t = k / 40.0;
            program.AddSquare(SplineRows.At(v, t, 0), OnEllipse(SplineRows.At(v, t, 0).Dot(z), keel, sheer, foot, slope), 1);
            rows.Add(new ElasticRow(SplineRows.At(v, t, 1), 0, 1e4));

            // The profile turns one way all the way up: its sag over an eighth of the parameter, x as a function of z, is none to the hollow side.
            double rise = SplineRows.At(v, t, 1).Dot(z), bend = SplineRows.At(v, t, 2).Dot(z), sag = 1 / (512 * (foot + sheer - keel));
            rows.Add(new ElasticRow(SplineRows.At(v, t, 2).Times(-rise * sag).Plus(SplineRows.At(v, t, 1).Times(bend * sag)), 0, 1e9));
        }

        var result = program.Solve(rows);
        hollow = result.Violation;
        return result.X;
    }

    /// <summary>Distance of the sheared quarter ellipse at a height.</summary>
    private static double OnEllipse(double height, double keel, double sheer, double foot, double slope)
    {
        double low = 0, high = Math.PI / 2;
        for (var k = 0; k < 60; k++)
        {
            var phi = (low + high) / 2;
            var z = keel + (slope * foot * Math.Sin(phi)) + ((sheer - keel - (slope * foot)) * (1 - Math.Cos(phi)));
            if (z < height)
                low = phi;
            else
                high = phi;
        }

        return foot * (1 - Math.Sin((low + high) / 2));
    }
}
