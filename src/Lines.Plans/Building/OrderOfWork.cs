using Lines.Kernel.Units;
using Lines.Plans.Report;

namespace Lines.Plans.Building;

/// <summary>One step of the work.</summary>
/// <param name="What">What is done.</param>
/// <param name="Caution">What may hurt there; empty where nothing does.</param>
public readonly record struct WorkStep(string What, string Caution);

/// <summary>In which order the parts are made and set up; the order of the trade, no source.</summary>
public static class OrderOfWork
{
    /// <summary>The steps for a hull.</summary>
    /// <param name="book">The design as it is built.</param>
    public static IReadOnlyList<WorkStep> Of(BuildingBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var (build, hull) = (book.Build, book.Hull);
        var isSharp = hull.Transom is null;
        List<WorkStep> steps =
        [
            new("Print the patterns and measure them, or give the router files to the shop.", Cautions.Paper),
            new("Cut the molds and end patterns, drill the screw holes, mark every line on the labeled face.", Cautions.Router),
            new("Build the strongback, straight and level; draw its centerline and the running distance of every face from its fore end.", Cautions.Strongback),
            new("Set up the molds on cleats, stock on the midship side of the line, plumb and on the centerline; then the profile molds. Sight along the design waterline.", ""),
            new(isSharp ? "Make the inner stems over the profile molds and bevel them." : "Make the inner stem over its profile mold and bevel it; saw the transom to its bevels and set it up.", ""),
            new("Tape the edges of the molds. Bend a batten round them at sheer, bilge and keel and fair what it does not touch.", ""),
            new("Saw the strips, mill their edges, scarf what is longer than the boards.", Cautions.Dust),
            new(
                build.Strips == Construction.Planking.StripRun.Sheer
                    ? "Lay the first strips along the sheer marks, both sides; go on toward the keel, side by side in turn, gluing the edges."
                    : "Lay the first strips along the level line amidships, both sides; go on toward the keel in turn, then fill up to the sheer with short strips.", ""),
            new("Fit the last strips at the keel, and the outer stems.", ""),
            new("Plane and sand the outside fair.", Cautions.Dust),
        ];
        var with = build.Material;
        if (with.OutsideCloth > 0)
            steps.Add(new("Wet out the cloth outside" + (with.BottomCloth > 0 ? ", the second below the waterline while the first is green" : "") + ", squeegee it, fill the weave in two or three coats.", Cautions.Epoxy));
        steps.Add(new("Lift the hull off the molds and set it upright in slings.", Cautions.Lift));
        steps.Add(new("Scrape and sand the inside fair.", Cautions.Dust));
        if (with.InsideCloth > 0)
            steps.Add(new("Wet out the cloth inside and fill the weave.", Cautions.Epoxy));
        if (build.Bulkheads.Count > 0)
            steps.Add(new(build.Bulkheads.Count == 1 ? "Glue in the bulkhead that is in no joint; fillet and tape it." : Invariant($"Glue in the {build.Bulkheads.Count} bulkheads that are in no joint; fillet and tape them."), Cautions.Epoxy));
        steps.AddRange(Joints(build.Joints.Count));
        var deck = hull.Dials.Crown is { } crown ? $" The deck stands {new Length(crown).ToSize(book.Notation)} above the sheer where that is broadest; no patterns are made for it, and bulkheads reach the underside of one as thick as planking and inner cloth." : "";
        var rails = build.Joints.Count > 0
            ? $"Bolt the pieces together again, face to face. Fit {(build.Gunwale > 0 ? "inwales and outwales" : "gunwales of your own design")} in one fair line but cut at every joint, each length ending with its piece; then thwarts and decks, also piece by piece."
            : build.Gunwale > 0 ? "Fit inwales and outwales, then thwarts and decks." : "Fit gunwales, thwarts and decks of your own design.";
        steps.Add(new(rails + deck, ""));
        steps.Add(new("Sand the fill coats and varnish or paint: sun destroys bare epoxy.", Cautions.Glass));
        steps.Add(new("Weigh the boat and write the weight into the design file before her load cases are believed.", Cautions.Lift));
        return steps;
    }

    private static IEnumerable<WorkStep> Joints(int count)
    {
        if (count == 0)
            yield break;
        yield return new(
            count == 1 ? "Glue in the two bulkheads of the joint, bolted together through a spacer as thick as the gap; fillet and tape them." : Invariant($"Glue in the two bulkheads of each of the {count} joints, bolted together through a spacer as thick as the gap; fillet and tape them."),
            Cautions.Epoxy);
        yield return new("Saw the hull apart in the gap, seal the raw edges, take the pieces apart.", Cautions.Glass);
    }
}
