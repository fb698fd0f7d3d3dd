using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Construction.Pieces;

/// <summary>The underside of a crowned deck as thick as planking and inner cloth, under which bulkheads end.</summary>
/// <remarks><b>Method.</b> The deck moved in square to itself in space, cut by the plane of a station line by line. <b>Accuracy.</b> 1e-12 m.</remarks>
/// <param name="deck">The deck, outside.</param>
/// <param name="thickness">Its thickness [m].</param>
internal sealed class DeckUnderside(BSplineSurface deck, double thickness)
{
    private const int MostSteps = 20;

    private readonly InsetSkin _inside = new(deck.JetAt, thickness);

    /// <summary>The place in the plane of a station at a part of the way from the sheer (0) to the centerplane (1); null where the deck does not reach it.</summary>
    /// <param name="x">The station [m].</param>
    /// <param name="v">The part.</param>
    public InsetPoint? At(double x, double v)
    {
        if (StationPlace.On(deck, x, v) is not (var u, true))
            return null;
        for (var step = 0; step < MostSteps; step++)
        {
            var place = _inside.At(u, v);
            var off = place.Point.X - x;
            if (Math.Abs(off) < 1e-13)
                return place;
            u -= off / place.DU.X;
        }

        return null;
    }

    /// <summary>The arc in the plane of a station from the centerplane to where it comes on the inside of the side.</summary>
    /// <param name="x">The station [m].</param>
    /// <param name="section">The section of the inside of the planking there.</param>
    /// <param name="frame">The drawing.</param>
    /// <returns>The arc, and the parameter of the section at its end; null where the deck does not reach the station or its side.</returns>
    public (ArcPath Arc, double End)? Over(double x, CrossSection section, MoldFrame frame)
    {
        if (At(x, 1) is null || At(x, 0) is null)
            return null;
        double high = section.Top, low = section.Bottom;
        if (!(Above(high) > 0))
            return null;
        while (low - high > 1e-13 * section.Bottom && (low + high) / 2 is var middle && middle > high && middle < low)
            (high, low) = Above(middle) > 0 ? (middle, low) : (high, middle);
        var end = VAt(section.SpaceAt(low).Point.Y);
        return (ArcFit.Along(t => Drawn(1 + (t * (end - 1))), 0, 1, MoldShaping.FitTolerance), low);

        double Above(double s) => section.SpaceAt(s).Point is var p ? p.Z - At(x, VAt(p.Y))!.Value.Point.Z : 0;

        // Breadth falls from the sheer inboard.
        double VAt(double halfBreadth)
        {
            double outer = 0, inner = 1;
            while ((outer + inner) / 2 is var v && v > outer && v < inner)
                (outer, inner) = At(x, v)!.Value.Point.Y > halfBreadth ? (v, inner) : (outer, v);
            return inner;
        }

        DirectedPoint Drawn(double v)
        {
            var at = At(x, v)!.Value;
            var outboard = -1 * (at.DV - (at.DV.X / at.DU.X * at.DU));
            return new(new Point2(at.Point.Y, frame.ToDrawing(at.Point).Y), new Vector2(outboard.Y, frame.ToDrawing(outboard).Y));
        }
    }
}
