using Lines.Hull.Form;
using Lines.Hull.Sections;

namespace Lines.Hull.Strength;

/// <summary>The sections of one hull at equal steps along it, as outlines of straight pieces.</summary>
/// <remarks><b>Accuracy.</b> For bending only: the displacement of the outlines agrees with the hull's to 1e-3.</remarks>
internal sealed class SectionOutlines
{
    /// <summary>Steps along the hull, and pieces of an outline for each span of the skin.</summary>
    private const int Steps = 100, Pieces = 10;

    private readonly (double Y, double Z)[][] _halves;

    public SectionOutlines(PlacedHull hull)
    {
        var side = hull.Surface.Side;
        double[] ends = [.. new[] { side.U.Start, side.U.End }.SelectMany(u => Enumerable.Range(0, 65).Select(k => side.PointAt(u, k / 64.0).X))];
        double fore = ends.Min(), aft = ends.Max();
        (Hull, Fore, Step) = (hull, fore + hull.Place.X, (aft - fore) / Steps);
        Places = [.. Enumerable.Range(0, Steps + 1).Select(k => Fore + (k * Step))];
        _halves = [.. Enumerable.Range(0, Steps + 1).Select(k => Half(hull.Surface, fore + (k * Step)))];
    }

    /// <summary>The hull.</summary>
    public PlacedHull Hull { get; }

    /// <summary>Its fore end, frame of the boat [m].</summary>
    public double Fore { get; }

    /// <summary>Distance of the sections [m].</summary>
    public double Step { get; }

    /// <summary>Places of the sections, frame of the boat [m].</summary>
    public double[] Places { get; }

    /// <summary>A load told at the sections.</summary>
    /// <param name="perLength">The load at every section, per meter.</param>
    public LoadAlong Along(double[] perLength) => new(Fore, Step, perLength);

    /// <summary>What the water carries along the hull.</summary>
    /// <param name="height">Height of the water over the base line of the boat on its centerplane at a place [m].</param>
    /// <param name="slope">Rise of the water to starboard.</param>
    /// <param name="perArea">Lift of a square meter of section per meter of length.</param>
    public LoadAlong Below(Func<double, double> height, double slope, double perArea) => Along([.. Places.Select((x, k) =>
    {
        var level = height(x) + (slope * Hull.Place.Y) - Hull.Place.Z;
        return perArea * (HalfBelow(_halves[k], level, slope) + HalfBelow(_halves[k], level, -slope));
    })]);

    /// <summary>Depth of the section at a place, keel to top [m].</summary>
    /// <param name="x">Place, frame of the boat [m].</param>
    public double DepthAt(double x)
    {
        var half = _halves[Math.Clamp((int)Math.Round((x - Fore) / Step), 0, Steps)];
        return half.Max(p => p.Z) - half.Min(p => p.Z);
    }

    private static (double Y, double Z)[] Half(HullSurface hull, double x)
    {
        var outline = new List<(double Y, double Z)>();
        foreach (var patch in hull.Patches)
        {
            var breaks = patch.V.Breaks;
            for (var i = 1; i < breaks.Count; i++)
            {
                for (var k = 0; k <= Pieces; k++)
                {
                    var v = breaks[i - 1] + ((breaks[i] - breaks[i - 1]) * k / Pieces);
                    var (u, reached) = StationPlace.On(patch, x, v);
                    var p = patch.PointAt(u, v);
                    outline.Add((reached ? p.Y : 0, p.Z));
                }
            }
        }

        // To the centerplane below and above, where the section does not end there already.
        return [(0, outline[0].Z), .. outline, (0, outline[^1].Z)];
    }

    // Area between the centerplane and the outline, below z = level + slope y: corners clipped, strips added.
    private static double HalfBelow((double Y, double Z)[] outline, double level, double slope)
    {
        double area = 0;
        for (var k = 0; k < outline.Length; k++)
        {
            var (p, q) = (outline[k], outline[(k + 1) % outline.Length]);
            // Moved so that the water is z = 0: a shear, which keeps areas.
            double zp = p.Z - level - (slope * p.Y), zq = q.Z - level - (slope * q.Y);
            if (zp >= 0 && zq >= 0)
                continue;
            double yp = p.Y, yq = q.Y;
            if (zp > 0)
                (yp, zp) = (yp + ((yq - yp) * zp / (zp - zq)), 0);
            else if (zq > 0)
                (yq, zq) = (yq + ((yp - yq) * zq / (zq - zp)), 0);
            area += (yp + yq) / 2 * (zq - zp);
        }

        return area;
    }
}
