using Lines.Design.Schema;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;

namespace Lines.Plans.Figures;

/// <summary>What was asked of a hull in place of dials, what it has of that, and the dials found for it.</summary>
public static class TargetFigures
{
    /// <summary>Every target as asked and as reached and every dial found; no group where nothing was solved for.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="afloat">What it displaces at its design waterline.</param>
    /// <param name="vessel">What was asked.</param>
    public static IReadOnlyList<FigureGroup> Of(HullSurface hull, Buoyancy afloat, Vessel vessel)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(vessel);
        var targets = vessel.Targets;
        if (targets.Asked.Count == 0)
            return [];
        return [new FigureGroup("solved_for", "Solved for", [.. targets.Asked.SelectMany(Asked), .. targets.Found(hull.Dials).Select(f => Found(f.Dial, f.Value))])];

        IEnumerable<Figure> Asked(HullTarget asked)
        {
            var key = DesignSchema.ByTarget[asked.Target];
            var (name, quantity) = (NameOf(key), QuantityOf(key));
            var note = asked.Target == Target.Displacement ? HullFigures.InWords(targets.Water) : "";
            yield return new(key.Name + "_asked", name + ", asked", asked.Value, quantity) { Note = note };
            yield return new(key.Name + "_reached", name + ", reached", targets.Of(hull, afloat, asked.Target), quantity) { Note = note };
        }

        static Figure Found(Dial dial, double value)
        {
            var key = DesignSchema.ByDial[dial];
            return new(key.Path.Replace('.', '_') + "_found", NameOf(key) + ", found", value, QuantityOf(key)) { Note = $"left out of the file; as a dial {key.Name} = {KeyRange.Show(key, value)}" };
        }
    }

    private static string NameOf(SchemaKey key) => key.Target switch
    {
        Target.Prismatic => "Prismatic coefficient",
        Target.EntryAngle => "Half-angle of entrance",
        _ when key.Path is "hull.midship.fullness" => "Midship fullness",
        _ => FigureText.Capital(key.Name).Replace('_', ' '),
    };

    private static Quantity QuantityOf(SchemaKey key) => key.Kind switch
    {
        KeyKind.Mass => Quantity.Mass,
        KeyKind.Length => Quantity.Length,
        KeyKind.Angle => Quantity.Angle,
        _ when key.Target == Target.CenterOfBuoyancy => Quantity.Fraction,
        _ => Quantity.Ratio,
    };
}
