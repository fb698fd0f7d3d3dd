using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Hull.Strength;

/// <summary>How the main hull is bent by its weights and the water: a preliminary estimate.</summary>
/// <remarks>
/// <para><b>Method.</b> The boat stands still on a wave as long as its design waterline and a twentieth of that high, a sine with its crest or trough
/// amidships (common practice, no source), at the heel of calm water, sunk and trimmed until forces and moments balance. The structure's weight is
/// spread along the main hull in a straight line that keeps its center; loads are points. The lift of a float enters by two beams at the quarters of its
/// length. Shear and moment follow by adding up from the bow.</para>
/// <para><b>Joints.</b> The joint opens about one edge of the section, and bolts 0.8 of its depth away hold the moment; all bolts share the shear.</para>
/// <para><b>Accuracy.</b> An estimate: waves move, and nothing of slamming, racking or of the pull of stays is in it. Shear and moment close at the
/// stern to 1e-6 of weight and of weight times length.</para>
/// </remarks>
public sealed class BendingStudy
{
    /// <summary>Lever of the bolts as a part of the section's depth.</summary>
    public const double BoltLever = 0.8;

    /// <summary>Length of the wave over its height.</summary>
    public const double WaveSlenderness = 20;

    /// <summary>Relative misfit at which the boat is balanced, and steps after which there is no balance.</summary>
    private const double Balanced = 1e-9;

    private const int MostSteps = 60;

    private readonly VesselShape _vessel;
    private readonly SectionOutlines[] _hulls;

