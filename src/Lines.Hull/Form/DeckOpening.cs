using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Form;

/// <summary>An opening through the deck of the main hull, square in plan.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="From">x of its fore end [m].</param>
/// <param name="To">x of its after end [m].</param>
/// <param name="Breadth">Its breadth [m].</param>
/// <param name="Aside">Its middle from the centerplane, to starboard [m]; negative to port.</param>
/// <param name="IsSealed">Whether no water comes in there: a hatch that seals, a mast in its collar.</param>
public sealed record DeckOpening(string Name, double From, double To, double Breadth, double Aside, bool IsSealed)
{
    /// <summary>Steps along each side of a rim.</summary>
    private const int Steps = 32;

    /// <summary>Points of its rim, at the height of the deck: coamings are not counted.</summary>
    /// <remarks><b>Method.</b> Its two sides alone: athwartships a deck is crowned, so that nothing between them is lower, whatever the heel.
    /// <b>Accuracy.</b> On the deck exactly. Between two of them a deck that bends lengthwise to a radius of 10 m is lower by 12 µm at most, for an opening 1 m long.</remarks>
    /// <param name="hull">The main hull.</param>
    /// <returns>The points, hull frame; empty for a hull without a deck, or where the opening is wholly off it.</returns>
    public IReadOnlyList<Point3> Rim(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (hull.Deck is not { } deck)
            return [];
        List<Point3> rim = [];
        for (var k = 0; k <= Steps; k++)
        {
            if (SurfacePoint.OnSheer(hull, From + ((To - From) * k / Steps)) is not { Point.Y: > 0 } sheer)
                continue;
            foreach (var y in (double[])[Aside - (Breadth / 2), Aside + (Breadth / 2)])
            {
                var at = deck.PointAt(sheer.U, Math.Max(0, 1 - (Math.Abs(y) / sheer.Point.Y)));
                rim.Add(at with { Y = Math.CopySign(at.Y, y) });
            }
        }

        return rim;
    }
}
