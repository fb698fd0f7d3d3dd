using System.Numerics;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;
using Lines.Kernel.Units;

namespace Lines.Hull.Resistance;

/// <summary>A hull at its place in the water.</summary>
/// <param name="Side">Its starboard skin.</param>
/// <param name="Height">Height of the level water plane in the skin's frame [m], below its sheer.</param>
/// <param name="Aft">Its origin aft of the vessel's [m].</param>
/// <param name="Starboard">Its centerplane to starboard of the vessel's [m].</param>
public readonly record struct HullInWater(BSplineSurface Side, double Height, double Aft, double Starboard);

/// <summary>Wave resistance of slender hulls in company, by thin-ship theory.</summary>
/// <remarks>
/// <para><b>Method.</b> Michell's integral over the true waterlines below the water plane, level; the waves of several hulls are added with their
/// phases, so spacing and stagger are in it. Sinkage and trim under way, the breadth of the hulls themselves and breaking are not.</para>
/// <para><b>Range.</b> Slender hulls, Froude numbers 0.2 to 1; humps come out too high by tens of per cent. A transom is taken as running dry with a
/// wake of its own section; what its face lacks in pressure <see cref="TransomDrag"/> has.</para>
/// <para><b>Accuracy.</b> The relative error of the integral is below the tolerance. The waterlines are carried within 2e-4 of the waves from a Froude
/// number of 0.14 up, within 2e-3 where a transom cuts them off: of friction and waves together within 1e-4 in both. Checked on Wigley's hull, and on
/// templates by sums over the skin.</para>
/// <para><b>Source.</b> J. H. Michell, "The wave resistance of a ship", <i>Philosophical Magazine</i> 45, 1898.</para>
/// </remarks>
public sealed class WaveResistance
{
    /// <summary>Greatest and least step of the variable t, λ = cosh t, and the one tried first.</summary>
    private const double Greatest = 0.5, Least = 1e-6, First = 0.25;

    /// <summary>Part of the tolerance by which the two rules differ over a step after which the next may be twice as long.</summary>
    private const double Easy = 1e-3;

    /// <summary>Part of the tolerance that half a unit of t adds when nothing that counts is still to come: spectra fall at least as λ⁻⁴.</summary>
    private const double Nothing = 0.1;

    /// <summary>Waves at more than 88 degrees, λ over 37, carry nothing that a hull of timber makes.</summary>
    private const double Farthest = 4.5;

    // Hulls of one shape and draft share their waterlines and what these make at a speed.
    private readonly (WaterSlices Slices, (double Aft, double Starboard)[] Places)[] _shapes;

    /// <summary>Takes the waterlines of the hulls.</summary>
    /// <param name="hulls">The hulls, at least one.</param>
    /// <exception cref="Hydrostatics.DownfloodingException">A water plane is above the sheer of its hull.</exception>
    public WaveResistance(IReadOnlyList<HullInWater> hulls)
    {
        ArgumentNullException.ThrowIfNull(hulls);
        _shapes = [.. hulls.GroupBy(h => (h.Side, h.Height), h => (h.Aft, h.Starboard)).Select(g => (WaterSlices.Of(g.Key.Side, g.Key.Height), g.ToArray()))];
    }

    /// <summary>The wave resistance over the density of the water [m⁴/s²]: force in newtons for each kg/m³.</summary>
    /// <param name="speed">Speed [m/s], above 0.</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    public double OverDensity(double speed, double tolerance) => Parts(speed, tolerance).Together;

    /// <summary>The wave resistance of all hulls together, and that of every hull as if alone, added up, both over the density [m⁴/s²].</summary>
    /// <param name="speed">Speed [m/s], above 0.</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    /// <param name="beside">Resistance over the density that it is added to: of anything less the error is relative to that [m⁴/s²].</param>
    public (double Together, double Alone) Parts(double speed, double tolerance, double beside = 0)
    {
        if (!(speed > 0))
            throw new ArgumentOutOfRangeException(nameof(speed), speed, "must be above 0");
        double k = Standards.Gravity / (speed * speed), scale = 4 * Standards.Gravity * Standards.Gravity / (Math.PI * speed * speed), least = beside / scale;
        Span<double> sums = [0, 0], part = [0, 0], apart = [0, 0];
        var before = 0.0;
        for (double t = 0, step = First; t < Farthest;)
        {
            GaussKronrod.Over(Spectrum, t, t + step, part, apart);
            double together = Math.Max(least, sums[0] + part[0]), alone = Math.Max(least, sums[1] + part[1]), misfit = Math.Max(apart[0] / together, apart[1] / alone);
            if (misfit > tolerance)
            {
                step /= 2;
                if (step < Least)
                    throw new ArithmeticException(Invariant($"the waves at {speed} m/s kept a relative error of {misfit:E1}; {tolerance:E1} was asked"));
                continue;
            }

            (sums[0], sums[1], t) = (sums[0] + part[0], sums[1] + part[1], t + step);

            // At high speeds the spectrum rises at first: its small beginning is not its end.
            var rate = Math.Max(part[0] / together, part[1] / alone) / step;
            if (rate < Nothing * tolerance / 0.5 && rate < before)
                break;
            before = rate;
            if (misfit < Easy * tolerance)
                step = Math.Min(Greatest, 2 * step);
        }

        return (scale * sums[0], scale * sums[1]);

        void Spectrum(double t, Span<double> values)
        {
            double lambda = Math.Cosh(t), turn = k * lambda, across = turn * Math.Sinh(t), alone = 0;
            Complex port = 0, starboard = 0;
            foreach (var (slices, places) in _shapes)
            {
                var a = slices.Amplitude(turn, turn * lambda);
                alone += places.Length * SquareOf(a);
                foreach (var (aft, side) in places)
                {
                    port += a * Complex.FromPolarCoordinates(1, (turn * aft) + (across * side));
                    starboard += a * Complex.FromPolarCoordinates(1, (turn * aft) - (across * side));
                }
            }

            values[0] = lambda * lambda * (SquareOf(port) + SquareOf(starboard)) / 2;
            values[1] = lambda * lambda * alone;
        }

        static double SquareOf(Complex a) => (a.Real * a.Real) + (a.Imaginary * a.Imaginary);
    }
}