    /// <summary>Takes the sections of all hulls.</summary>
    /// <param name="vessel">The shaped hulls.</param>
    public BendingStudy(VesselShape vessel)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        _vessel = vessel;
        _hulls = [.. vessel.Hulls.Select(h => new SectionOutlines(h))];
    }

    /// <summary>Bending in one kind of water.</summary>
    /// <param name="afloat">How the boat floats in calm water.</param>
    /// <param name="structure">The empty boat.</param>
    /// <param name="loads">What it carries.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    /// <param name="wave">The water.</param>
    /// <param name="joints">Places of the joints, aft of the foremost point [m].</param>
    /// <returns>The forces; null where no balance was found on the wave.</returns>
    public Bending? In(Afloat afloat, Weight structure, IReadOnlyList<Weight> loads, double density, WaveForm wave, IReadOnlyList<double> joints)
    {
        ArgumentNullException.ThrowIfNull(afloat);
        ArgumentNullException.ThrowIfNull(loads);
        ArgumentNullException.ThrowIfNull(joints);
        double length = _vessel.Main.WaterlineAft - _vessel.Main.WaterlineFore, height = wave == WaveForm.Still ? 0 : length / WaveSlenderness;
        var amplitude = height / 2 * (wave == WaveForm.Sagging ? -1 : 1);
        var crest = (_vessel.Main.WaterlineAft + _vessel.Main.WaterlineFore) / 2;
        var up = afloat.Water.Up;
        if (!(up.Z > 0))
            return null;
        var slope = -up.Y / up.Z;
        var all = Weight.Of([structure, .. loads]);
        double start = (afloat.Water.Level - (up.X * crest)) / up.Z, rise = -up.X / up.Z;
        double Surface(double x, double middle, double trim) => middle + (trim * (x - crest)) + (amplitude * Math.Cos(2 * Math.PI * (x - crest) / length));
        return Balance(start, rise) is { } found ? new ForcesAlong(this, x => Surface(x, found.Middle, found.Trim), slope, density).With(structure, loads, wave, height, joints) : null;

        // Newton's method with differences: force and moment of the water against the weights.
        (double Middle, double Trim)? Balance(double middle, double trim)
        {
            const double Nudge = 1e-5;
            for (var step = 0; step < MostSteps; step++)
            {
                var (force, moment) = Misfit(middle, trim);
                if (Math.Abs(force) <= Balanced && Math.Abs(moment) <= Balanced)
                    return (middle, trim);
                var (fm, mm) = Misfit(middle + Nudge, trim);
                var (ft, mt) = Misfit(middle, trim + Nudge);
                double a = (fm - force) / Nudge, b = (ft - force) / Nudge, c = (mm - moment) / Nudge, d = (mt - moment) / Nudge, det = (a * d) - (b * c);
                if (det == 0)
                    return null;
                double dm = ((-force * d) + (moment * b)) / det, dt = ((force * c) - (moment * a)) / det, shrink = Math.Min(1, 0.1 / Math.Max(Math.Abs(dm), Math.Abs(dt)));
                (middle, trim) = (middle + (shrink * dm), trim + (shrink * dt));
            }

            return null;
        }

        (double Force, double Moment) Misfit(double middle, double trim)
        {
            double force = -all.Mass, moment = -all.Mass * (all.Center.X - crest);
            foreach (var hull in _hulls)
            {
                var lift = hull.Below(x => Surface(x, middle, trim), slope, density);
                var (sum, lever) = lift.Whole;
                force += sum;
                moment += (sum * (lift.Aft - crest)) - lever;
            }

            return (force / all.Mass, moment / (all.Mass * length));
        }
    }

    /// <summary>The forces along the main hull at a balance.</summary>
    private sealed class ForcesAlong(BendingStudy study, Func<double, double> surface, double slope, double density)
    {
        public Bending With(Weight structure, IReadOnlyList<Weight> loads, WaveForm wave, double height, IReadOnlyList<double> joints)
        {
            var main = study._hulls[0];
            List<(double X, double Force)> points = [.. loads.Select(l => (l.Center.X, -Standards.Gravity * l.Mass)), .. study._hulls.Skip(1).SelectMany(Beams)];
            var lift = Lift(main);
            double[] spread = [.. main.Places.Select(x => Spread(structure, main, x))];
            if (spread.Any(w => w < 0))
            {
                // A center near one end: no straight spread has it, so the structure is a point.
                spread = new double[spread.Length];
                points.Add((structure.Center.X, -Standards.Gravity * structure.Mass));
            }

            var weight = main.Along(spread);

            // At every section, and on either side of every point.
            var ahead = points.Select(p => p.X).Where(x => x > main.Fore && x < lift.Aft).ToList();
            var places = main.Places.Select(x => (X: x, Past: true)).Concat(ahead.Select(x => (X: x, Past: false))).Concat(ahead.Select(x => (X: x, Past: true)));
            return new Bending(wave, height, [.. places.OrderBy(p => p.X).ThenBy(p => p.Past).Select(p => At(p.X, p.Past))], [.. joints.Select(Joint)]);

            BendingPoint At(double x, bool past)
            {
                var (up, down) = (lift.Forward(x), weight.Forward(x));
                double shear = up.Force - down.Force, moment = up.Lever - down.Lever;

                // What hangs beyond the stern is held by its end.
                foreach (var (at, force) in points.Where(p => p.X < x || (past && (p.X == x || x == lift.Aft))))
                {
                    shear += force;
                    moment += force * (x - at);
                }

                return new BendingPoint(x, lift.At(x), weight.At(x), shear, moment);
            }

            JointForces Joint(double x)
            {
                var (before, after) = (At(x, past: false), At(x, past: true));
                return new JointForces(x, Math.Max(Math.Abs(before.Shear), Math.Abs(after.Shear)), after.Moment, Math.Abs(after.Moment) / (BoltLever * main.DepthAt(x)));
            }
        }

        private LoadAlong Lift(SectionOutlines hull) => hull.Below(surface, slope, Standards.Gravity * density);

        // The lift of a float on two beams at the quarters of its length.
        private IEnumerable<(double X, double Force)> Beams(SectionOutlines hull)
        {
            var lift = Lift(hull);
            double length = lift.Aft - hull.Fore, fore = hull.Fore + (length / 4), aft = hull.Fore + (3 * length / 4);
            var (force, lever) = lift.Whole;
            var onAft = ((force * (lift.Aft - fore)) - lever) / (aft - fore);
            return [(fore, force - onAft), (aft, onAft)];
        }

        // The straight spread over the hull that has the structure's weight and center.
        private static double Spread(Weight structure, SectionOutlines hull, double x)
        {
            double length = hull.Step * (hull.Places.Length - 1), c = (structure.Center.X - hull.Fore) / length, t = (x - hull.Fore) / length;
            return Standards.Gravity * structure.Mass / length * (1 + (12 * (c - 0.5) * (t - 0.5)));
        }
    }
}
