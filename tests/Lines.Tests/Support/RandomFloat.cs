using Lines.Construction;
using Lines.Construction.Pieces;
using Lines.Hull.Form;

namespace Lines.Tests.Support;

/// <summary>A small decked float with two bulkheads whose lines are drawn at random and shrunk alike, so that its molds are narrow.</summary>
internal static class RandomFloat
{
    /// <summary>The dials of a float.</summary>
    /// <param name="seed">Where chance begins.</param>
    /// <param name="scale">Its size as a part of the craft drawn.</param>
    /// <param name="crown">Crown of its deck as a part of its beam.</param>
    public static HullDials Of(int seed, double scale, double crown)
    {
        var drawn = new RandomCraft(new Random(seed), 0.5).Next();
        return drawn with
        {
            Length = scale * drawn.Length,
            Beam = scale * drawn.Beam,
            Depth = scale * drawn.Depth,
            Draft = scale * drawn.Draft,
            Crown = crown * scale * drawn.Beam,
            Bow = drawn.Bow with { Rocker = scale * drawn.Bow.Rocker, Sheer = scale * drawn.Bow.Sheer, Forefoot = scale * drawn.Bow.Forefoot },
            Stern = drawn.Stern switch
            {
                PointedStern p => p with { Rocker = scale * p.Rocker, Sheer = scale * p.Sheer, Heel = scale * p.Heel },
                TransomStern t => t with { Foot = scale * t.Foot, Sheer = scale * t.Sheer, Breadth = scale * t.Breadth },
                var other => throw new ArgumentException(other.GetType().Name, nameof(seed)),
            },
        };
    }

    /// <summary>How it is built.</summary>
    public static BuildDials Build(HullDials dials) => new()
    {
        Planking = 0.004,
        MoldStock = 0.009,
        MoldSpacing = Math.Max(0.2, dials.Length / 14),
        Bulkheads = [new BulkheadPlace("watertight", 0.3 * dials.Length, null), new BulkheadPlace("mast", 0.55 * dials.Length, 0.2 * dials.Beam)],
    };
}
