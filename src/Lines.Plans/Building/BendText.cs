using Lines.Construction;
using Lines.Construction.Planking;
using Lines.Kernel.Units;

namespace Lines.Plans.Building;

/// <summary>Tells where strips are bent further than they take, and what would do.</summary>
public static class BendText
{
    private const double Degree = Math.PI / 180;

    /// <summary>One sentence of a bend.</summary>
    /// <param name="bend">The bend.</param>
    /// <param name="build">How the hull is built.</param>
    /// <param name="notation">How lengths are written.</param>
    public static string Of(StripBend bend, BuildDials build, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(bend);
        ArgumentNullException.ThrowIfNull(build);
        string Shown(double meters) => new Length(meters).ToText(notation);
        string Size(double meters) => new Length(Math.Round(meters, 4)).ToSize(notation);
        var (run, runName) = notation == LengthNotation.Millimeters ? (1, "meter") : (0.3048, "foot");
        var place = Invariant($"strip {bend.Strip} from the sheer, {Shown(bend.X)} from the bow and {Shown(bend.Height)} up");
        var stretch = bend.Aft - bend.Fore > 0.05 ? Invariant($", worst of the stretch from {Shown(bend.Fore)} to {Shown(bend.Aft)}") : "";
        return bend.Kind switch
        {
            StripBendKind.Facet => Invariant(
                $"Round: {place}{stretch}, leaves {Size(bend.Value)} to plane off {Size(build.Planking)}; strips {Shown(bend.Remedy)} wide leave a tenth of the planking."),
            StripBendKind.Twist => Invariant(
                $"Twist: {place}{stretch}, turns {bend.Value * run / Degree:F0} deg in a {runName}, and strips this thick take {bend.Limit * run / Degree:F0} deg cold; steam it, or laminate two of {Shown(Math.Min(bend.Remedy, build.Planking / 2))}."),
            StripBendKind.Flat => Invariant(
                $"Bend: {place}{stretch}, is bent to a radius of {Shown(1 / bend.Value)}, and strips this thick take {Shown(1 / bend.Limit)} cold; kerf or steam it, or laminate thinner ones."),
            _ => Invariant(
                $"Edge: {place}{stretch}, is bent on edge to a radius of {Shown(1 / bend.Value)}, and strips this wide take {Shown(1 / bend.Limit)}; take strips {Shown(bend.Remedy)} wide there, or taper some."),
        };
    }
}
