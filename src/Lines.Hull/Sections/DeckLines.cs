using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Sections;

/// <summary>The lines of a crowned deck: its ridge in the centerplane, and its arcs at stations, starboard.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame. The ridge runs from bow to stern, an arc from the sheer to the centerplane.</para>
/// <para><b>Accuracy.</b> Points lie on the deck. The chords of an arc stand off it by its crown over 4 N², a parabola's, N the number of chords.</para>
/// </remarks>
public sealed class DeckLines
{
    /// <summary>Chords of an arc: 0.02 mm off for a crown of 80 mm, at full size.</summary>
    private const int Chords = 32;

    private readonly BSplineSurface _deck;

    private DeckLines(BSplineSurface deck) => _deck = deck;

    /// <summary>The lines of a hull's deck; null for an open hull.</summary>
    /// <param name="hull">The hull.</param>
    public static DeckLines? Of(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return hull.Deck is { } deck ? new DeckLines(deck) : null;
    }

    /// <summary>The ridge, bow first, in chords of a fixed number to each piece of the spline.</summary>
    public IReadOnlyList<Point3> Ridge
    {
        get
        {
            var u = _deck.U.Breaks;
            return [.. u.Zip(u.Skip(1)).SelectMany(s => Enumerable.Range(0, Chords).Select(k => s.First + ((s.Second - s.First) * k / Chords))).Append(u[^1]).Select(t => _deck.PointAt(t, _deck.V.End))];
        }
    }

    /// <summary>The after end of a deck, from the sheer inboard: the upper edge of a transom.</summary>
    /// <param name="deck">The deck.</param>
    public static IReadOnlyList<Point3> EndOf(BSplineSurface deck)
    {
        ArgumentNullException.ThrowIfNull(deck);
        return [.. Enumerable.Range(0, Chords + 1).Select(k => deck.PointAt(deck.U.End, (double)k / Chords))];
    }

    /// <summary>The arc of the deck in a station plane, from the sheer inboard.</summary>
    /// <param name="x">Place of the station [m].</param>
    /// <returns>Its points; empty where the deck does not reach.</returns>
    public IReadOnlyList<Point3> ArcAt(double x) => [.. Enumerable.Range(0, Chords + 1).Select(k => At(x, (double)k / Chords)).OfType<Point3>()];

    /// <summary>Height of the ridge above the sheer at a station [m]; null where the deck does not reach.</summary>
    /// <param name="x">Place of the station [m].</param>
    public double? CrownAt(double x) => At(x, _deck.V.End)?.Z - At(x, _deck.V.Start)?.Z;

    /// <summary>Height of the ridge above the sheer at the after end [m], in the transom's plane where there is one.</summary>
    public double CrownAtEnd => _deck.PointAt(_deck.U.End, _deck.V.End).Z - _deck.PointAt(_deck.U.End, _deck.V.Start).Z;

    private Point3? At(double x, double v) => StationPlace.On(_deck, x, v) is (var u, true) ? _deck.PointAt(u, v) : null;
}
