using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>Where a section of the inside of the planking crosses itself around a turn too tight for the planking.</summary>
internal static class SelfCrossing
{
    private const double Converged = 1e-11;
    private const int MostSteps = 60;
    private const int Halvings = 12;

    /// <summary>The two parameters of the one place at which the curve before a backward run meets the curve after it.</summary>
    /// <param name="section">The section.</param>
    /// <param name="nodes">Its nodes.</param>
    /// <param name="along">Their parameters.</param>
    /// <param name="plane">Its plane.</param>
    /// <param name="before">Last sound node before the run.</param>
    /// <param name="after">First sound node after it.</param>
    /// <returns>The parameters, or null where the two sides do not meet.</returns>
    public static (double First, double Second)? Of(
        InsetSection section, IReadOnlyList<InsetPoint> nodes, IReadOnlyList<double> along, Plane plane, int before, int after)
    {
        // Two axes in the plane; any will do.
        var m = plane.Normal;
        Vector3 e = Math.Abs(m.Z) < 0.7 ? new Vector3(0, 0, 1).Cross(m).Unit() : new Vector3(1, 0, 0).Cross(m).Unit(), f = m.Cross(e);
        Point2 Flat(Point3 p) => new((p - default(Point3)).Dot(e), (p - default(Point3)).Dot(f));
        Vector2 Direction(Vector3 d) => new(d.Dot(e), d.Dot(f));

        for (var i = before; i >= 0; i--)
        {
            for (var j = after; j < nodes.Count - 1; j++)
            {
                if (Meeting(Flat(nodes[i].Point), Flat(nodes[i + 1].Point), Flat(nodes[j].Point), Flat(nodes[j + 1].Point)) is null)
                    continue;
                var (first, second) = Narrowed(along[i], along[i + 1], along[j], along[j + 1]);
                return Refined(first, second);
            }
        }

        return null;

        // Halving both spans while halves of them cross brings the start near enough for the tangents, however flat they meet.
        (double, double) Narrowed(double a, double b, double c, double d)
        {
            for (var k = 0; k < Halvings; k++)
            {
                double ab = (a + b) / 2, cd = (c + d) / 2;
                Point2 pa = Flat(section.At(a).Point), pab = Flat(section.At(ab).Point), pb = Flat(section.At(b).Point);
                Point2 pc = Flat(section.At(c).Point), pcd = Flat(section.At(cd).Point), pd = Flat(section.At(d).Point);
                if (Meeting(pa, pab, pc, pcd) is not null)
                    (b, d) = (ab, cd);
                else if (Meeting(pa, pab, pcd, pd) is not null)
                    (b, c) = (ab, cd);
                else if (Meeting(pab, pb, pc, pcd) is not null)
                    (a, d) = (ab, cd);
                else if (Meeting(pab, pb, pcd, pd) is not null)
                    (a, c) = (ab, cd);
                else
                    break;
            }

            return ((a + b) / 2, (c + d) / 2);
        }

        (double, double)? Refined(double first, double second)
        {
            for (var k = 0; k < MostSteps; k++)
            {
                SectionPoint p = section.At(first), q = section.At(second);
                Vector2 gap = Flat(q.Point) - Flat(p.Point), tp = Direction(p.Down), tq = Direction(q.Down);
                if (gap.Length < Converged)
                    return (first, second);
                // Where the two tangents meet.
                var cross = tp.Cross(tq);
                first += gap.Cross(tq) / cross;
                second += gap.Cross(tp) / cross;
                if (!(first > 0 && second < section.Length && first < second))
                    return null;
            }

            return null;
        }
    }

    // Fractions of two chords at which they cross; null where they do not.
    private static (double A, double B)? Meeting(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        Vector2 ab = b - a, cd = d - c, ac = c - a;
        var cross = ab.Cross(cd);
        double s = ac.Cross(cd) / cross, t = ac.Cross(ab) / cross;
        return s is >= 0 and <= 1 && t is >= 0 and <= 1 ? (s, t) : null;
    }
}
