using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Report;

namespace Lines.Plans.Molds;

/// <summary>The setting-up sheet: where every mold stands on the strongback, drawn and tabled, on letter paper held sideways.</summary>
public static class SettingUpSheet
{
    private const double AboveNotes = 5;

    /// <summary>The pages.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="plan">Its molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="isFair">Whether the hull is fair; one that is not is marked so.</param>
    /// <returns>One page; more where the table needs them.</returns>
    public static IReadOnlyList<Sheet> Of(string title, HullSurface hull, MoldPlan plan, LengthNotation notation, bool isFair = true)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(plan);
        var page = SettingUpPage.Room;
        var notes = Notes(hull, plan, notation).ToList();

        // On the first page the table takes what view and notes leave; a smaller view makes room for its last rows, and one that needs more goes on over the page.
        double Left(SettingUpView v) => page.Top - SettingUpPage.TitleBand - v.Height - (page.Bottom + SettingUpPage.HeightOf(notes) + AboveNotes);
        var views = SettingUpView.Within(hull, plan, notation, page.Width);
        var view = views.FirstOrDefault(v => Left(v) >= PageTable.HeightOf(plan.Molds.Count), views[0]);
        var room = Left(view);
        var row = Math.Clamp((room - PageTable.Head) / plan.Molds.Count, PageTable.LeastRow, SettingUpTable.GreatestRow);
        var pages = new List<List<Mold>>();
        for (var left = plan.Molds.ToList(); left.Count > 0; room = page.Height - SettingUpPage.TitleBand)
        {
            var rows = Math.Clamp((int)(((room - PageTable.Head) / row) + 1e-9), 0, left.Count);
            pages.Add(left[..rows]);
            left = left[rows..];
        }

        return [.. pages.Select((rows, i) => Page(i, rows).ToSheet($"{title}: setting up"))];

