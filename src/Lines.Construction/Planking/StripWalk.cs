using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Construction.Planking;

/// <summary>One strip followed along the hull, station by station.</summary>
internal sealed class StripWalk
{
    private readonly IReadOnlyList<StationStrips> _stations;

    /// <summary>Follows a strip.</summary>
    /// <param name="stations">The sections, from the bow.</param>
    /// <param name="guides">Girth from the sheer to the line the first strip is laid along, one for each section [m].</param>
    /// <param name="width">Width of a strip [m].</param>
    /// <param name="index">The strip: 0 lies right below that line, -1 right above.</param>
    public StripWalk(IReadOnlyList<StationStrips> stations, IReadOnlyList<double> guides, double width, int index)
    {
        _stations = stations;
        var near = index >= 0 ? index : index + 1;
        double[] edge = [.. guides.Select(g => g + (near * width))];
        double[] room = [.. edge.Select((e, i) => index >= 0 ? stations[i].Girth - e : e)];
        Centers = [.. stations.Select((s, i) => guides[i] + ((index + 0.5) * width) is var c && room[i] > 0 && c > 0 && c < s.Girth ? c : double.NaN)];
        for (var i = 0; i < stations.Count; i++)
        {
            if (room[i] > 0 && (i == 0 || room[i - 1] <= 0))
                Lengths.Add(Run(edge, room, i));
        }
    }

    /// <summary>Lengths of its parts [m].</summary>
    public List<double> Lengths { get; } = [];

    /// <summary>Girth of its middle at every section [m]; not a number where that is not on the skin.</summary>
    public IReadOnlyList<double> Centers { get; }

    /// <summary>Where the middle of the strip lies at a section, with its direction; null where it has no neighbors there.</summary>
    /// <param name="i">The section.</param>
    public StripPlace? At(int i)
    {
        if (i < 1 || i > _stations.Count - 2 || double.IsNaN(Centers[i - 1] + Centers[i] + Centers[i + 1]))
            return null;
        SurfaceJet before = _stations[i - 1].At(Centers[i - 1]), here = _stations[i].At(Centers[i]), after = _stations[i + 1].At(Centers[i + 1]);
        Vector3 first = here.Point - before.Point, second = after.Point - here.Point;
        double a = first.Length, b = second.Length;

        // The parabola through three points: its slope and its bend at the middle one.
        var along = (((b / a) * first) + ((a / b) * second)).Unit();
        var bend = (2 / (a + b)) * (((1 / b) * second) - ((1 / a) * first));
        return new StripPlace(here, along, bend);
    }

    private double Run(double[] edge, double[] room, int from)
    {
        var length = from == 0 ? 0 : Part(from, from - 1);
        var i = from;
        for (; i + 1 < _stations.Count && room[i + 1] > 0; i++)
            length += _stations[i].At(edge[i]).Point.DistanceTo(_stations[i + 1].At(edge[i + 1]).Point);
        return length + (i + 1 < _stations.Count ? Part(i, i + 1) : 0);

        // From the last section it is found at to where it runs out before the next.
        double Part(int inside, int outside)
        {
            var part = room[inside] / (room[inside] - room[outside]);
            var end = _stations[outside].At(Math.Clamp(edge[outside], 0, _stations[outside].Girth)).Point;
            return part * _stations[inside].At(edge[inside]).Point.DistanceTo(end);
        }
    }
}

/// <summary>A place of the middle of a strip.</summary>
/// <param name="Skin">The skin there.</param>
/// <param name="Along">Unit vector along the strip.</param>
/// <param name="Bend">Its curvature vector [1/m].</param>
internal readonly record struct StripPlace(SurfaceJet Skin, Vector3 Along, Vector3 Bend)
{
    /// <summary>How the strip is bent and twisted to lie on the skin [1/m, rad/m].</summary>
    /// <remarks><b>Method.</b> The second fundamental form to the inward normal, in the strip's direction and square to it: twist is the mixed value, which
    /// Euler and Bonnet call geodesic torsion [doCarmo].</remarks>
    public (double Flat, double Across, double Twist, double Edge) Curvatures()
    {
        Vector3 u = Skin.U, v = Skin.V, outward = v.Cross(u).Unit(), square = outward.Cross(Along);
        double l = -Skin.UU.Dot(outward), m = -Skin.UV.Dot(outward), n = -Skin.VV.Dot(outward);
        var (au, av) = In(Along);
        var (bu, bv) = In(square);
        return (
            (l * au * au) + (2 * m * au * av) + (n * av * av),
            (l * bu * bu) + (2 * m * bu * bv) + (n * bv * bv),
            (l * au * bu) + (m * ((au * bv) + (av * bu))) + (n * av * bv),
            Bend.Dot(square));

        (double U, double V) In(Vector3 d)
        {
            double uu = u.Dot(u), uv = u.Dot(v), vv = v.Dot(v), du = d.Dot(u), dv = d.Dot(v), det = (uu * vv) - (uv * uv);
            return (((vv * du) - (uv * dv)) / det, ((uu * dv) - (uv * du)) / det);
        }
    }
}
