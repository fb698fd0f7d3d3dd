using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;

namespace Lines.Construction.Pieces;

/// <summary>A piece of a hull that comes apart, or the whole of one that does not.</summary>
/// <remarks>
/// <para><b>Frame.</b> That of the hull, to the outside of planking.</para>
/// <para><b>Accuracy.</b> Volume as <see cref="CompartmentBody"/>; breadth and height of points on 201 planes, short of the true ones by less than a tenth of a millimeter; weight an estimate.</para>
/// </remarks>
/// <param name="Number">Number from the bow, 1 on.</param>
/// <param name="Fore">Its fore end [m].</param>
/// <param name="Aft">Its after end [m].</param>
/// <param name="Breadth">Its greatest breadth [m].</param>
/// <param name="Height">From its lowest place to its highest, base line level [m].</param>
/// <param name="Volume">What it encloses, an open hull closed from sheer to sheer, planking counted in [m³].</param>
/// <param name="Weight">Planking, cloth, stems, rails and bulkheads of it.</param>
/// <param name="Bulkheads">Its bulkheads.</param>
public sealed record Piece(int Number, double Fore, double Aft, double Breadth, double Height, double Volume, HullWeight Weight, IReadOnlyList<Mold> Bulkheads)
{
    private const int Places = 200, AcrossPlaces = 32;

    /// <summary>The molds and end patterns it is built over.</summary>
    public required IReadOnlyList<Mold> Molds { get; init; }

    /// <summary>Length, breadth and height with outer stems and outwales, as it is stored [m].</summary>
    public required IReadOnlyList<double> Stored { get; init; }

    /// <summary>Its length [m].</summary>
    public double Length => Aft - Fore;

    /// <summary>What is carried, without what is screwed or glued in later [kg].</summary>
    public double Mass => Weight.Mass;

    /// <summary>Whether it goes into a space, turned onto any side but not laid aslant.</summary>
    /// <param name="space">Length, breadth and height of the space, in whichever order [m].</param>
    public bool Fits(IReadOnlyList<double> space)
    {
        ArgumentNullException.ThrowIfNull(space);
        return Stored.Order().Zip(space.Order()).All(d => d.First <= d.Second);
    }

    /// <summary>The pieces of a hull from the bow; one where it has no joints.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="build">How it is built.</param>
    /// <param name="molds">Its molds and bulkheads.</param>
    public static IReadOnlyList<Piece> Of(HullSurface hull, BuildDials build, MoldPlan molds)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(molds);
        return [.. Ends(hull.Dials.Length, build.Joints, build.JointGap).Select((e, k) => Of(hull, build, molds, k + 1, e))];
    }

    /// <summary>The ends of every piece, from the bow.</summary>
    /// <param name="length">Length of the hull [m].</param>
    /// <param name="joints">Take-apart planes, x from the foremost point [m], increasing, inside the hull.</param>
    /// <param name="gap">What the saw takes away at each [m].</param>
    /// <returns>One piece more than there are joints; their lengths and the saw cuts make the hull's length.</returns>
    /// <exception cref="ArgumentException">The joints do not increase or do not lie inside the hull, or the saw leaves nothing of a piece.</exception>
    public static IReadOnlyList<(double Fore, double Aft)> Ends(double length, IReadOnlyList<double> joints, double gap)
    {
        ArgumentNullException.ThrowIfNull(joints);
        double[] fore = [0, .. joints.Select(j => j + (gap / 2))], aft = [.. joints.Select(j => j - (gap / 2)), length];
        (double Fore, double Aft)[] ends = [.. fore.Zip(aft)];
        return ends.All(e => e.Fore < e.Aft) ? ends : throw new ArgumentException("joints increase and lie inside the hull, further apart than the saw is wide", nameof(joints));
    }

    private static Piece Of(HullSurface hull, BuildDials build, MoldPlan plan, int number, (double Fore, double Aft) ends)
    {
        var (fore, aft) = ends;
        bool isFirst = number == 1, isLast = number == build.Joints.Count + 1;
        List<Mold> bulkheads = [.. plan.Bulkheads.Where(b => Holds(b.X))];
        var weight = HullWeight.Of(hull, build, isFirst ? double.NegativeInfinity : fore, isLast ? double.PositiveInfinity : aft).With(bulkheads, build.Material);
        var (breadth, height) = Extent(hull, fore, aft);
        var outerStems = ((isFirst ? 1 : 0) + (isLast && hull.Transom is null ? 1 : 0)) * build.StemMolding;
        return new Piece(
            number, fore, aft, breadth, height, CompartmentBody.Between(new PlacedHull("hull", hull, default), "piece", fore, aft).Below(WaterPlane.LevelAt(2 * hull.Dials.Length), 1e-6).Volume, weight, bulkheads)
        {
            Molds = [.. plan.Molds.Where(m => m.Kind == MoldKind.Station ? Holds(m.X) : (m.Kind == MoldKind.Stem ? isFirst : isLast))],
            Stored = [aft - fore + outerStems, breadth + (2 * build.Gunwale), height],
        };

        bool Holds(double x) => x >= fore - MoldShaping.Coincident && x <= aft + MoldShaping.Coincident;
    }

    // Of the points of skin and deck on planes at even steps from end to end.
    private static (double Breadth, double Height) Extent(HullSurface hull, double fore, double aft)
    {
        double breadth = 0, low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (var (patch, x, v) in hull.Patches.SelectMany(p => Enumerable.Range(0, Places + 1).SelectMany(
            k => Enumerable.Range(0, AcrossPlaces + 1).Select(j => (p, fore + ((aft - fore) * k / Places), (double)j / AcrossPlaces)))))
        {
            if (StationPlace.On(patch, x, v) is not (var u, true))
                continue;
            var p = patch.PointAt(u, v);
            (breadth, low, high) = (Math.Max(breadth, 2 * p.Y), Math.Min(low, p.Z), Math.Max(high, p.Z));
        }

        return (breadth, high - low);
    }
}
