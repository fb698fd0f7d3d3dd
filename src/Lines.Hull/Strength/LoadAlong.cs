namespace Lines.Hull.Strength;

/// <summary>A load spread along a hull, straight between sections at equal steps.</summary>
/// <param name="fore">Place of the first section [m].</param>
/// <param name="step">Distance of the sections [m].</param>
/// <param name="perLength">The load at every section, per meter.</param>
internal sealed class LoadAlong(double fore, double step, double[] perLength)
{
    /// <summary>Place of the last section [m].</summary>
    public double Aft => fore + (step * (perLength.Length - 1));

    /// <summary>The whole load.</summary>
    public (double Force, double Lever) Whole => Forward(Aft);

    /// <summary>The load at a place; that of the nearer end beyond the sections.</summary>
    /// <param name="x">The place [m].</param>
    public double At(double x)
    {
        var k = Math.Clamp((int)Math.Floor((x - fore) / step), 0, perLength.Length - 2);
        return perLength[k] + ((perLength[k + 1] - perLength[k]) * Math.Clamp(((x - fore) / step) - k, 0, 1));
    }

    /// <summary>The load forward of a place, exactly of the straight pieces.</summary>
    /// <param name="x">The place [m].</param>
    /// <returns>Its sum, and its moment about the place: positive where the load is.</returns>
    public (double Force, double Lever) Forward(double x)
    {
        double force = 0, lever = 0;
        for (var k = 0; k + 1 < perLength.Length; k++)
        {
            var from = fore + (k * step);
            var part = Math.Min(step, x - from);
            if (!(part > 0))
                break;
            double first = perLength[k], last = first + ((perLength[k + 1] - first) * part / step), strip = part * (first + last) / 2;
            force += strip;
            lever += (strip * (x - from)) - (part * part * (first + (2 * last)) / 6);
        }

        return (force, lever);
    }
}