        SettingUpPage Page(int index, List<Mold> rows)
        {
            var sheet = new SettingUpPage(Cautions.Marked("Setting up the molds", isFair), title);
            var top = page.Top - SettingUpPage.TitleBand;
            var number = pages.Count > 1 ? Invariant($"page {index + 1} of {pages.Count}") : "";
            sheet.Under(Invariant($"Boat upside down, seen from starboard, bow to the left. Scale 1:{view.Scale}. Lengths in {Unit(notation)}."), number);
            if (index == 0)
            {
                view.Draw(sheet.Marks, page with { Top = top });
                top -= view.Height;
                sheet.Note(notes);
            }

            if (rows.Count > 0)
                SettingUpTable.Table.Draw(sheet.Marks, page with { Top = top }, rows.Select(m => SettingUpTable.Cells(m, notation).ToList()), row);
            return sheet;
        }
    }

    private static IEnumerable<string> Notes(HullSurface hull, MoldPlan plan, LengthNotation notation)
    {
        string Shown(double meters) => new Length(meters).ToText(notation);
        var s = plan.Strongback;
        yield return $"Strongback: {Shown(s.Length)} long, {Shown(s.Width)} wide over the top, straight and level. The foot of every station mold is just as wide: its corners flush with its edges, the nick in its bottom on the centerline drawn along it.";
        yield return $"The strongback's fore end stands {Shown(-s.ForeX)} ahead of the stem; distances run from there to the labeled face. The stock stands on the midship side, so the planking touches the labeled edge.";
        yield return $"Heights stand on the strongback top, {Shown(s.Top)} from the base line: the design waterline is {Shown(s.HeightOf(hull.Draft))} up on every mold it crosses. Sight along it before planking.";
        yield return "Profile molds run past the foot of the stem and butt against a mold; planking lands on the corners of their edge. APEX: the inner stem's outer edge, where both insides meet.";
        if (Slots(plan) is { } slots)
            yield return slots;
        yield return $"Far edge proud of the planking's inside: plane it back (a stroke: a shaving); clear: leave it. Holes: {string.Join("; ", Holes(plan, notation))}.";
        foreach (var missing in plan.ApexSentences(notation))
            yield return missing;
        IReadOnlyList<Mold> underDeck = hull.Deck is null ? [] : [.. plan.Bulkheads, .. plan.Molds.Where(m => m.Kind == MoldKind.Transom && m.Marks.All(k => k.Kind != MoldMarkKind.Sheer))];
        if (hull.Transom is not null)
        {
            var past = underDeck.Any(m => m.Kind == MoldKind.Transom)
                ? "Its top is the deck's underside there: plane it to a batten along the deck."
                : "Past SHEER it holds the last strip; trim it later.";
            yield return $"The transom stands on posts. Its pattern is the after face: saw on its line, blade at the bevel given (plus: fore face larger). {past}";
        }

        if (plan.Joints.Count > 0)
        {
            yield return $"Joints, from the strongback's fore end: {string.Join("; ", plan.Joints.Select((x, k) => Invariant($"{k + 1} at {Shown(s.DistanceTo(x))}")))}. {Bulkheads(plan, notation)}";
        }

        string[] fitted =
        [
            .. plan.Bulkheads.Where(b => b.Purpose is not null).Select(b => $"{b.Name} {b.Purpose} at {Shown(s.DistanceTo(b.X))}"),
        ];
        if (fitted.Length > 0)
            yield return $"Bulkheads, from the strongback's fore end: {string.Join("; ", fitted)}.";
        foreach (var o in plan.Openings)
        {
            var aside = o.Aside == 0 ? "" : $", its middle {Shown(Math.Abs(o.Aside))} to {(o.Aside > 0 ? "starboard" : "port")}";
            var on = plan.MarkedWith(o) is { Count: > 0 } parts ? $"marked on {string.Join(", ", parts.Select(p => p.Name))}" : "between molds, so that none is marked: measure it off on the hull";
            yield return $"Opening in the {(o.InDeck ? "deck" : "bottom")}, {o.Name}: {Shown(s.DistanceTo(o.From))} to {Shown(s.DistanceTo(o.To))} from the strongback's fore end, {Shown(o.Breadth)} broad{aside}; {on}.";
        }

        if (hull.Dials.Crown is { } crown)
            yield return $"Molds end at the sheer. The deck, {Shown(crown)} higher at the centerline where the sheer is broadest, has no patterns here; setting-up.csv tells its crown at every mold.";
        if (underDeck.Count > 0)
        {
            var (who, they) = (plan.Bulkheads.Count > 0, underDeck.Count > plan.Bulkheads.Count) switch
            {
                (true, true) => ("Bulkheads and transom rise", "they stand"),
                (true, false) => ("Bulkheads rise", "they stand"),
                _ => ("The transom rises", "it stands"),
            };
            yield return $"{who} to the underside of a deck {new Length(plan.DeckThickness).ToSize(notation)} thick, as thick as planking and inner cloth; at the centerline above the sheer {they}: {string.Join("; ", underDeck.Select(b => $"{b.Name} {Shown(Rise(plan, b))}"))}.";
        }

        foreach (var l in plan.LeftOut)
            yield return l.Sentence(notation);
        yield return Cautions.Print;
    }

    // What ends under a deck is highest on the centerline; the boat stands upside down.
    private static double Rise(MoldPlan plan, Mold part) =>
        Math.Max(0, part.Heights.Sheer - plan.Strongback.HeightOf(part.Frame.ToHull(new Point2(0, part.Outline.Bounds().Bottom)).Z));

    private static string Bulkheads(MoldPlan plan, LengthNotation notation) => plan.Bulkheads.Where(b => b.Purpose is null).ToList() is [var first, var second, ..] pairs
        ? $"Bulkheads {first.Name} to {pairs[^1].Name} go in when the inside is sheathed, over a {new Length(second.X - first.X).ToSize(notation)} spacer."
        : "No bulkhead could be made for them.";

    private static string? Slots(MoldPlan plan)
    {
        var ends = plan.Molds.Where(m => m.Kind is MoldKind.Stem or MoldKind.Stern).Select(m => (Mold: m, Passed: plan.Passed(m))).Where(e => e.Passed.Count > 0).ToList();
        if (ends.Count == 0)
            return null;
        var slides = string.Join("; ", ends.Select(e => $"{string.Join(" and ", e.Passed.Select(m => m.Name))} {(e.Passed.Count == 1 ? "slides up into the slot" : "slide up into the slots")} of the {Named(e.Mold)} mold"));
        var (level, below) = ends is [var (one, passed)] ? (passed.Count == 1 ? $"{passed[0].Name} ends" : "They end", $"the {Named(one)} mold's") : ("They end", "that mold's");
        return $"{slides}: both a little easy. {level} level, below {below} edge, which carries the planking on.";

        static string Named(Mold end) => end.Kind == MoldKind.Stem ? "stem" : "stern";
    }

    private static IEnumerable<string> Holes(MoldPlan plan, LengthNotation notation)
    {
        foreach (var hole in plan.Molds.SelectMany(m => m.Holes).DistinctBy(h => h.Kind).OrderBy(h => h.Kind))
        {
            yield return MoldHoleDrawing.Size(hole, notation) + hole.Kind switch
            {
                MoldHoleKind.Screw => " for screws to cleats (drill)",
                MoldHoleKind.Sight => " to sight through (drill)",
                _ => " for clamps (cut; layer holes in router files)",
            };
        }
    }

    /// <summary>The unit of figures without one.</summary>
    internal static string Unit(LengthNotation notation) => notation switch
    {
        LengthNotation.Millimeters => "mm",
        LengthNotation.Inches => "inches",
        LengthNotation.FeetInches => "feet and inches",
        _ => "feet, inches and eighths",
    };
}
