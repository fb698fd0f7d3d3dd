using Lines.Hull.Fairness;
using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>Curves y(x) known by formula with their first two derivatives, as lines to be judged.</summary>
internal static class PlaneCurves
{
    /// <summary>A curve that bulges to its left like a waterline, bow to stern, sampled every 20 mm or less.</summary>
    public static LineTrace Waterline(double length, Func<double, (double Y, double Slope, double Bend)> curve, int samples = 301) =>
        new(
            x =>
            {
                var (y, slope, bend) = curve(x);
                return new TracePoint(new Point2(x, y), new Vector2(1, slope), -bend / Math.Pow(1 + (slope * slope), 1.5));
            },
            [.. Enumerable.Range(0, samples).Select(k => length * k / (samples - 1))],
            -1);

    /// <summary>The sum of a curve and a blemish.</summary>
    public static Func<double, (double Y, double Slope, double Bend)> Plus(
        Func<double, (double Y, double Slope, double Bend)> a, Func<double, (double Y, double Slope, double Bend)> b) => x =>
    {
        var (p, q) = (a(x), b(x));
        return (p.Y + q.Y, p.Slope + q.Slope, p.Bend + q.Bend);
    };

    /// <summary>Wigley's waterline: half-breadth b on a length.</summary>
    public static Func<double, (double Y, double Slope, double Bend)> Parabola(double length, double b) => x =>
    {
        var s = ((2 * x) - length) / length;
        return (b * (1 - (s * s)), -4 * b * s / length, -8 * b / (length * length));
    };

    /// <summary>A half wave of the sine.</summary>
    public static Func<double, (double Y, double Slope, double Bend)> HalfArch(double length, double b) => x =>
    {
        var k = Math.PI / length;
        return (b * Math.Sin(k * x), b * k * Math.Cos(k * x), -b * k * k * Math.Sin(k * x));
    };

    /// <summary>A bump a cos² high and w wide at c.</summary>
    public static Func<double, (double Y, double Slope, double Bend)> Bump(double c, double w, double a) => x =>
    {
        var k = Math.PI / w;
        var t = x - c;
        return Math.Abs(t) >= w / 2
            ? default
            : (a * Math.Pow(Math.Cos(k * t), 2), -a * k * Math.Sin(2 * k * t), -2 * a * k * k * Math.Cos(2 * k * t));
    };

    /// <summary>A knuckle: the slope changes by -angle at c.</summary>
    public static Func<double, (double Y, double Slope, double Bend)> Kink(double c, double angle) => x =>
        x <= c ? default : (-angle * (x - c), -angle, 0);

    /// <summary>A half ellipse from end to end, by its angle from the bow.</summary>
    public static LineTrace Ellipse(double length, double b, int samples = 301) =>
        new(
            t =>
            {
                double a = length / 2, c = Math.Cos(t), s = Math.Sin(t);
                return new TracePoint(
                    new Point2(a * (1 - c), b * s),
                    new Vector2(a * s, b * c),
                    a * b / Math.Pow((a * a * s * s) + (b * b * c * c), 1.5));
            },
            [.. Enumerable.Range(0, samples).Select(k => Math.PI * k / (samples - 1))],
            -1);
}
