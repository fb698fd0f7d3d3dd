using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The part of the deck of a closed hull below one level water plane, starboard half.</summary>
/// <remarks>
/// <para><b>Method.</b> Across the deck, from the sheer to where the water leaves it, a Gauss rule; along it
/// adaptive, for where the ridge comes out of the water the breadth of the strip under water falls as a square root.</para>
/// <para><b>Accuracy.</b> The relative error of the area is below the tolerance, across the deck 1e-14 for a crown up to a
/// quarter of the beam.</para>
/// </remarks>
internal sealed class DeckBelow
{
    /// <summary>Points across the deck, where the area's integrand is a smooth root.</summary>
    private const int Across = 12;

    private readonly BSplineSurface _deck;
    private readonly double _tolerance;

    /// <summary>Finds what is under water.</summary>
    /// <param name="deck">The deck.</param>
    /// <param name="height">Height of the water plane [m].</param>
    /// <param name="tolerance">Relative error of every integral, above 0.</param>
    public DeckBelow(BSplineSurface deck, double height, double tolerance)
    {
        _deck = deck;
        _tolerance = tolerance;
        Region = new WaterRegion(deck, height, closed: true);
    }

    /// <summary>The part of the deck's parameter domain below the water.</summary>
    public WaterRegion Region { get; }

    /// <summary>Whether any of the deck is under water.</summary>
    public bool IsWet => Region.Spans.Count > 0;

    /// <summary>Half the area of the wet deck [m²].</summary>
    /// <param name="size">Half that of the wet skin, beside which what is small counts as nothing.</param>
    public double Area(double size) => Region.Spans.Sum(span => Quadrature.Over(Strip, [size], span, _tolerance)[0]);

    /// <summary>Area of a transom between the level of its upper corners and the deck, as far as it is under water, both sides, in its own plane [m²].</summary>
    /// <param name="plane">The transom's plane.</param>
    /// <param name="tolerance">Error relative to the square of the transom's half-breadth there, above 0.</param>
    public double TransomAbove(Plane plane, double tolerance)
    {
        var top = Region.WaterlineAt(_deck.U.End);
        var half = _deck.PointAt(_deck.U.End, _deck.V.Start).Y;
        return top <= 0 ? 0 : 2 * Quadrature.Over(Up, [half * half], [_deck.V.Start, top], tolerance)[0];

        void Up(double v, Span<double> values)
        {
            var jet = _deck.JetAt(_deck.U.End, v);
            values[0] = jet.Point.Y * ((plane.Normal.X * jet.V.Z) - (plane.Normal.Z * jet.V.X));
        }
    }

    private void Strip(double u, Span<double> values)
    {
        var rule = GaussLegendre.Rule(Across);
        var half = Region.WaterlineAt(u) / 2;
        values[0] = 0;
        for (var i = 0; i < Across; i++)
            values[0] += half * rule.Weights[i] * UprightHydrostatics.AreaOf(_deck.JetAt(u, half * (1 + rule.Abscissas[i])));
    }
}
