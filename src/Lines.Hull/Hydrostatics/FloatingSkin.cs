using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>One patch of a floating body with the fluxes of its whole pieces, ready to be clipped by any water plane.</summary>
internal sealed class FloatingSkin
{
    /// <summary>Distance from the water that counts as lying in it [m]: well above rounding, far below the model length of 1 µm.</summary>
    internal const double Touching = 1e-11;

    private readonly double[] _whole;

    public FloatingSkin(BSplineSurface surface)
    {
        Net = new BezierNet(surface);
        _whole = new double[4 * Net.Rows * Net.Columns];
        for (var i = 0; i < Net.Rows; i++)
        {
            for (var j = 0; j < Net.Columns; j++)
                SkinClip.Whole(Net.Piece(i, j, uFirst: true), 0, 1, 0, 1, 1, _whole.AsSpan(4 * ((i * Net.Columns) + j), 4));
        }

        FlatFore = Broad(0);
        FlatAft = Broad(3 * Net.Rows);

        bool Broad(int i) => Enumerable.Range(0, Net.Stride).Any(j => Math.Abs(Net.Points[(i * Net.Stride) + j].Y) > Touching);
    }

    public BezierNet Net { get; }

    /// <summary>Whether the edge u = 0 leaves the centerplane: then a flat end closes the body there.</summary>
    public bool FlatFore { get; }

    /// <summary>The same of the edge u = 1.</summary>
    public bool FlatAft { get; }

    /// <summary>Adds the fluxes below a plane, and the rim the plane cuts.</summary>
    public void Add(WaterPlane water, double resolution, Span<double> sums)
    {
        var heights = HeightsOver(water);
        var clip = new SkinClip(water, resolution, sums);
        Span<double> box = stackalloc double[16];
        for (var i = 0; i < Net.Rows; i++)
        {
            for (var j = 0; j < Net.Columns; j++)
            {
                double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
                for (var k = 0; k < 4; k++)
                {
                    var row = heights.AsSpan((((3 * i) + k) * Net.Stride) + (3 * j), 4);
                    row.CopyTo(box[(4 * k)..]);
                    foreach (var h in row)
                        (least, greatest) = (Math.Min(least, h), Math.Max(greatest, h));
                }

                if (least >= 0)
                    continue;
                if (greatest >= 0)
                    clip.Piece(Net, i, j, box);
                else
                    AddWhole(i, j, sums);
            }
        }
    }

    /// <summary>Adds the straight rims on the flat ends, both sides, in coordinates of the boat.</summary>
    /// <param name="water">The water plane, in the frame of the body.</param>
    /// <param name="mirrored">Whether this is the port side: then <paramref name="water"/> is the plane's mirror image.</param>
    /// <param name="corners">Where the rims on the fore and on the after end are counted from; the first crossing found sets them.</param>
    /// <param name="sums">The six sums of the waterplane, added to.</param>
    public void AddFlatEnds(WaterPlane water, bool mirrored, (double A, double B)?[] corners, Span<double> sums)
    {
        for (var end = 0; end < 2; end++)
        {
            if (!(end == 0 ? FlatFore : FlatAft))
                continue;
            foreach (var (place, rises) in EdgeCrossings(water, end))
            {
                (double A, double B) here = (water.Aft.Dot(place), (mirrored ? -1 : 1) * water.Across.Dot(place));
                var corner = corners[end] ??= here;
                // On the after end of the starboard skin a rising edge is where the rim comes off the end and goes on forward along the skin.
                WaterplaneRim.AddStraight(corner, here, rises == (end == 1) != mirrored ? 1 : -1, sums);
            }
        }
    }

    /// <summary>The greatest and the least height of the whole patch over a plane [m].</summary>
    public (double Least, double Greatest) Reach(WaterPlane water, double tolerance)
    {
        var heights = HeightsOver(water);
        return (SkinReach.Least(heights, Net, tolerance), -SkinReach.Least([.. heights.Select(h => -h)], Net, tolerance));
    }

    /// <summary>The lowest point of the edge v = 1 over a plane.</summary>
    public (double Height, Point3 At) LowestEdge(WaterPlane water)
    {
        (double Height, double U) best = (double.PositiveInfinity, 0);
        Span<double> b = stackalloc double[4];
        for (var i = 0; i < Net.Rows; i++)
        {
            for (var k = 0; k < 4; k++)
                b[k] = water.HeightOf(Net.Points[((((3 * i) + k) + 1) * Net.Stride) - 1]);
            var (t, value) = BernsteinCubic.Least(b);
            if (value < best.Height)
                best = (value, Net.UBreaks[i] + (t * (Net.UBreaks[i + 1] - Net.UBreaks[i])));
        }

        return (best.Height, Net.Surface.PointAt(best.U, Net.Surface.V.End));
    }

    private double[] HeightsOver(WaterPlane water)
    {
        var (up, level) = (water.Up, water.Level);
        var heights = new double[Net.Points.Length];
        for (var k = 0; k < heights.Length; k++)
        {
            ref readonly var p = ref Net.Points[k];
            var h = (up.X * p.X) + (up.Y * p.Y) + (up.Z * p.Z) - level;
            heights[k] = Math.Abs(h) < Touching ? 0 : h;
        }

        return heights;
    }

    private List<(Vector3 Place, bool Rises)> EdgeCrossings(WaterPlane water, int end)
    {
        var found = new List<(Vector3, bool)>();
        var heights = HeightsOver(water);
        Span<double> places = stackalloc double[3];
        Span<bool> rises = stackalloc bool[3];
        for (var j = 0; j < Net.Columns; j++)
        {
            var count = BernsteinCubic.Crossings(heights.AsSpan((end * 3 * Net.Rows * Net.Stride) + (3 * j), 4), places, rises);
            for (var k = 0; k < count; k++)
            {
                var v = Net.VBreaks[j] + (places[k] * (Net.VBreaks[j + 1] - Net.VBreaks[j]));
                var p = Net.Surface.PointAt(end == 0 ? Net.Surface.U.Start : Net.Surface.U.End, v);
                found.Add((new Vector3(p.X, p.Y, p.Z), rises[k]));
            }
        }

        return found;
    }

    private void AddWhole(int row, int column, Span<double> sums)
    {
        var at = 4 * ((row * Net.Columns) + column);
        for (var k = 0; k < 4; k++)
            sums[k] += _whole[at + k];
    }
}
