using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Hull.Loading;

/// <summary>Steady heel under sail, beam on to a steady wind: an estimate.</summary>
/// <remarks>
/// <b>Method.</b> Side force ½ ρ V² C A at the center of the sails against half the draft, falling with the square of the cosine of heel. C = 1.5, the greatest
/// lift of a mainsail close-hauled (Hazen 1980 as printed in Larsson, Eliasson, Orych, from a secondary copy); air 1.225 kg/m³ (15 °C at the sea).
/// Gusts, waves and a sail that is let go are not in it.
/// </remarks>
/// <param name="Wind">The wind asked for [m/s].</param>
/// <param name="Heel">Steady heel in it to leeward [rad], negative where weights to windward still lean her that way; null where it heels the boat beyond its range.</param>
/// <param name="GreatestWind">The greatest steady wind the righting arms hold [m/s].</param>
public sealed record SailHeel(double Wind, double? Heel, double GreatestWind)
{
    private const double Air = 1.225, Coefficient = 1.5;

    /// <summary>Width at which the greatest wind counts as found [m/s].</summary>
    private const double Found = 0.01;

    /// <summary>Width at which a heel counts as found [rad].</summary>
    private const double Narrow = 1e-7;

    /// <summary>The heel of a rig.</summary>
    /// <param name="rig">The sail plan.</param>
    /// <param name="arms">The righting arms of the side it heels to.</param>
    /// <param name="windward">Those of the other side; null for a boat alike on both.</param>
    /// <param name="mass">All weights [kg].</param>
    /// <param name="draft">Draft of the main hull [m].</param>
    /// <param name="wind">Wind [m/s].</param>
    public static SailHeel Of(Rig rig, RightingArms arms, RightingArms? windward, double mass, double draft, double wind)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(arms);
        double low = 0, high = 100;
        while (high - low > Found)
        {
            var middle = (low + high) / 2;
            (low, high) = At(middle) is null ? (low, middle) : (middle, high);
        }

        return new SailHeel(wind, At(wind), low);

        double? At(double speed)
        {
            var upright = Air / 2 * speed * speed * Coefficient * rig.Area * (rig.Height - (draft / 2)) / (mass * Standards.Gravity);
            double Heeling(double heel) => upright * Math.Pow(Math.Cos(heel), 2) * (heel < Math.PI / 2 ? 1 : 0);
            return arms.Steady(Heeling) is { } heel ? heel > 0 ? heel : -Leaning(windward, Heeling) : null;
        }
    }

    /// <summary>The heel to windward at which a boat held up by weights there stands, between upright and where she rests without wind [rad].</summary>
    private static double Leaning(RightingArms? windward, Func<double, double> heelingArm)
    {
        double low = 0, high = windward?.From ?? 0;
        while (high - low > Narrow)
        {
            var middle = (low + high) / 2;
            (low, high) = windward!.At(middle) is { } arm && -arm.Arm > heelingArm(middle) ? (middle, high) : (low, middle);
        }

        return high;
    }
}
