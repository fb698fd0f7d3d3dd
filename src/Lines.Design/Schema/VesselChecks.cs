using Lines.Design.Diagnostics;
using Lines.Design.Text;

namespace Lines.Design.Schema;

/// <summary>Finds what the tables of a vessel contradict in each other: hulls that overlap, names given twice, bulkheads that cross.</summary>
internal sealed class VesselChecks(FileValues file, DiagnosticBag faults)
{
    public static void Find(FileValues file, DiagnosticBag faults)
    {
        var checks = new VesselChecks(file, faults);
        foreach (var form in DesignSchema.Repeated)
            checks.Names([.. file.Of(form)]);
        checks.Cases();
        checks.Spacings();
        checks.Bulkheads();
        checks.Beyond(DesignSchema.Bulkhead, "at");
        checks.Beyond(DesignSchema.Opening, "to");
    }

    /// <summary>Names that two tables of one form have.</summary>
    private void Names(IReadOnlyList<DesignValues> tables)
    {
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var values in tables)
        {
            if (values.Find("name") is { } name && !seen.TryAdd(Plain(name.Text), name.Place))
                faults.Add(name.Place, values.Form.Shown("name"), Invariant($"{SourceText.Shown(name.Raw)} is the name of another {values.Form.Name}, at line {seen[Plain(name.Text)].Line}"), "give each a name of its own");
        }
    }

    /// <summary>Names of load cases that differ only in how they are written, and cases named twice in one list.</summary>
    private void Cases()
    {
        var seen = new Dictionary<string, (string Text, Place Place)>(StringComparer.Ordinal);
        foreach (var cases in file.Of(DesignSchema.Load).Select(v => v.Find("cases")).OfType<KeyValue>())
        {
            var here = new HashSet<string>(StringComparer.Ordinal);
            foreach (var name in cases.Items)
            {
                var path = DesignSchema.Load.Shown("cases");
                if (!seen.TryAdd(Plain(name.Text), (name.Text, name.Place)) && seen[Plain(name.Text)] is var first && !first.Text.Equals(name.Text, StringComparison.Ordinal))
                    faults.Add(name.Place, path, Invariant($"{SourceText.Shown(name.Raw)} is written otherwise at line {first.Place.Line}, and two cases cannot be meant"), $"write \"{SourceText.Shown(first.Text)}\"");
                else if (!here.Add(Plain(name.Text)))
                    faults.Add(name.Place, path, $"{SourceText.Shown(name.Raw)} is named twice", "name it once");
            }
        }
    }

    /// <summary>Outriggers whose hull would lie in the main hull, or in another.</summary>
    private void Spacings()
    {
        var floats = file.Of(DesignSchema.Outrigger).Where(v => v.Has("spacing") && v.Has("hull.beam")).ToList();
        for (var i = 0; i < floats.Count; i++)
        {
            var (own, spacing) = (floats[i], floats[i].Find("spacing")!);
            var beam = own.Number("hull.beam");
            if (file.Main.NumberOrNone("hull.beam") is { } main && Spacing(own, main, beam, faults))
                continue;

            foreach (var other in floats.Take(i).Where(o => OnOneSide(own, o) && OverlapAlong(own, o)))
            {
                var least = (beam + other.Number("hull.beam")) / 2;
                if (Math.Abs(spacing.Number - other.Number("spacing")) < least)
                    Overlap(own, faults, Invariant($"makes it overlap the outrigger at line {other.Head.Line}: that has {SourceText.Shown(other.Find("spacing")!.Raw)}, and half their beams together are"), least, other.Number("spacing"));
            }
        }
    }

    /// <summary>Tells an outrigger that lies in the main hull.</summary>
    /// <param name="own">Its values.</param>
    /// <param name="main">Beam of the main hull [m].</param>
    /// <param name="beam">Beam of its own hull [m].</param>
    /// <param name="faults">Takes the fault.</param>
    /// <returns>Whether it does.</returns>
    public static bool Spacing(DesignValues own, double main, double beam, DiagnosticBag faults)
    {
        var overlaps = own.Number("spacing") < (main + beam) / 2;
        if (overlaps)
            Overlap(own, faults, "makes it overlap the main hull: half their beams together are", (main + beam) / 2);
        return overlaps;
    }

    private static void Overlap(DesignValues own, DiagnosticBag faults, string problem, double least, double from = 0)
    {
        var spacing = own.Find("spacing")!;
        var key = own.Form.ByPath["spacing"];
        faults.Add(
            spacing.Place,
            own.Form.Shown(key.Path),
            $"{SourceText.Shown(spacing.Raw)} {problem} {KeyRange.Show(key, least, spacing.Notation)}",
            $"give at least {KeyRange.ShowLimit(key, from + least, isUpper: false, spacing.Notation)}",
            toward: 1);
    }

    private static bool OnOneSide(DesignValues one, DesignValues other) =>
        one.Find("side")?.Text is { } a && other.Find("side")?.Text is { } b && (a is "both" || b is "both" || a.Equals(b, StringComparison.Ordinal));

    private static bool OverlapAlong(DesignValues one, DesignValues other) =>
        one.Has("aft") && other.Has("aft") && one.Has("hull.length") && other.Has("hull.length")
        && one.Number("aft") < other.Number("aft") + other.Number("hull.length") && other.Number("aft") < one.Number("aft") + one.Number("hull.length");

    /// <summary>Compartments that reach beyond the hull or into each other.</summary>
    private void Bulkheads()
    {
        var placed = file.Of(DesignSchema.Compartment).Where(v => v.Has("from") && v.Has("to") && v.Number("from") < v.Number("to")).OrderBy(v => v.Number("from")).ToList();
        Beyond(DesignSchema.Compartment, "to");
        foreach (var (fore, aft) in placed.Zip(placed.Skip(1)).Where(p => p.Second.Number("from") < p.First.Number("to")))
        {
            var from = aft.Find("from")!;
            faults.Add(
                from.Place,
                aft.Form.Shown("from"),
                Invariant($"{SourceText.Shown(from.Raw)} is within the compartment at line {fore.Head.Line}, which ends at {SourceText.Shown(fore.Find("to")!.Raw)}"),
                $"give at least {KeyRange.ShowLimit(aft.Form.ByPath["from"], fore.Number("to"), isUpper: false, from.Notation)}",
                toward: 1);
        }
    }

    /// <summary>Places of one form that lie beyond the stern.</summary>
    private void Beyond(SchemaForm form, string path)
    {
        foreach (var at in file.Of(form).Select(v => v.Find(path)).OfType<KeyValue>())
        {
            if (file.Main.NumberOrNone("hull.length") is { } length && at.Number > length)
                faults.Add(at.Place, form.Shown(path), $"{SourceText.Shown(at.Raw)} is beyond the stern of the main hull", $"give at most {KeyRange.ShowLimit(form.ByPath[path], length, isUpper: true, at.Notation)} (the length)", toward: -1);
        }
    }

    /// <summary>Finds the cases that only one load names and that look like another case misspelled.</summary>
    /// <param name="loads">The loads of a file.</param>
    /// <param name="notes">Takes them.</param>
    public static void LoneCases(IReadOnlyList<DesignValues> loads, DiagnosticBag notes)
    {
        var named = loads.SelectMany(v => v.Find("cases")?.Items ?? []).GroupBy(i => i.Text, StringComparer.Ordinal).ToList();
        foreach (var lone in named.Where(n => n.Count() == 1).Select(n => n.Single()))
        {
            // Numbered cases are meant to look alike.
            var others = named.Where(n => (n.Count() > 1 || n.First().Place < lone.Place) && !Unnumbered(n.Key).Equals(Unnumbered(lone.Text), StringComparison.Ordinal)).Select(n => n.Key);
            if (NearestName.Of(lone.Text, others) is { } near)
                notes.Add(lone.Place, DesignSchema.Load.Shown("cases"), $"{SourceText.Shown(lone.Raw)} is a case that no other load names, nearly \"{SourceText.Shown(near)}\"", "write it the same where one case is meant");
        }
    }

    private static string Unnumbered(string name) => Plain(string.Concat(name.Where(c => !char.IsDigit(c))));

    /// <summary>A name without what people write differently without meaning another: case, blanks, hyphens.</summary>
    private static string Plain(string name) => string.Concat(name.Where(c => !char.IsWhiteSpace(c) && c is not ('-' or '_'))).ToUpperInvariant();
}
