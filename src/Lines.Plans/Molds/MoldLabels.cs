using Lines.Construction.Molds;
using Lines.Drawing.Text;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>What is written on a mold and about it.</summary>
internal static class MoldLabels
{
    /// <summary>A far face prouder than this takes a stroke of the plane [m].</summary>
    private const double Noticeable = 0.0002;

    /// <summary>The lines of a mold's label with their heights [mm].</summary>
    public static IReadOnlyList<(string Text, double Height)> Of(string title, Mold mold, LengthNotation notation)
    {
        List<(string, double)> lines = [(mold.Name, 16), (Face(mold), 8)];
        lines.AddRange(Place(mold, notation).Select(t => (t, 5.5)));
        lines.Add(($"INSIDE OF {new Length(mold.Planking).ToSize(notation)} PLANKING{(mold.Sheathing > 0 ? $" AND {new Length(mold.Sheathing).ToSize(notation)} CLOTH" : "")}", 5.5));
        if (mold.IsHalf)
            lines.Add(("HALF: TURN OVER AT CL", 5.5));
        if (mold.LapFloor is not null)
            lines.Add(("SLOT: PROFILE MOLD PASSES", 5.5));
        if (mold.Marks.Any(m => m.Kind == MoldMarkKind.Apex))
            lines.AddRange([("INNER STEM: BEVEL FROM THIS EDGE TO THE DASHED", 4), ("LINE, WHERE THE INSIDES OF THE PLANKING MEET", 4)]);
        if (mold.Kind is MoldKind.Stem or MoldKind.Stern)
            lines.Add(("DEGREES AT THE EDGE: THIS FACE TO THE PLANKING", 4));
        lines.InsertRange(2, Fitted(title, lines.Max(l => StrokeLettering.Width(l.Item1, l.Item2))));
        return lines;
    }

    // No wider than the rest of the label: smaller, and broken in two where that would be too small.
    private static IEnumerable<(string, double)> Fitted(string title, double room)
    {
        const double wanted = 7;
        const double least = 5;
        var height = Math.Min(wanted, room / StrokeLettering.Width(title, 1));
        if (height >= least)
            return [(title, height)];
        var middle = title.Length / 2;
        var spaces = Enumerable.Range(1, title.Length - 2).Where(i => title[i] == ' ').OrderBy(i => Math.Abs(i - middle)).ToList();
        // A word too long to stand on a line is broken, but never within a surrogate pair.
        var end = spaces.Count > 0 && Math.Abs(spaces[0] - middle) < title.Length / 4 ? spaces[0] : char.IsLowSurrogate(title[middle]) ? middle + 1 : middle;
        string[] halves = [title[..end].TrimEnd(), title[end..].TrimStart()];
        var fit = halves.Min(h => Math.Min(least, room / StrokeLettering.Width(h, 1)));
        return halves.Select(h => (h, fit));
    }

    /// <summary>Which way the labeled face looks.</summary>
    public static string Face(Mold mold) => mold.Face switch
    {
        MoldFace.Bow => "THIS FACE TO BOW",
        MoldFace.Stern => "THIS FACE TO STERN",
        _ => "THIS FACE TO STARBOARD",
    };

    private static string Shown(double meters, LengthNotation notation) => new Length(meters).ToText(notation);

    private static IEnumerable<string> Place(Mold mold, LengthNotation notation)
    {
        switch (mold.Kind)
        {
            case MoldKind.Station:
                yield return $"x = {Shown(mold.X, notation)} FROM THE BOW";
                yield return $"FACE {Shown(mold.Foot.Fore, notation)} FROM STRONGBACK FORE END";
                break;
            case MoldKind.Bulkhead:
                yield return mold.Purpose is { } purpose ? $"BULKHEAD: {purpose.ToUpperInvariant()}" : Invariant($"BULKHEAD OF JOINT {mold.Number}, {(mold.IsForward ? "FORWARD" : "AFTER")} PIECE");
                yield return $"x = {Shown(mold.X, notation)} FROM THE BOW";
                yield return $"STOCK {new Length(mold.Stock).ToSize(notation)}, {(mold.Purpose is null ? "AWAY FROM THE GAP" : "ON THE MIDSHIP SIDE")}";
                if (mold.Holes.FirstOrDefault(h => h.Kind == MoldHoleKind.Bolt) is { } bolt)
                    yield return $"BOLT HOLES {new Length(bolt.Diameter).ToSize(notation)}: DRILL BOTH TOGETHER";
                if (mold.Proud is > Noticeable and var proud)
                    yield return $"PLANE THE FAR FACE BACK {Shown(proud, notation)}";
                break;
            case MoldKind.Transom:
                var (least, greatest) = mold.Bevel!.Value;
                yield return "AFTER FACE, TRUE SHAPE";
                yield return Bevel(least, greatest);
                break;
            default:
                yield return $"FOOT {Shown(mold.Foot.Fore, notation)} TO {Shown(mold.Foot.Aft, notation)}";
                yield return "FROM STRONGBACK FORE END";
                yield return $"STOCK {new Length(mold.Stock).ToSize(notation)}, EDGE SQUARE";
                break;
        }
    }

    private static string Bevel(double least, double greatest)
    {
        const double degree = Math.PI / 180;
        return least >= 0
            ? Invariant($"BEVEL {least / degree:F0} TO {greatest / degree:F0} DEG, FORE FACE LARGER")
            : Invariant($"BEVEL {least / degree:F0} TO {greatest / degree:F0} DEG, PLUS: FORE FACE LARGER");
    }
}
