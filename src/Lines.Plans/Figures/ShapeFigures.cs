using Lines.Hull.Form;
using Lines.Kernel.Numerics;

namespace Lines.Plans.Figures;

/// <summary>The figures of keel, ends and widest section, measured on the surface: what their dials read back as.</summary>
public static class ShapeFigures
{
    private static readonly double[] s_places = [.. Enumerable.Range(0, 65).Select(k => k / 64.0)];

    /// <summary>The group.</summary>
    /// <param name="hull">The hull.</param>
    public static FigureGroup Of(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var side = hull.Side;
        var (low, least) = Peak.Over(u => -side.PointAt(u, 0).Z, s_places);
        return new FigureGroup("shape", "Keel, ends and widest section",
        [
            new("forefoot_rise", "Keel at the forefoot", side.PointAt(0, 0).Z, Quantity.Length) { Note = "above the base line" },
            new("forefoot_aft", "Forefoot", side.PointAt(0, 0).X, Quantity.Length) { Note = "aft of the foremost point" },
            new("forefoot_vee", "Vee behind the forefoot", VeeMeasure.At(hull, bow: true), Quantity.Angle) { Note = "of the section from level at the keel, a twentieth of the waterline aft of it" },
            new("keel_lowest", "Keel at its lowest", Math.Round(-least, 12), Quantity.Length) { Note = "above the base line" },
            new("keel_lowest_aft", "Keel at its lowest, place", side.PointAt(low, 0).X, Quantity.Length) { Note = "aft of the foremost point" },
            new("keel_lowest_part", "Keel at its lowest, part of the length", side.PointAt(low, 0).X / hull.Dials.Length, Quantity.Fraction) { Note = "aft of the foremost point" },
            .. hull.Transom is null ? Sternpost(hull) : Transom(hull),
            new("deadrise", "Deadrise", VeeMeasure.Standing(hull, hull.WidestU, 0), Quantity.Angle) { Note = "of the widest section at the keel" },
            new("flare", "Flare", (Math.PI / 2) - VeeMeasure.Standing(hull, hull.WidestU, 1), Quantity.Angle) { Note = "of the widest section at the sheer, from plumb" },
        ]);
    }

    private static IEnumerable<Figure> Sternpost(HullSurface hull)
    {
        var foot = hull.Side.PointAt(1, 0);
        yield return new("heel_rise", "Keel at the heel", foot.Z, Quantity.Length) { Note = "above the base line" };
        yield return new("heel_ahead", "Heel", hull.Dials.Length - foot.X, Quantity.Length) { Note = "ahead of the aftmost point" };
        yield return new("heel_vee", "Vee before the heel", VeeMeasure.At(hull, bow: false), Quantity.Angle) { Note = "a twentieth of the waterline ahead of it" };
    }

    private static IEnumerable<Figure> Transom(HullSurface hull)
    {
        var (foot, head) = (hull.Side.PointAt(1, 0), hull.Side.PointAt(1, 1));
        yield return new("transom_foot", "Foot of the transom", foot.Z, Quantity.Length) { Note = "above the base line" };
        yield return new("transom_breadth", "Breadth of the transom", 2 * Peak.Over(v => hull.Side.PointAt(1, v).Y, s_places).Value, Quantity.Length);
        yield return new("transom_rake", "Rake of the transom", Math.Atan2(head.X - foot.X, head.Z - foot.Z), Quantity.Angle) { Note = "from plumb, its head aft" };
    }
}
