using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Construction.Pieces;

/// <summary>The line in which a plane across the boat cuts the underside of a crowned deck as thick as planking and inner cloth; bulkheads and a transom end under it.</summary>
/// <remarks><b>Method.</b> The deck moved in square to itself in space, cut by the plane line by line. <b>Accuracy.</b> 1e-12 m.</remarks>
internal sealed class DeckUnderside
{
    private const int MostSteps = 20;

    private readonly InsetSkin _inside;
    private readonly Plane _plane;
    private readonly Func<double, double?> _outside;

    private DeckUnderside(BSplineSurface deck, double thickness, Plane plane, Func<double, double?> outside) =>
        (_inside, _plane, _outside) = (new InsetSkin(deck.JetAt, thickness), plane, outside);

    /// <summary>The underside at a station.</summary>
    /// <param name="deck">The deck, outside.</param>
    /// <param name="thickness">Its thickness [m].</param>
    /// <param name="x">The station [m].</param>
    public static DeckUnderside AtStation(BSplineSurface deck, double thickness, double x) =>
        new(deck, thickness, Plane.AtX(x), v => StationPlace.On(deck, x, v) is (var u, true) ? u : null);

    /// <summary>The underside at a transom, in whose plane the deck ends.</summary>
    /// <param name="deck">The deck, outside.</param>
    /// <param name="thickness">Its thickness [m].</param>
    /// <param name="transom">The plane.</param>
    public static DeckUnderside AtTransom(BSplineSurface deck, double thickness, Plane transom) => new(deck, thickness, transom, _ => deck.U.End);

    /// <summary>The place in the plane at a part of the way from the sheer (0) to the centerplane (1); null where the deck does not reach it.</summary>
    /// <param name="v">The part.</param>
    public InsetPoint? At(double v)
    {
        if (_outside(v) is not { } u)
            return null;
        for (var step = 0; step < MostSteps; step++)
        {
            var place = _inside.At(u, v);
            var off = _plane.DistanceTo(place.Point);
            if (Math.Abs(off) < 1e-13)
                return place;
            u -= off / place.DU.Dot(_plane.Normal);
        }

        return null;
    }

    /// <summary>The arc from the centerplane to where it comes on the inside of the side.</summary>
    /// <param name="section">The section of the inside of the planking in the plane.</param>
    /// <param name="frame">The drawing.</param>
    /// <returns>The arc, and the parameter of the section at its end; null where the deck does not reach the plane or its side.</returns>
    public (ArcPath Arc, double End)? Over(CrossSection section, MoldFrame frame)
    {
        if (At(1) is null || At(0) is null)
            return null;
        double high = section.Top, low = section.Bottom;
        if (!(Above(high) > 0))
            return null;
        while (low - high > 1e-13 * section.Bottom && (low + high) / 2 is var middle && middle > high && middle < low)
            (high, low) = Above(middle) > 0 ? (middle, low) : (high, middle);
        var end = VAt(section.SpaceAt(low).Point.Y);
        return (ArcFit.Along(t => Drawn(1 + (t * (end - 1))), 0, 1, MoldShaping.FitTolerance, MoldShaping.ShortestSegment), low);

        double Above(double s) => section.SpaceAt(s).Point is var p ? p.Z - At(VAt(p.Y))!.Value.Point.Z : 0;

        // Breadth falls from the sheer inboard.
        double VAt(double halfBreadth)
        {
            double outer = 0, inner = 1;
            while ((outer + inner) / 2 is var v && v > outer && v < inner)
                (outer, inner) = At(v)!.Value.Point.Y > halfBreadth ? (v, inner) : (outer, v);
            return inner;
        }

        DirectedPoint Drawn(double v)
        {
            var at = At(v)!.Value;
            var outboard = -1 * (at.DV - (at.DV.Dot(_plane.Normal) / at.DU.Dot(_plane.Normal) * at.DU));
            return new(new Point2(at.Point.Y, frame.ToDrawing(at.Point).Y), new Vector2(outboard.Y, frame.ToDrawing(outboard).Y));
        }
    }
}
