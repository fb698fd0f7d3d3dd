using Lines.Hull.Fairness;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>Why no hull came of a set of dials.</summary>
/// <param name="Reason">What is wrong, one clause.</param>
/// <param name="Dials">The dials that may be in conflict, the likeliest first.</param>
internal sealed record FormFault(string Reason, IReadOnlyList<Dial> Dials)
{
    /// <summary>Whether it is of the widest section alone, which knows nothing of the lines along the hull.</summary>
    public bool IsOfSection { get; init; }
}

/// <summary>One try at a hull: the surface, or the first thing that its dials exclude.</summary>
/// <param name="Surface">The hull; null where there is a fault.</param>
/// <param name="Fault">What excludes it; null where there is a hull.</param>
internal sealed record HullAttempt(HullSurface? Surface, FormFault? Fault)
{
    /// <summary>A fullness that is off by no more than this is met; half of what is promised.</summary>
    private const double Settled = 5e-5;

    /// <summary>Skins tried again with hollows watched where they were found.</summary>
    private const int MostAgain = 4;

    /// <summary>A hollow this many times as deep as allowed excludes something else that was asked.</summary>
    private const double OutOfReach = 12;

    /// <summary>A foot higher than this part of the sheer leaves no side.</summary>
    private const double HighestFoot = 0.9;

    /// <summary>Bow of a batten or section that counts as straight [m].</summary>
    private const double Straight = 5e-5;

    /// <summary>Whether it is a hull that the fairness check passes.</summary>
    public bool IsFair => Surface is { } hull && FairnessReport.Of(hull).Fair;

    /// <summary>Shapes lines and skin, checking each before the next is begun: on the usual spans, and on others where those leave no hull, or no fair
    /// one.</summary>
    /// <param name="d">The dials.</param>
    public static HullAttempt Make(HullDials d) => Make(d, AtOnce(d));

    /// <summary>The second half of <see cref="Make(HullDials)"/>.</summary>
    /// <param name="d">The dials.</param>
    /// <param name="attempt">What came of the first.</param>
    public static HullAttempt Make(HullDials d, HullAttempt attempt)
    {
        if (attempt.IsFair || attempt.Fault is { IsOfSection: true })
            return attempt;
        foreach (var spans in CharacterLines.OtherSpans)
        {
            var other = Make(d, spans);
            if (other.IsFair)
                return other;
            if (attempt.Fault is not null && other.Fault is null)
                attempt = other;
        }

        return attempt;
    }

    /// <summary>The first and quicker half of <see cref="Make(HullDials)"/>: the usual spans alone, which build most of what builds.</summary>
    public static HullAttempt AtOnce(HullDials d) =>
        (SectionFault(d) ?? EndsFault(d)) is FormFault impossible ? new HullAttempt(null, impossible) : Make(d, CharacterLines.UsualSpans);

    private static HullAttempt Make(HullDials d, double[] spans)
    {
        var lines = CharacterLines.Shape(d, spans);
        var fault = MidshipFault(lines) ?? ProfileFault(lines) ?? WaterlineFault(lines) ?? SheerFault(lines);
        if (fault is not null)
            return new HullAttempt(null, fault);
        using var skin = HullShape.Program(lines);
        var surface = HullShape.With(skin.Solve(), lines);
        if (skin.Contradiction > 1e-7)
            return new HullAttempt(null, VeeFault(d));
        // What turns hollow between the places watched is watched in the next skin.
        HullSurface? sound = null;
        for (var again = 0; ; again++)
        {
            fault = Unsound(lines, surface);
            var hollows = fault is null ? SkinFaults.Hollows(surface) : [];
            var deepest = hollows.Select(h => h.Part).DefaultIfEmpty().Max();
            fault ??= SkinFaults.TooHollow(lines, hollows);
            if (fault is null)
                sound = surface;
            if (!(deepest > 1) || deepest > OutOfReach || again == MostAgain)
                return sound is null ? new HullAttempt(null, fault) : new HullAttempt(sound, null);
            surface = HullShape.With(skin.SolveOn(hollows.SelectMany(Around)), lines);
        }
    }

    /// <summary>Where a hollow found between the places watched is watched in the next skin, and on a diagonal at its own angle.</summary>
    private static IEnumerable<WatchedPlace> Around(UnaskedHollow hollow)
    {
        var at = hollow.Line.At(hollow.Hollow.Place);
        var (du, dv) = hollow.Line.Kind is LineKind.Station or LineKind.Stern ? (0.0, 0.05) : (0.02, 0.0);
        foreach (var k in (int[])[-1, 0, 1])
            yield return new(Math.Clamp(at.U + (k * du), 0, 1), Math.Clamp(at.V + (k * dv), 0, 1), Math.Tan(hollow.Line.Tag.Angle));
    }

