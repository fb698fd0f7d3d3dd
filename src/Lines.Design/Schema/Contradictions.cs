using Lines.Design.Diagnostics;
using Lines.Design.Text;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Finds values that are each sound and cannot stand together, as far as plain arithmetic tells.</summary>
/// <remarks>What only the shaping of the hull can tell comes later, as a conflict of dials.</remarks>
internal sealed class Contradictions(DesignValues values, DiagnosticBag faults)
{
    /// <summary>A hull stouter than this is no slim hull: length over beam.</summary>
    private const double StoutestHull = 2.5;

    /// <summary>A hull slimmer than this is no boat: length over beam.</summary>
    private const double SlimmestHull = 30;

    /// <summary>The stem, or sternpost, ends this part of the length from its end: the widest station may be at 0.40.</summary>
    private const double LongestProfile = 0.4;

    /// <summary>Below this fullness a waterline without hollow would be a straight-sided wedge.</summary>
    private const double FullnessWithoutHollow = 0.55;

    /// <summary>Molds run on past the sheer by this much [m].</summary>
    private const double PastSheer = 0.025;

    /// <summary>More molds than this are a mistake in a unit.</summary>
    private const int MostMolds = 100;

    public static void Find(DesignValues values, DiagnosticBag faults)
    {
        var find = new Contradictions(values, faults);
        find.Proportions();
        find.Heights();
        find.Ends();
        find.Transom();
        find.Fullness();
        find.Building();
    }

    private void Proportions()
    {
        if (!values.All("hull.length", "hull.beam"))
            return;
        var (length, beam) = (values.Number("hull.length"), values.Number("hull.beam"));
        if (beam > length / StoutestHull)
            Fault("hull.beam", Invariant($"makes the hull less than {StoutestHull} times as long as broad, which is no slim hull"), $"give at most {Like("hull.beam", length / StoutestHull)}, or a longer hull");
        else if (beam < length / SlimmestHull)
            Fault("hull.beam", Invariant($"makes the hull more than {SlimmestHull} times as long as broad"), $"give at least {Like("hull.beam", length / SlimmestHull)}, or a shorter hull");
    }

    private void Heights()
    {
        if (values.All("hull.draft", "hull.depth") && values.Number("hull.draft") >= values.Number("hull.depth"))
            Fault("hull.draft", "reaches the sheer: it is not below the depth", $"give less than {Like("hull.draft", values.Number("hull.depth"))}");
        foreach (var end in (string[])["bow", "stern"])
        {
            var (sheer, rocker) = ($"hull.{end}.sheer", $"hull.{end}.rocker");
            if (values.All("hull.draft", sheer) && values.Number(sheer) <= values.Number("hull.draft"))
                Fault(sheer, "is under water: it is not above the draft", $"give more than {Like(sheer, values.Number("hull.draft"))}");
            if (values.All("hull.draft", rocker) && values.Number(rocker) >= values.Number("hull.draft"))
                Fault(rocker, $"lifts the keel out of the water at the {end}, which is not yet understood by this version", $"give less than the draft, {Like(rocker, values.Number("hull.draft"))}");
        }
    }

    private void Ends()
    {
        if (!values.Has("hull.length"))
            return;
        var length = values.Number("hull.length");
        var heel = IsTransom ? 0 : values.NumberOr("hull.stern.heel", 0);
        if (values.Has("hull.bow.forefoot") && values.Number("hull.bow.forefoot") + heel >= length)
        {
            Fault("hull.bow.forefoot", "and the heel leave no keel between them", "give less than the length together");
            return;
        }

        foreach (var key in (string[])["hull.bow.forefoot", "hull.stern.heel"])
        {
            if (values.Has(key) && values.Number(key) > length * LongestProfile && !(IsTransom && key.EndsWith("heel", StringComparison.Ordinal)))
                Fault(key, Invariant($"reaches over more than {LongestProfile * 100:F0} % of the length"), $"give at most {Like(key, length * LongestProfile)}");
        }
    }

    private bool IsTransom => values.Find("hull.stern.kind")?.Text is DesignSchema.Transom;

