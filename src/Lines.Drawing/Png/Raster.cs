using Lines.Kernel.Geometry;

namespace Lines.Drawing.Png;

/// <summary>A picture of greys on white, drawn mark by mark: shapes are laid down first, then inked at once.</summary>
/// <remarks>
/// <para><b>Frame.</b> Pixels, y down; the centre of the first pixel is (0.5, 0.5).</para>
/// <para><b>Method.</b> Laying down keeps the greatest cover of each pixel, so strokes of one mark that cross or join do not
/// darken each other. The cover of a stroke is its half width plus a half, less the pixel's distance from the centre line, kept within 0 and 1;
/// that of an area is exact along x and sampled on <see cref="SubLines"/> lines to the pixel along y.</para>
/// </remarks>
internal sealed class Raster
{
    private const int SubLines = 8;

    private readonly byte[] _cover;
    private readonly int[] _first;
    private readonly int[] _end;
    private int _top;
    private int _bottom = -1;

    /// <summary>A white picture.</summary>
    public Raster(int width, int height)
    {
        (Width, Height) = (width, height);
        Pixels = new byte[width * height];
        Pixels.AsSpan().Fill(255);
        _cover = new byte[width * height];
        (_first, _end) = (new int[height], new int[height]);
        ForgetRows(0, height - 1);
    }

    /// <summary>Width [pixels].</summary>
    public int Width { get; }

    /// <summary>Height [pixels].</summary>
    public int Height { get; }

    /// <summary>The greys, row by row from the top; 0 is black.</summary>
    public byte[] Pixels { get; }

    /// <summary>Lays down a polyline drawn with a round pen.</summary>
    /// <param name="points">The polyline; one point alone is a dot.</param>
    /// <param name="width">Width of the pen [pixels]; one below a pixel is drawn a pixel wide and paler.</param>
    public void Stroke(IReadOnlyList<Point2> points, double width)
    {
        var (half, strength) = width < 1 ? (0.5, width) : (width / 2, 1);
        if (points.Count == 1)
            Capsule(points[0], points[0], half, strength);
        for (var i = 1; i < points.Count; i++)
            Capsule(points[i - 1], points[i], half, strength);
    }

    /// <summary>Lays down the inside of a closed polyline; where it crosses itself, inside is where an odd count of turns has been crossed.</summary>
    public void Fill(IReadOnlyList<Point2> outline)
    {
        var sums = new float[Width];
        var crossings = new List<double>();
        var firstRow = Row(outline.Min(p => p.Y));
        var lastRow = Row(outline.Max(p => p.Y));
        for (var row = firstRow; row <= lastRow; row++)
        {
            Array.Clear(sums);
            var (first, end) = (Width, 0);
            for (var s = 0; s < SubLines; s++)
            {
                Cross(outline, row + ((s + 0.5) / SubLines), crossings);
                for (var i = 0; i + 1 < crossings.Count; i += 2)
                {
                    AddSpan(sums, crossings[i], crossings[i + 1]);
                    first = Math.Min(first, Column(crossings[i]));
                    end = Math.Max(end, Column(crossings[i + 1]) + 1);
                }
            }

            for (var x = first; x < end; x++)
                Lay(row, x, sums[x]);
            Touch(row, first, end);
        }
    }

    /// <summary>Inks what has been laid down.</summary>
    public void Ink(byte tone)
    {
        for (var row = _top; row <= _bottom; row++)
        {
            for (var i = (row * Width) + _first[row]; i < (row * Width) + _end[row]; i++)
            {
                var cover = _cover[i];
                if (cover == 0)
                    continue;
                Pixels[i] = (byte)(((Pixels[i] * (255 - cover)) + (tone * cover) + 127) / 255);
                _cover[i] = 0;
            }
        }

        ForgetRows(_top, _bottom);
    }

    private void Capsule(Point2 from, Point2 to, double half, double strength)
    {
        var leg = to - from;
        var square = leg.Dot(leg);
        var reach = half + 0.5;
        var lastRow = Row(Math.Max(from.Y, to.Y) + reach);
        for (var row = Row(Math.Min(from.Y, to.Y) - reach); row <= lastRow; row++)
        {
            var y = row + 0.5;
            // The part of the leg within reach of this row bounds the pixels to look at.
            var (t0, t1) = leg.Y == 0 ? (0, 1) : ((y - reach - from.Y) / leg.Y, (y + reach - from.Y) / leg.Y);
            var (x0, x1) = (from.X + (Math.Clamp(t0, 0, 1) * leg.X), from.X + (Math.Clamp(t1, 0, 1) * leg.X));
            var first = Column(Math.Min(x0, x1) - reach);
            var end = Column(Math.Max(x0, x1) + reach) + 1;
            for (var x = first; x < end; x++)
            {
                var (dx, dy) = (x + 0.5 - from.X, y - from.Y);
                var t = square > 0 ? Math.Clamp(((dx * leg.X) + (dy * leg.Y)) / square, 0, 1) : 0;
                var (ex, ey) = (dx - (t * leg.X), dy - (t * leg.Y));
                var away = (ex * ex) + (ey * ey);
                if (away < reach * reach)
                    Lay(row, x, strength * (reach - Math.Sqrt(away)));
            }

            Touch(row, first, end);
        }
    }

    private void Lay(int row, int x, double cover)
    {
        var shade = (byte)(Math.Min(cover, 1) * 255);
        ref var place = ref _cover[(row * Width) + x];
        if (shade > place)
            place = shade;
    }

    private void Touch(int row, int first, int end)
    {
        if (first >= end)
            return;
        _first[row] = Math.Min(_first[row], first);
        _end[row] = Math.Max(_end[row], end);
        _top = Math.Min(_top, row);
        _bottom = Math.Max(_bottom, row);
    }

    private void ForgetRows(int top, int bottom)
    {
        for (var row = top; row <= bottom; row++)
            (_first[row], _end[row]) = (Width, 0);
        (_top, _bottom) = (Height, -1);
    }

    /// <summary>Abscissas where a row's line crosses an outline, in order.</summary>
    private static void Cross(IReadOnlyList<Point2> outline, double y, List<double> crossings)
    {
        crossings.Clear();
        var from = outline[^1];
        foreach (var to in outline)
        {
            if ((from.Y > y) != (to.Y > y))
                crossings.Add(from.X + ((y - from.Y) / (to.Y - from.Y) * (to.X - from.X)));
            from = to;
        }

        crossings.Sort();
    }

    private void AddSpan(float[] sums, double from, double to)
    {
        (from, to) = (Math.Clamp(from, 0, Width), Math.Clamp(to, 0, Width));
        for (var x = (int)from; x < to; x++)
            sums[x] += (float)((Math.Min(to, x + 1) - Math.Max(from, x)) / SubLines);
    }

    private int Row(double y) => (int)Math.Clamp(Math.Floor(y), 0, Height - 1);

    private int Column(double x) => (int)Math.Clamp(Math.Floor(x), 0, Width - 1);
}