    /// <summary>The skin is no hull where it folds, where the side swells past the beam, where a vee is none, and where a waterline that ends on the
    /// keel misses its fullness.</summary>
    private static FormFault? Unsound(CharacterLines lines, HullSurface surface)
    {
        if ((SkinFaults.Fold(lines, surface) ?? SkinFaults.Swell(lines, surface) ?? SkinFaults.FlatVee(lines, surface)) is FormFault fault)
            return fault;
        if (!lines.ForeIsRaised && !lines.AftIsRaised)
            return null;
        var (d, form) = (lines.Dials, FormCoefficients.Of(surface));
        double entry = Math.Abs(d.Bow.EntryFullness - form.Entry), run = Math.Abs(d.Stern.RunFullness - form.Run);
        if (Math.Max(entry, run) <= Settled)
            return null;
        return entry > run
            ? new FormFault(Invariant($"with the keel so near the water the entry comes to a fullness of {form.Entry:F3}"), EndDials(lines, 0))
            : new FormFault(Invariant($"with the keel so near the water the run comes to a fullness of {form.Run:F3}"), EndDials(lines, 1));
    }

    private static FormFault? SectionFault(HullDials d)
    {
        var bound = MidshipSection.GreatestFullness(d, 0);
        if (double.IsNaN(bound))
        {
            return new FormFault(
                "a section with this deadrise and flare cannot reach the sheer without a hollow, which the widest section never has", [Dial.Deadrise, Dial.Flare, Dial.Depth, Dial.Beam])
            { IsOfSection = true };
        }

        return d.Midship.Fullness < bound
            ? null
            : new FormFault(
                Invariant($"the widest section, which is never hollow, is with this deadrise and flare no fuller than {bound:F3}, and a fair one stays some way under it"),
                [Dial.MidshipFullness, Dial.Deadrise, Dial.Flare])
            { IsOfSection = true };
    }

    /// <summary>A rocker that leaves no side at an end.</summary>
    private static FormFault? EndsFault(HullDials d)
    {
        const string reason = "the keel rises to the sheer there";
        if (d.Bow.Rocker > HighestFoot * d.Bow.Sheer)
            return new FormFault(reason, [Dial.BowRocker, Dial.BowSheer]);
        return d.Stern.FootHeight > HighestFoot * d.Stern.Sheer ? new FormFault(reason, [FootOf(d), Dial.SternSheer]) : null;
    }

    private static FormFault? MidshipFault(CharacterLines lines) =>
        !lines.Midship.IsMet || lines.Midship.Hollow > Straight
            ? new FormFault("no fair section has this fullness with this deadrise and flare", [Dial.MidshipFullness, Dial.Deadrise, Dial.Flare]) { IsOfSection = true }
            : null;

    private static FormFault? ProfileFault(CharacterLines lines)
    {
        var d = lines.Dials;
        var keel = lines.Keel;
        if (keel.Hollow > Straight || keel.Contradiction > 1e-9 || !(keel.At(lines.WidestU) < d.Draft))
        {
            return new FormFault(
                "no keel without a hollow has its lowest point there and rises to these heights",
                d.KeelLow is null ? [Dial.BowRocker, Dial.SternRocker] : [Dial.KeelLow, Dial.BowRocker, Dial.SternRocker]);
        }

        // Sections cross the profile where x runs aft with u; the ruled x folds when both ends reach past each other.
        foreach (var v in Enumerable.Range(0, 21).Select(k => k / 20.0))
        {
            foreach (var u in Enumerable.Range(0, 33).Select(k => k / 32.0))
            {
                if (!(AlongX(lines, u, v) > 0.05 * d.Length))
                    return new FormFault("stem and stern leave no length of keel between them", [Dial.Forefoot, Dial.Heel]);
            }
        }

        if (lines.ForeIsRaised && d.Bow.EntryAngle is not null)
            return new FormFault("with the keel so near the water the design waterline ends at an angle of its own", [Dial.BowRocker, Dial.EntryAngle]);
        if (lines.AftIsRaised && d.Stern is PointedStern { RunAngle: not null })
            return new FormFault("with the keel so near the water the design waterline ends at an angle of its own", [Dial.SternRocker, Dial.RunAngle]);
        if (lines.Bow.Hollow > Straight)
            return new FormFault("no stem without a hollow leaves the keel fair and comes to the sheer like that", [Dial.Forefoot, Dial.BowSheer, Dial.BowRocker]);
        if (lines.Stern.Hollow <= Straight)
            return null;
        return d.Stern is PointedStern
            ? new FormFault("no sternpost without a hollow leaves the keel fair and comes to the sheer like that", [Dial.Heel, Dial.SternSheer, Dial.SternRocker])
            : new FormFault("no transom without a hollow takes the waterline's end and this breadth", [FootOf(d), Dial.TransomBreadth, Dial.RunFullness]);
    }