    private void Transom()
    {
        if (!IsTransom)
            return;
        if (values.All("hull.stern.breadth", "hull.beam") && values.Number("hull.stern.breadth") > values.Number("hull.beam"))
            Fault("hull.stern.breadth", "is more than the beam", $"give at most {Like("hull.stern.breadth", values.Number("hull.beam"))}");
        if (values.All("hull.stern.immersion", "hull.draft"))
        {
            var (immersion, draft) = (values.Number("hull.stern.immersion"), values.Number("hull.draft"));
            if (immersion > draft)
                Fault("hull.stern.immersion", "puts the foot of the transom below the keel", $"give at most the draft, {Like("hull.stern.immersion", draft)}");
        }

        if (values.All("hull.stern.rake", "hull.stern.sheer", "hull.length")
            && values.Number("hull.stern.sheer") * Math.Tan(values.Number("hull.stern.rake")) > values.Number("hull.length") * LongestProfile)
            Fault("hull.stern.rake", "lets the transom reach over more than the after body", "give a smaller rake");
    }

    private void Fullness()
    {
        if (values.NumberOr("hull.hollow", 0) > 0)
            return;
        foreach (var key in (string[])["hull.bow.entry_fullness", "hull.stern.run_fullness"])
        {
            if (values.Has(key) && values.Number(key) < FullnessWithoutHollow)
                Fault(key, Invariant($"is below {FullnessWithoutHollow}, which only hollow lines reach"), Invariant($"give at least {FullnessWithoutHollow}, or hollow = true in [hull]"));
        }
    }

    private void Building()
    {
        if (values.Has("hull.length"))
        {
            Inside("build.joints", values.Number("hull.length"));
            Inside("build.mold_at", values.Number("hull.length"));
            var spacing = values.NumberOr("build.mold_spacing", 0);
            if (values.Has("build.mold_spacing") && spacing > values.Number("hull.length") / 2)
                Fault("build.mold_spacing", "is more than half the length", $"give at most {Like("build.mold_spacing", values.Number("hull.length") / 2)}");
            else if (spacing > 0 && values.Number("hull.length") / spacing > MostMolds)
                Fault("build.mold_spacing", Invariant($"makes more than {MostMolds} molds"), $"give at least {Like("build.mold_spacing", values.Number("hull.length") / MostMolds)}");
        }

        if (values.Find("build.mold_at") is { Numbers.Count: 0 })
            Fault("build.mold_at", "names no station", "name at least one, or leave the key out for even spacing");
        if (values.All("build.planking", "hull.beam") && values.Number("build.planking") > values.Number("hull.beam") / 8)
            Fault("build.planking", "is more than 1/8 of the beam", $"give at most {Like("build.planking", values.Number("hull.beam") / 8)}");
        Strongback();
    }

    private void Inside(string key, double length)
    {
        if (values.Find(key) is not { } list)
            return;
        for (var i = 0; i < list.Numbers.Count; i++)
        {
            if (list.Numbers[i] <= 0 || list.Numbers[i] >= length)
                faults.Add(list.Places[i], key, $"{KeyRange.Show(DesignSchema.ByPath[key], list.Numbers[i])} is not between the ends of the hull", $"give more than 0 mm and less than the length, {KeyRange.Show(DesignSchema.ByPath["hull.length"], length)}");
        }
    }

    private void Strongback()
    {
        if (!values.All("build.strongback_top", "hull.depth", "hull.bow.sheer", "hull.stern.sheer"))
            return;
        var highest = Math.Max(values.Number("hull.depth"), Math.Max(values.Number("hull.bow.sheer"), values.Number("hull.stern.sheer")));
        if (values.Number("build.strongback_top") < highest + PastSheer)
            Fault("build.strongback_top", "is not clear of the highest sheer, past which the molds run 25 mm", $"give at least {Like("build.strongback_top", highest + PastSheer)}, or leave it out");
    }

    private void Fault(string key, string problem, string remedy) =>
        faults.Add(values.PlaceOf(key), key, values.Find(key) is { } value ? $"{SourceText.Shown(value.Raw)} {problem}" : problem, remedy);

    /// <summary>A limit shown in the notation the key is written in.</summary>
    private string Like(string key, double limit)
    {
        var notation = values.Find(key)?.Notation ?? LengthNotation.Millimeters;
        return notation == LengthNotation.Millimeters ? KeyRange.Show(DesignSchema.ByPath[key], limit) : new Length(limit).ToText(notation);
    }
}
