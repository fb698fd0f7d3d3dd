using Lines.Hull.Fairness;
using Lines.Kernel.Geometry;

namespace Lines.Benchmarks;

/// <summary>The smallest faults that the fairness checker finds, against their length.</summary>
/// <remarks><b>Method.</b> On fair parabolas of several lengths a bump cos² high, or a kink, is planted at places drawn at random by a
/// fixed seed, clear of the ends. Its size is halved and doubled until the least is bracketed, by a twentieth, at which nine of ten are
/// found: named alone, the right way round, within 25 % of their size and 50 mm, or a third of their length, of their place.</remarks>
internal static class DetectionLimits
{
    private const int Places = 20;
    private static readonly double[] s_lengths = [2, 3.5, 5, 8, 12];
    private static readonly double[] s_widths = [0.05, 0.075, 0.1, 0.15, 0.2, 0.3, 0.45, 0.6];

    /// <summary>Prints the table.</summary>
    public static void Print()
    {
        Console.WriteLine("| fault | " + string.Join(" | ", s_lengths.Select(l => Invariant($"line {l} m"))) + " |");
        Console.WriteLine("|---|" + string.Concat(Enumerable.Repeat("---:|", s_lengths.Length)));
        foreach (var width in s_widths)
            Row(Invariant($"bump or dent {1000 * width:F0} mm long [mm]"), s_lengths.Select(l => 1000 * Least(l, width, 0.00005, 0.02)), "F2");
        Row("kink [deg]", s_lengths.Select(l => Least(l, 0, 0.001, 0.2) * 180 / Math.PI), "F2");
    }

    private static void Row(string name, IEnumerable<double> values, string format) =>
        Console.WriteLine($"| {name} | " + string.Join(" | ", values.Select(v => double.IsFinite(v) ? v.ToString(format, System.Globalization.CultureInfo.InvariantCulture) : "-")) + " |");

    // Least size found in nine places of ten; infinite where none is.
    private static double Least(double length, double width, double low, double high)
    {
        if (!Found(length, width, high / 4))
            return double.PositiveInfinity;
        high /= 4;
        while (high / low > 1.05)
        {
            var middle = Math.Sqrt(low * high);
            (low, high) = Found(length, width, middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static bool Found(double length, double width, double size)
    {
        var random = new Random(1);
        var found = 0;
        for (var k = 0; k < Places; k++)
        {
            double clear = Math.Max(0.35, width), at = clear + ((length - (2 * clear)) * random.NextDouble());
            var signed = k % 2 == 0 ? size : -size;
            var faults = LocalFaults.In(Line(length, at, width, signed), BattenTest.EndZone);
            if (faults is [var fault] && Matches(fault, at, width, signed))
                found++;
        }

        return found >= 0.9 * Places;
    }

    private static bool Matches(LineFault fault, double at, double width, double size) =>
        Math.Abs(fault.Place - at) <= Math.Max(0.05, width / 3)
        && (width > 0
            ? fault.Kind == (size > 0 ? FaultKind.Bump : FaultKind.Dent) && Math.Abs((fault.Size / Math.Abs(size)) - 1) <= 0.25
            : fault.Kind == FaultKind.Kink && Math.Abs((fault.Turn / size) - 1) <= 0.25);

    // A parabola a fourteenth of its length deep with a bump, or where the width is 0 with a kink, sampled every 10 mm.
    private static LineTrace Line(double length, double at, double width, double size) => new(
        x =>
        {
            double s = ((2 * x) - length) / length, b = length / 14, y = b * (1 - (s * s)), slope = -4 * b * s / length, bend = -8 * b / (length * length);
            var t = x - at;
            if (width == 0 && t > 0)
            {
                (y, slope) = (y - (size * t), slope - size);
            }
            else if (Math.Abs(t) < width / 2)
            {
                var k = Math.PI / width;
                y += size * Math.Pow(Math.Cos(k * t), 2);
                slope -= size * k * Math.Sin(2 * k * t);
                bend -= 2 * size * k * k * Math.Cos(2 * k * t);
            }

            return new TracePoint(new Point2(x, y), new Vector2(1, slope), -bend / Math.Pow(1 + (slope * slope), 1.5));
        },
        [.. Enumerable.Range(0, (int)(100 * length) + 1).Select(k => k * length / (int)(100 * length))],
        -1);
}