    private static FormFault? WaterlineFault(CharacterLines lines)
    {
        var line = lines.Waterline;
        if (line.Hollow <= Straight / 2 && line.Contradiction <= 1e-9)
            return null;
        var fore = line.HollowU < lines.WidestU;
        List<Dial> dials = fore ? [Dial.EntryFullness] : [Dial.RunFullness];
        if (fore && lines.Dials.Bow.EntryAngle is not null)
            dials.Add(Dial.EntryAngle);
        if (!fore && lines.Dials.Stern is PointedStern { RunAngle: not null })
            dials.Add(Dial.RunAngle);
        if (lines.Dials.Stern is TransomStern && !fore)
            dials.AddRange([FootOf(lines.Dials), Dial.TransomBreadth]);
        if (lines.Dials.Widest is not null)
            dials.Add(Dial.Widest);
        if (!fore || lines.Dials.Bow.EntryAngle is null)
            dials.Add(fore ? Dial.RunFullness : Dial.EntryFullness);
        return new FormFault(
            fore ? "no design waterline without a hollow has this entry" : "no design waterline without a hollow has this run", dials);
    }

    private static FormFault? SheerFault(CharacterLines lines)
    {
        var d = lines.Dials;
        if (lines.SheerProfile.Hollow > Straight)
            return new FormFault("no sheer without a hollow passes these three heights", [Dial.Depth, Dial.BowSheer, Dial.SternSheer]);
        var plan = lines.SheerPlan;
        if (plan.Hollow <= Straight && plan.Short <= 1e-3)
            return null;
        List<Dial> dials = [];
        if (d.Bow.SheerFullness is not null)
            dials.Add(Dial.BowSheerFullness);
        if (d.Stern.SheerFullness is not null)
            dials.Add(Dial.SternSheerFullness);
        dials.AddRange([Dial.EntryFullness, Dial.RunFullness]);
        return new FormFault(
            plan.Short > 1e-3 ? "the sheer in plan would fall inside the design waterline" : "no sheer in plan without a hollow has this fullness", dials);
    }

    internal static FormFault VeeFault(HullDials d) => new(
        "the section cannot stand at this angle on the keel there: a steeper profile and a finer waterline make a steeper vee, flatter and fuller ones a flatter",
        [.. d.Bow.Vee is not null ? (Dial[])[Dial.BowVee] : [], .. d.Stern is PointedStern { Vee: not null } ? (Dial[])[Dial.SternVee] : [], .. d.Hollow ? (Dial[])[] : [Dial.Hollow], d.Bow.Vee is not null ? Dial.Forefoot : Dial.Heel]);

    /// <summary>The dials with a say over an end, the unusual first: hollow lines where they are not asked for, then what was optional.</summary>
    internal static List<Dial> EndDials(CharacterLines lines, double u)
    {
        var d = lines.Dials;
        List<Dial> dials = d.Hollow ? [] : [Dial.Hollow];
        if (u < lines.WidestU)
        {
            if (d.Bow.Vee is not null)
                dials.Add(Dial.BowVee);
            if (d.Bow.EntryAngle is not null)
                dials.Add(Dial.EntryAngle);
            if (d.Bow.SheerFullness is not null)
                dials.Add(Dial.BowSheerFullness);
            dials.AddRange([Dial.EntryFullness, Dial.BowRocker, Dial.Forefoot]);
        }
        else
        {
            if (d.Stern is PointedStern { Vee: not null })
                dials.Add(Dial.SternVee);
            if (d.Stern.SheerFullness is not null)
                dials.Add(Dial.SternSheerFullness);
            dials.AddRange(d.Stern is TransomStern ? [Dial.RunFullness, Dial.TransomBreadth, FootOf(d)] : [Dial.RunFullness, Dial.SternRocker, Dial.Heel]);
        }

        dials.AddRange([Dial.Deadrise, Dial.MidshipFullness]);
        return dials;
    }

    /// <summary>The dial that gives the foot of the stern.</summary>
    private static Dial FootOf(HullDials d) => d.Stern is TransomStern { FootIsImmersion: true } ? Dial.TransomImmersion : Dial.SternRocker;

    private static double AlongX(CharacterLines lines, double u, double v)
    {
        var du = SplineRows.At(lines.U, u, 1);
        var at = SplineRows.At(lines.V, v, 0);
        var sum = 0.0;
        for (var a = 0; a < du.Count; a++)
        {
            for (var b = 0; b < at.Count; b++)
                sum += du.Values[a] * at.Values[b] * lines.X[(du.Indices[a] * lines.V.Count) + at.Indices[b]];
        }

        return sum;
    }
}
