using Lines.Hull.Form;
using Lines.Kernel.Numerics;
using Lines.Kernel.Units;

namespace Lines.Tests.Support;

/// <summary>Michell's integral for one hull as one writes it down: sums over panels of the skin, for every wave anew.</summary>
internal static class PanelWaves
{
    private const double Farthest = 4;

    private const int Nodes = 6;

    /// <summary>The wave resistance over the density of the water [m⁴/s²].</summary>
    /// <param name="hull">The hull, its design waterline an iso-line of the skin.</param>
    /// <param name="speed">Speed [m/s].</param>
    /// <param name="along">Panels along the hull.</param>
    /// <param name="up">Panels up a section.</param>
    /// <param name="waves">Waves, by six in a piece.</param>
    public static double OverDensity(HullSurface hull, double speed, int along, int up, int waves)
    {
        var rule = GaussLegendre.Rule(Nodes);
        var panels = Panels(hull, along, up);
        double k = Standards.Gravity / (speed * speed), sum = 0, piece = Farthest / (waves / Nodes);
        for (var w = 0; w < waves / Nodes; w++)
        {
            for (var g = 0; g < Nodes; g++)
            {
                double lambda = Math.Cosh(piece * (w + ((1 + rule.Abscissas[g]) / 2))), turn = k * lambda, real = 0, imaginary = 0;
                foreach (var (x, z, source) in panels)
                {
                    var (s, c) = Math.SinCos(turn * x);
                    var left = source * Math.Exp(turn * lambda * z);
                    (real, imaginary) = (real + (left * c), imaginary + (left * s));
                }

                sum += piece * rule.Weights[g] / 2 * lambda * lambda * ((real * real) + (imaginary * imaginary));
            }
        }

        return 4 * Standards.Gravity * Standards.Gravity / (Math.PI * speed * speed) * sum;
    }

    /// <summary>Middle of every panel below the water, its height from there, and ∂y/∂x dx dz over it: the part of its area that looks forward.</summary>
    internal static List<(double X, double Z, double Source)> Panels(HullSurface hull, int along, int up)
    {
        var panels = new List<(double, double, double)>();
        for (var i = 0; i < along; i++)
        {
            for (var j = 0; j < up; j++)
            {
                var jet = hull.Side.JetAt((i + 0.5) / along, hull.WaterlineV * (j + 0.5) / up);
                panels.Add((jet.Point.X, jet.Point.Z - hull.Draft, ((jet.U.Y * jet.V.Z) - (jet.U.Z * jet.V.Y)) / along * hull.WaterlineV / up));
            }
        }

        return panels;
    }
}
