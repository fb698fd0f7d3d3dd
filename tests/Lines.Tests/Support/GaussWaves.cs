using Lines.Hull.Form;
using Lines.Kernel.Numerics;
using Lines.Kernel.Units;

namespace Lines.Tests.Support;

/// <summary>Michell's integral for one hull by Gauss points in the parameters of the skin and even steps along the spectrum.</summary>
/// <remarks><b>Accuracy.</b> Within 1e-5 from a Froude number of 0.14 up: ten points along each part in place of fourteen change less. The design
/// waterline must be an iso-line of the skin, as it is where stem and transom both reach the water.</remarks>
internal static class GaussWaves
{
    private const int Along = 10, Up = 3, Parts = 6, Halvings = 11;

    private const double Step = 0.01, Farthest = 4, Dead = 40;

    /// <summary>The wave resistance over the density of the water [m⁴/s²].</summary>
    public static double OverDensity(HullSurface hull, double speed)
    {
        var sources = Sources(hull);
        double k = Standards.Gravity / (speed * speed), sum = 0;
        for (var m = 0; m * Step < Farthest; m++)
        {
            double lambda = Math.Cosh(m * Step), turn = k * lambda, fall = turn * lambda, real = 0, imaginary = 0;
            foreach (var (x, z, source) in sources)
            {
                if (fall * z < -Dead)
                    continue;
                var (s, c) = Math.SinCos(turn * x);
                var left = source * Math.Exp(fall * z);
                (real, imaginary) = (real + (left * c), imaginary + (left * s));
            }

            sum += (m == 0 ? 0.5 : 1) * Step * lambda * lambda * ((real * real) + (imaginary * imaginary));
        }

        return 4 * Standards.Gravity * Standards.Gravity / (Math.PI * speed * speed) * sum;
    }

    /// <summary>Gauss points, their heights from the water, and the part of their area that looks forward.</summary>
    private static List<(double X, double Z, double Source)> Sources(HullSurface hull)
    {
        var (along, up) = (GaussLegendre.Rule(Along), GaussLegendre.Rule(Up));
        double[] us = Divided([.. hull.Side.U.Breaks]), vs = Divided([.. hull.Side.V.Breaks.Where(b => b < hull.WaterlineV), hull.WaterlineV]);
        var found = new List<(double, double, double)>();
        for (var i = 1; i < us.Length; i++)
        {
            for (var j = 1; j < vs.Length; j++)
            {
                for (var a = 0; a < Along; a++)
                {
                    for (var b = 0; b < Up; b++)
                    {
                        double du = us[i] - us[i - 1], dv = vs[j] - vs[j - 1];
                        var jet = hull.Side.JetAt(us[i - 1] + (du * (1 + along.Abscissas[a]) / 2), vs[j - 1] + (dv * (1 + up.Abscissas[b]) / 2));
                        found.Add((jet.Point.X, jet.Point.Z - hull.Draft, ((jet.U.Y * jet.V.Z) - (jet.U.Z * jet.V.Y)) * du * dv * along.Weights[a] * up.Weights[b] / 4));
                    }
                }
            }
        }

        return found;
    }

    /// <summary>Every span in parts, the first and the last of them halved again and again toward the ends.</summary>
    private static double[] Divided(double[] breaks)
    {
        List<double> ends = [.. breaks.Zip(breaks.Skip(1)).SelectMany(s => Enumerable.Range(0, Parts).Select(q => s.First + ((s.Second - s.First) * q / Parts))), breaks[^1]];
        double first = ends[1] - ends[0], last = ends[^1] - ends[^2];
        return [.. ends.Concat(Enumerable.Range(1, Halvings).SelectMany(q => (double[])[breaks[0] + (first * Math.Pow(0.5, q)), breaks[^1] - (last * Math.Pow(0.5, q))])).Order()];
    }
}
