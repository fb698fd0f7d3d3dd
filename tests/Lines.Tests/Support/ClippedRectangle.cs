using Lines.Hull.Hydrostatics;

namespace Lines.Tests.Support;

/// <summary>A rectangle from z = 0, centered on y = 0, below a heeled water line: corners clipped, areas by the shoelace rule.</summary>
internal static class ClippedRectangle
{
    /// <summary>Area, its center, and the width of the water line.</summary>
    public static (double Area, double Y, double Z, double Width) Below(double breadth, double depth, WaterPlane water)
    {
        (double Y, double Z)[] corners = [(breadth / 2, 0), (breadth / 2, depth), (-breadth / 2, depth), (-breadth / 2, 0)];
        double Height((double Y, double Z) p) => (water.Up.Y * p.Y) + (water.Up.Z * p.Z) - water.Level;
        List<(double Y, double Z)> kept = [], rim = [];
        for (var k = 0; k < 4; k++)
        {
            var (p, q) = (corners[k], corners[(k + 1) % 4]);
            double fp = Height(p), fq = Height(q);
            if (fp < 0)
                kept.Add(p);
            if (fp < 0 == fq < 0)
                continue;
            var t = fp / (fp - fq);
            (double Y, double Z) cut = (p.Y + (t * (q.Y - p.Y)), p.Z + (t * (q.Z - p.Z)));
            kept.Add(cut);
            rim.Add(cut);
        }

        double area = 0, y = 0, z = 0;
        for (var k = 0; k < kept.Count; k++)
        {
            var (p, q) = (kept[k], kept[(k + 1) % kept.Count]);
            var cross = (p.Y * q.Z) - (q.Y * p.Z);
            area += cross / 2;
            y += cross * (p.Y + q.Y) / 6;
            z += cross * (p.Z + q.Z) / 6;
        }

        return (area, y / area, z / area, rim.Count < 2 ? 0 : Math.Sqrt(Math.Pow(rim[0].Y - rim[1].Y, 2) + Math.Pow(rim[0].Z - rim[1].Z, 2)));
    }
}
