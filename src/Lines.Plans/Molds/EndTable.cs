using Lines.Construction.Molds;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>The table of bevels along stem, stern and transom, and of what shrinking flat outlines would get wrong there: a row for each place, from the sheer down.</summary>
internal static class EndTable
{
    /// <summary>The table.</summary>
    /// <param name="notation">How lengths are written.</param>
    public static PageTable Table(LengthNotation notation) => new(
        [("End", "", 17, false), ("at", "", 13, false), ("From", "fore end", 18, true), ("Above", "top", 16, true), ("Bevel", "deg", 12, true), ("Plain inset", AngleTable.ByUnit(notation), 16, true)]);

    /// <summary>The cells of all rows.</summary>
    /// <param name="plan">The molds.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IReadOnlyList<IReadOnlyList<string>> Rows(MoldPlan plan, LengthNotation notation) =>
    [
        .. plan.Molds.Where(m => m.Kind is not MoldKind.Station).SelectMany(m => m.Bevels!.Places.Select(b => (IReadOnlyList<string>)
        [
            m.Name, b.Name, new Length(plan.Strongback.DistanceTo(b.At.X)).ToCell(notation), new Length(plan.Strongback.HeightOf(b.At.Z)).ToCell(notation), AngleTable.Degrees(Bevel(m, b)), AngleTable.Proud(b, notation),
        ])),
    ];

    /// <summary>The bevel as it is told [rad]: a transom's from square, those of stem and stern from their side.</summary>
    public static double Bevel(Mold end, EdgeBevel bevel) => end.Kind == MoldKind.Transom ? bevel.Angle : bevel.FromSide;
}
