using Lines.Hull.Hydrostatics;

namespace Lines.Hull.Form;

/// <summary>What may be asked of the finished hull in place of a dial.</summary>
public enum Target
{
    /// <summary>Mass of the water displaced at the design waterline, level [kg].</summary>
    Displacement,

    /// <summary>Prismatic coefficient: displaced volume over waterline length × greatest section area.</summary>
    Prismatic,

    /// <summary>Center of buoyancy aft of the fore end of the design waterline, as a fraction of its length.</summary>
    CenterOfBuoyancy,

    /// <summary>Half-angle of entrance at the design waterline [rad].</summary>
    EntryAngle,

    /// <summary>Length of the design waterline [m].</summary>
    WaterlineLength,

    /// <summary>Greatest breadth of the design waterline [m].</summary>
    WaterlineBeam,
}

/// <summary>One target.</summary>
/// <param name="Target">What is asked for.</param>
/// <param name="Value">Its value, SI, above 0.</param>
public readonly record struct HullTarget(Target Target, double Value);

/// <summary>Targets of a hull, and the dials that are left out for them: as many, and found by the solver.</summary>
/// <remarks><b>Source.</b> The definitions of coefficients and centers are those of <see cref="Buoyancy"/>.</remarks>
/// <param name="Asked">The targets.</param>
/// <param name="LeftOut">The dials left out; see <see cref="MayBeLeftOut"/>.</param>
/// <param name="Water">The water a displacement is meant in.</param>
public sealed record HullTargets(IReadOnlyList<HullTarget> Asked, IReadOnlyList<Dial> LeftOut, Water Water)
{
    /// <summary>Relative error of the integrals below the water [1]: far below that of a target met.</summary>
    private const double IntegralTolerance = 1e-9;

    /// <summary>No targets: all dials are given.</summary>
    public static HullTargets None { get; } = new([], [], Water.Fresh);

    /// <summary>The dials that may be left out for a target.</summary>
    public static IReadOnlyList<Dial> MayBeLeftOut { get; } = [Dial.Length, Dial.Beam, Dial.Draft, Dial.EntryFullness, Dial.RunFullness, Dial.MidshipFullness];

    /// <summary>The dials that move a target well enough to meet it.</summary>
    /// <remarks>Measured on the templates: those named change it by a tenth of their own relative change or more (draft moves a waterline's length by a
    /// twentieth, beam a prismatic coefficient by less), the midship's fullness a prismatic coefficient by 0.04 to 0.14.</remarks>
    public static IReadOnlyList<Dial> MoversOf(Target target) => target switch
    {
        Target.Displacement => MayBeLeftOut,
        Target.Prismatic => [Dial.EntryFullness, Dial.RunFullness, Dial.MidshipFullness],
        Target.CenterOfBuoyancy => [Dial.EntryFullness, Dial.RunFullness],
        Target.EntryAngle => [Dial.EntryFullness, Dial.Beam, Dial.Length, Dial.RunFullness, Dial.Draft, Dial.MidshipFullness],
        Target.WaterlineLength => [Dial.Length],
        Target.WaterlineBeam => [Dial.Beam, Dial.Draft, Dial.MidshipFullness],
        _ => throw new ArgumentOutOfRangeException(nameof(target), target, "no such target"),
    };

    /// <summary>Gives every target a dial of its own that moves it.</summary>
    /// <remarks><b>Method.</b> Augmenting paths (H. W. Kuhn, "The Hungarian method for the assignment problem", 1955; from memory).</remarks>
    /// <param name="targets">The targets.</param>
    /// <param name="leftOut">The dials left out.</param>
    /// <returns>The dial of each target, in order; null where none is left for it.</returns>
    public static IReadOnlyList<Dial?> Paired(IReadOnlyList<Target> targets, IReadOnlyList<Dial> leftOut)
    {
        ArgumentNullException.ThrowIfNull(targets);
        var pairs = new Dial?[targets.Count];
        for (var k = 0; k < targets.Count; k++)
            Give(k, []);
        return pairs;

        bool Give(int k, HashSet<Dial> seen)
        {
            foreach (var dial in MoversOf(targets[k]).Where(leftOut.Contains).Where(seen.Add))
            {
                var holder = Array.IndexOf(pairs, dial);
                if (holder >= 0 && !Give(holder, seen))
                    continue;
                pairs[k] = dial;
                return true;
            }

            return false;
        }
    }

