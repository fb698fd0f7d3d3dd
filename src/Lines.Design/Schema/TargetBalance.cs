using Lines.Design.Diagnostics;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;

namespace Lines.Design.Schema;

/// <summary>Whether a file leaves out as many dials as it gives targets in their place, each target one that moves it.</summary>
internal sealed class TargetBalance
{
    private readonly IReadOnlyList<SchemaKey> _targets;

    private TargetBalance(IReadOnlyList<SchemaKey> targets, IReadOnlyList<SchemaKey> excused)
    {
        _targets = targets;
        Excused = excused;
    }

    /// <summary>No targets: what shapes no hull.</summary>
    public static TargetBalance None { get; } = new([], []);

    /// <summary>Required keys that need not be given.</summary>
    public IReadOnlyList<SchemaKey> Excused { get; }

    /// <summary>The targets of a whole, faultless file.</summary>
    public static HullTargets Of(DesignValues values)
    {
        var (targets, leftOut) = Sides(k => values.IsGiven(k.Path));
        return targets.Count == 0
            ? HullTargets.None
            : new HullTargets(
                [.. targets.Select(k => new HullTarget(k.Target!.Value, values.Number(k.Path)))],
                [.. leftOut.Select(k => k.Dial!.Value)],
                values.Find("hull.water")?.Text is DesignSchema.SeaWater ? Water.Sea : Water.Fresh);
    }

    /// <summary>Tells targets for which nothing is left out, or nothing that moves them; too few targets are told as keys that are missing.</summary>
    /// <param name="values">The sound values.</param>
    /// <param name="isMeant">Whether a fault told already most likely means a key.</param>
    /// <param name="faults">Takes the faults, by paths of the form.</param>
    public static TargetBalance Check(DesignValues values, Func<SchemaKey, bool> isMeant, DiagnosticBag faults)
    {
        bool isThere(SchemaKey k) => values.IsGiven(k.Path) || isMeant(k);
        var (targets, leftOut) = Sides(isThere);
        if (values.IsGiven("hull.water") && !isThere(DesignSchema.ByTarget[Target.Displacement]))
            faults.Add(values.PlaceOf("hull.water"), "hull.water", "says in which water displacement is meant, and none is given", "leave it out, or give displacement");
        if (leftOut.Count > targets.Count)
            return new TargetBalance(targets, []);
        if (leftOut.Count < targets.Count)
        {
            var only = leftOut.Count == 0 ? "every dial is given" : Invariant($"{leftOut.Count} of the dials left out cannot meet {targets.Count} targets");
            foreach (var key in targets)
                faults.Add(values.PlaceOf(key.Path), key.Path, $"stands in place of a dial, and {only}", $"leave out {Movers(key)}, or this");
            return new TargetBalance(targets, leftOut);
        }

        var pairs = HullTargets.Paired([.. targets.Select(k => k.Target!.Value)], [.. leftOut.Select(k => k.Dial!.Value)]);
        foreach (var (key, _) in targets.Zip(pairs).Where(p => p.Second is null))
        {
            var names = string.Join(", ", leftOut.Select(k => k.Name));
            faults.Add(values.PlaceOf(key.Path), key.Path, $"is not moved by a dial left out for it ({names})", $"leave out {Movers(key)} instead");
        }

        return new TargetBalance(targets, leftOut);
    }

    /// <summary>What else would do than a dial that is missing: a target not given yet that it moves.</summary>
    public string Otherwise(SchemaKey key)
    {
        if (key.Dial is not { } dial || !HullTargets.MayBeLeftOut.Contains(dial))
            return "";
        var names = DesignSchema.Keys.Where(k => k.Target is { } t && HullTargets.MoversOf(t).Contains(dial) && !_targets.Contains(k) && (t != Target.EntryAngle || dial == Dial.EntryFullness));
        return $", or a target in its place: {string.Join(", ", names.Select(k => k.Name))}";
    }

    /// <summary>The keys that are targets here, and the dials left out; the entry's angle is a target only where its fullness is left out and no other target accounts for that.</summary>
    private static (List<SchemaKey> Targets, List<SchemaKey> LeftOut) Sides(Func<SchemaKey, bool> isThere)
    {
        List<SchemaKey> leftOut = [.. HullTargets.MayBeLeftOut.Select(d => DesignSchema.ByDial[d]).Where(k => !isThere(k))];
        List<SchemaKey> targets = [.. DesignSchema.Keys.Where(k => k is { Target: not null, Dial: null } && isThere(k))];
        var angle = DesignSchema.ByTarget[Target.EntryAngle];
        if (isThere(angle) && leftOut.Count > targets.Count && leftOut.Contains(DesignSchema.ByDial[Dial.EntryFullness]))
            targets.Add(angle);
        return (targets, leftOut);
    }

    private static string Movers(SchemaKey key) => string.Join(" or ", HullTargets.MoversOf(key.Target!.Value).Select(d => DesignSchema.ByDial[d].Name));
}
