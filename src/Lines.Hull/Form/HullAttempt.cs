using Lines.Hull.Hydrostatics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>Why no hull came of a set of dials.</summary>
/// <param name="Reason">What is wrong, one clause.</param>
/// <param name="Dials">The dials that may be in conflict, the likeliest first.</param>
internal sealed record FormFault(string Reason, IReadOnlyList<Dial> Dials);

/// <summary>One try at a hull: the surface, or the first thing that its dials exclude.</summary>
/// <param name="Surface">The hull; null where there is a fault.</param>
/// <param name="Fault">What excludes it; null where there is a hull.</param>
internal sealed record HullAttempt(HullSurface? Surface, FormFault? Fault)
{
    /// <summary>Fullness is met when it is off by no more than this.</summary>
    private const double Settled = 5e-6;

    /// <summary>Skins tried for that; then half of what is promised is enough.</summary>
    private const int UsualSkins = 6;

    private const double SettledAtLast = 5e-5;

    /// <summary>Skins tried before the fullness of a waterline below a raised reference line is given up.</summary>
    private const int MostSkins = 12;

    /// <summary>A foot higher than this part of the sheer leaves no side.</summary>
    private const double HighestFoot = 0.9;

    /// <summary>Bow of a batten or section that counts as straight [m].</summary>
    private const double Straight = 5e-5;

    /// <summary>The same where only whether there is a hull is asked.</summary>
    private const double Roughly = 1e-3;

    /// <summary>Shapes lines and skin, checking each before the next is begun.</summary>
    /// <param name="d">The dials.</param>
    /// <param name="roughly">Whether fullnesses need only be near: enough to search for dials that build, faster where the keel leaves the water.</param>
    public static HullAttempt Make(HullDials d, bool roughly = false)
    {
        if ((SectionFault(d) ?? EndsFault(d)) is FormFault impossible)
            return new HullAttempt(null, impossible);
        var lines = CharacterLines.Shape(d);
        var fault = MidshipFault(lines) ?? ProfileFault(lines) ?? WaterlineFault(lines) ?? SheerFault(lines);
        if (fault is not null)
            return new HullAttempt(null, fault);
        var surface = HullShape.Skin(lines, null, out var skin);
        if (skin.Contradiction > 1e-7)
            return new HullAttempt(null, VeeFault(d));
        fault = Settle(ref lines, ref surface, roughly) ?? SkinFaults.FlatVee(lines, surface) ?? SkinFaults.Hollow(lines, surface);
        return fault is null ? new HullAttempt(surface, null) : new HullAttempt(null, fault);
    }

    /// <summary>Finds the skin sound, and asks of a raised reference line what gives the waterline cut from the skin its fullness.</summary>
    /// <remarks><b>Method.</b> The secant's step on each end's own fullness, every skin started from the one before.</remarks>
    private static FormFault? Settle(ref CharacterLines lines, ref HullSurface surface, bool roughly)
    {
        var d = lines.Dials;
        (double Entry, double Run) asked = lines.Fullness, before = default, was = default;
        for (var pass = 0; ; pass++)
        {
            var (fold, swell) = SkinFaults.FoldOrSwell(lines, surface);
            if (fold is not null)
                return fold;
            if (!lines.ForeIsRaised && !lines.AftIsRaised)
                return swell;
            var form = FormCoefficients.Of(surface);
            (double Entry, double Run) miss = (d.Bow.EntryFullness - form.Entry, d.Stern.RunFullness - form.Run);
            if (Math.Max(Math.Abs(miss.Entry), Math.Abs(miss.Run)) < (roughly ? Roughly : pass <= UsualSkins ? Settled : SettledAtLast))
                return swell;
            if (pass == MostSkins)
                return new FormFault(Invariant($"no fullness of the waterline settles with the keel so near the water; it is still {Math.Max(Math.Abs(miss.Entry), Math.Abs(miss.Run)):F4} off"), EndDials(lines, Math.Abs(miss.Entry) > Math.Abs(miss.Run) ? 0 : 1));
            var next = (asked.Entry + Step(miss.Entry, was.Entry, asked.Entry - before.Entry, pass), asked.Run + Step(miss.Run, was.Run, asked.Run - before.Run, pass));
            (before, was, asked) = (asked, miss, next);
            lines = lines.Refit(asked);
            if ((WaterlineFault(lines) ?? SheerFault(lines)) is FormFault fault)
                return fault;
            surface = HullShape.Skin(lines, surface, out _);
        }

        static double Step(double miss, double before, double moved, int pass)
        {
            // The answer to a step is between a third of it and thrice it; what lies outside is noise of the skin.
            var answer = pass == 0 || moved == 0 ? 1 : Math.Clamp((before - miss) / moved, 0.33, 3);
            return miss / answer;
        }
    }

    private static FormFault? SectionFault(HullDials d)
    {
        var bound = MidshipSection.GreatestFullness(d, 0);
        if (double.IsNaN(bound))
        {
            return new FormFault(
                "a section with this deadrise and flare cannot reach the sheer without a hollow", [Dial.Deadrise, Dial.Flare, Dial.Depth, Dial.Beam]);
        }

        return d.Midship.Fullness < bound
            ? null
            : new FormFault(
                Invariant($"a section with this deadrise and flare and no hollow is no fuller than {bound:F3}, the corner of its two tangents, and a fair one stays some way under it"),
                [Dial.MidshipFullness, Dial.Deadrise, Dial.Flare]);
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
        lines.Midship.Residual > 1e-8 || lines.Midship.Hollow > Straight
            ? new FormFault("no fair section has this fullness with this deadrise and flare", [Dial.MidshipFullness, Dial.Deadrise, Dial.Flare])
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
            return new FormFault("no stem without a hollow leaves the keel fair and stands plumb at the sheer", [Dial.Forefoot, Dial.BowSheer, Dial.BowRocker]);
        if (lines.Stern.Hollow <= Straight)
            return null;
        return d.Stern is PointedStern
            ? new FormFault("no sternpost without a hollow leaves the keel fair and stands plumb at the sheer", [Dial.Heel, Dial.SternSheer, Dial.SternRocker])
            : new FormFault("no transom without a hollow takes the waterline's end and this breadth", [FootOf(d), Dial.TransomBreadth, Dial.RunFullness]);
    }

    private static FormFault? WaterlineFault(CharacterLines lines)
    {
        var line = lines.Waterline;
        if (line.Hollow <= Straight / 2 && line.Short <= Straight && line.Contradiction <= 1e-9)
            return null;
        var fore = line.Short <= Straight && line.HollowU < lines.WidestU;
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
        [.. d.Hollow ? (Dial[])[] : [Dial.Hollow], .. d.Bow.Vee is not null ? (Dial[])[Dial.BowVee, Dial.Forefoot] : [Dial.SternVee, Dial.Heel]]);

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