    /// <summary>What a hull has of a target, measured on its surface.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="afloat">What it displaces at its design waterline.</param>
    /// <param name="target">What to measure.</param>
    /// <returns>Its value, SI, as it would be asked for.</returns>
    public double Of(HullSurface hull, Buoyancy afloat, Target target)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(afloat);
        return target switch
        {
            Target.Displacement => afloat.Volume * Water.Density,
            Target.Prismatic => afloat.Prismatic!.Value,
            Target.CenterOfBuoyancy => afloat.CenterFraction!.Value,
            Target.EntryAngle => FormCoefficients.Of(hull).EntryAngle,
            Target.WaterlineLength => hull.WaterlineAft - hull.WaterlineFore,
            Target.WaterlineBeam => afloat.Waterplane!.Breadth,
            _ => throw new ArgumentOutOfRangeException(nameof(target), target, "no such target"),
        };
    }

    /// <summary>The dials left out, with what a hull has of them, SI.</summary>
    /// <param name="dials">The dials of the hull.</param>
    public IEnumerable<(Dial Dial, double Value)> Found(HullDials dials) => LeftOut.Select(dial => (dial, DialAccess.ValueOf(dials, dial)!.Value));

    /// <summary>How far a hull is off every target: the logarithm of what it has over what is asked.</summary>
    internal double[] Misses(HullSurface hull)
    {
        var afloat = UprightHydrostatics.Below(hull, hull.Draft, IntegralTolerance);
        return [.. Asked.Select(t => Math.Log(Of(hull, afloat, t.Target) / t.Value))];
    }

    /// <summary>The same with another value for one target.</summary>
    internal HullTargets With(int index, double value) => this with { Asked = [.. Asked.Select((t, k) => k == index ? t with { Value = value } : t)] };

    /// <summary>The same without one target and one dial.</summary>
    internal HullTargets Without(int index, Dial dial) => this with { Asked = [.. Asked.Where((_, k) => k != index)], LeftOut = [.. LeftOut.Where(d => d != dial)] };
}

/// <summary>Targets that no hull meets together, or not with the dials given.</summary>
/// <param name="Reason">What stands against it, one clause.</param>
/// <param name="Targets">The targets that exclude each other or a dial, each with the nearest value that would do.</param>
/// <param name="Dials">Dials that stand against it.</param>
public sealed record TargetConflict(string Reason, IReadOnlyList<TargetHint> Targets, IReadOnlyList<Dial> Dials)
{
    /// <summary>The dial left out that comes to an end of what the others leave it, and that end, SI; null where no dial does.</summary>
    public (Dial Dial, double Limit)? Beyond { get; init; }

    /// <summary>Whether no target helps alone, and the values told are to be taken together.</summary>
    public bool Together { get; init; }
}

/// <summary>One target of a conflict.</summary>
/// <param name="Target">Which.</param>
/// <param name="Nearest">Nearest value that can be reached as it is told, all else kept, SI; null where none was found.</param>
public readonly record struct TargetHint(Target Target, double? Nearest)
{
    /// <summary>Whether every line of the hull is fair with it.</summary>
    public bool Fair { get; init; }
}

/// <summary>Rounds a value found for a target to one that a user is told, SI.</summary>
/// <param name="target">The target.</param>
/// <param name="value">What was found, SI.</param>
/// <param name="upward">Whether to round up; otherwise down.</param>
/// <returns>The very number that the told text would be read as.</returns>
public delegate double ToldTarget(Target target, double value, bool upward);
