using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Plans.Exchange;

/// <summary>The hull as an IGES file: ANSI US PRO/IPO-100, Initial Graphics Exchange Specification 5.3, surfaces of entity type 128.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame in millimeters: x aft, y to starboard, z up. The starboard skin to the outside of planking, and the
/// starboard half of a crowned deck; that of a transom as a flat surface ruled from its edge level to the centerplane, and another as far as a
/// deck rises over its upper corner. An open hull has no deck.</para>
/// <para><b>Sign.</b> Normals point out of the boat: first parameter of the skin from keel to sheer, of the deck on to the centerplane, second
/// from bow to stern; of the transom from the centerplane outward, and from foot to sheer and deck.</para>
/// <para><b>Accuracy.</b> The poles are those of the surface, written so that every double reads back the same.</para>
/// </remarks>
public static class IgesFile
{
    /// <summary>Writes the hull.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="title">Title of the design: name of the product.</param>
    /// <returns>The text of the file, ASCII. The date the format asks for is a constant: the same hull gives the same bytes.</returns>
    public static string Write(HullSurface hull, string title)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(title);
        var side = hull.Side;
        var records = new IgesRecords();
        records.Add("SKIN", Surface(side.V, side.U, (i, j) => side.PoleAt(j, i)));
        if (hull.Deck is { } deck)
            records.Add("DECK", Surface(deck.V, deck.U, (i, j) => deck.PoleAt(j, i)));
        if (hull.Transom is not null)
        {
            records.Add("TRANSOM", Ruled(side));
            if (hull.Deck is { } above)
                records.Add("TRANSTOP", Ruled(above));
        }

        return records.Write(
            [$"Hull, starboard {(hull.Deck is null ? "skin" : "skin and deck")} to the outside of planking.", "Millimeters; x aft, y to starboard, z up.", "The date in this file is a constant."],
            Global(title, hull.Dials.Length));
    }

    /// <summary>The flat between the after end of a patch and the centerplane.</summary>
    private static IEnumerable<string> Ruled(BSplineSurface patch) =>
        Surface(SplineBasis.Clamped(1, [0, 1]), patch.V, (i, j) => patch.PoleAt(patch.U.Count - 1, j) is var p && i > 0 ? p : p with { Y = 0 });

    /// <summary>The 26 parameters of the global section.</summary>
    private static List<string> Global(string title, double length) =>
    [
        IgesRecords.Text(","), IgesRecords.Text(";"),
        IgesRecords.Text(title), IgesRecords.Text("hull.igs"), IgesRecords.Text("Lines"), IgesRecords.Text("Lines"),
        "32", "38", "6", "308", "15", // bits of an integer; decimal exponent and digits of single and double precision
        IgesRecords.Text(title),
        "1.", "2", IgesRecords.Text("MM"), "1", IgesRecords.Real(0.1), // scale, millimeters, pens
        IgesRecords.Text("20000101.000000"), IgesRecords.Real(1000 * StepShape.SamePoint), IgesRecords.Real(1000 * length),
        "", "", "11", "0", "", "", // author, organization; version 5.3, no drafting standard; date of the model, protocol
    ];

    /// <summary>The parameters of a B-spline surface whose first index runs along <paramref name="first"/>.</summary>
    private static IEnumerable<string> Surface(SplineBasis first, SplineBasis second, Func<int, int, Point3> pole)
    {
        IEnumerable<int> sizes = [128, first.Count - 1, second.Count - 1, first.Degree, second.Degree];
        IEnumerable<int> properties = [0, 0, 1, 0, 0]; // closed, closed, polynomial, periodic, periodic
        foreach (var number in sizes.Concat(properties))
            yield return Invariant($"{number}");
        foreach (var knot in first.Knots.Concat(second.Knots))
            yield return IgesRecords.Real(knot);
        for (var k = 0; k < first.Count * second.Count; k++)
            yield return IgesRecords.Real(1);
        for (var j = 0; j < second.Count; j++)
        {
            for (var i = 0; i < first.Count; i++)
            {
                var p = pole(i, j);
                foreach (var coordinate in new[] { p.X, p.Y, p.Z })
                    yield return IgesRecords.Real(1000 * coordinate);
            }
        }

        foreach (var end in new[] { first.Start, first.End, second.Start, second.End })
            yield return IgesRecords.Real(end);
    }
}
