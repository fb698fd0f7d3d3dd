using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>Shapes a hull from its dials.</summary>
/// <remarks>
/// <para><b>Method.</b> Character lines as constrained least-energy battens, then the least-energy bicubic B-spline that contains
/// them. The hull is a function of the dials alone: every solve starts cold.</para>
/// <para><b>Accuracy.</b> Length, beam, depth, draft, sheer heights and rocker to 0.01 mm; entry, run and midship fullness to 1e-4,
/// measured on the finished surface.</para>
/// </remarks>
public static class HullShape
{
    /// <summary>Shapes the hull, or names the dials that exclude each other with the nearest values that do not.</summary>
    /// <param name="dials">What is asked.</param>
    /// <param name="told">How nearest values are told; null rounds to a thousandth, a millimeter, a tenth of a degree.</param>
    public static HullSolution Solve(HullDials dials, ToldValue? told = null)
    {
        ArgumentNullException.ThrowIfNull(dials);
        var attempt = HullAttempt.Make(dials);
        return attempt.Fault is null
            ? new HullSolution(attempt.Surface, [])
            : new HullSolution(null, [new NearestDials(dials, told ?? DialAccess.ToStep).Explain(attempt.Fault)]);
    }

    /// <summary>Shapes the main hull of a vessel: first finds the dials left out for targets, where there are any.</summary>
    /// <param name="vessel">What is asked.</param>
    /// <param name="told">How nearest values of dials are told.</param>
    /// <param name="toldTarget">How nearest values of targets are told.</param>
    public static HullSolution Solve(Vessel vessel, ToldValue told, ToldTarget toldTarget)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return vessel.Targets.Asked.Count == 0 ? Solve(vessel.MainHull, told) : new NearestTargets(vessel.MainHull, vessel.Targets, told, toldTarget).Solve();
    }

    /// <summary>Shapes the main hull of a vessel without looking for nearest values where that fails: for many hulls of which some will not be.</summary>
    /// <param name="vessel">What is asked; targets are met as ever, and told as ever where they cannot be.</param>
    /// <param name="told">How nearest values of dials are told.</param>
    /// <param name="toldTarget">How nearest values of targets are told.</param>
    public static HullSolution Try(Vessel vessel, ToldValue told, ToldTarget toldTarget)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        if (vessel.Targets.Asked.Count > 0)
            return Solve(vessel, told, toldTarget);
        var attempt = HullAttempt.Make(vessel.MainHull);
        return new HullSolution(attempt.Surface, attempt.Fault is { } fault ? [new DialConflict(fault.Reason, [.. fault.Dials.Select(d => new DialHint(d, null))])] : []);
    }

    /// <summary>A hull of nearly the dials of one already shaped, in a fourth of the time: for a picture while a dial moves.</summary>
    /// <remarks><b>Accuracy.</b> Length, beam, depth, draft, sheer heights and rocker as ever; the rest of the skin, with the fullness of a waterline that
    /// ends on the keel, is not brought all the way, and no fault of it is looked for. <see cref="Solve(HullDials, ToldValue?)"/> is the hull.</remarks>
    /// <param name="dials">What is asked.</param>
    /// <param name="near">The hull it is near to: where no widest station is asked for, it keeps that hull's.</param>
    public static HullSurface Preview(HullDials dials, HullSurface near)
    {
        ArgumentNullException.ThrowIfNull(dials);
        ArgumentNullException.ThrowIfNull(near);
        var lines = CharacterLines.ShapeNear(dials, near);
        using var skin = Program(lines);
        return With(skin.SolveFrom(near.Side), lines);
    }

    /// <summary>The hull of a skin through given lines.</summary>
    internal static HullSurface With(BSplineSurface side, CharacterLines lines) =>
        new(side, lines.Dials, lines.WidestU, lines.WaterlineV) { OnBase = lines.OnBase };

    /// <summary>What the surface through given lines solves.</summary>
    internal static SkinProgram Program(CharacterLines lines)
    {
        SplineBasis u = lines.U, v = lines.V;
        int nu = u.Count, nv = v.Count;
        double um = lines.WidestU, vw = lines.WaterlineV;
        var d = lines.Dials;
        var skin = new SkinProgram(u, v, lines.X, new SkinScale(d.Length, (a, b) => LeastRise(lines, a, b), d.Stern is TransomStern), !d.Hollow);

        // The edge of a transom keeps its heights and ends and finds its own breadths between, unless tumblehome puts its greatest there.
        var free = d.Stern is TransomStern && d.Midship.Flare >= 0;
        for (var j = 0; j < nv; j++)
        {
            skin.Fix(0, j, 0, lines.Bow.Z[j]);
            skin.Fix(nu - 1, j, free && j > 0 && j < nv - 1 ? null : lines.Stern.Y[j], lines.Stern.Z[j]);
        }

        var onWaterline = SplineRows.At(v, vw, 0);
        if (free)
        {
            skin.AlongV(onWaterline, nu - 1, height: false, lines.Waterline.Ordinate[^1]);
            skin.LooseTransom(lines.Stern.Y);
        }

        var onSheer = SplineRows.At(v, 1, 0);
        skin.Loose(onSheer, lines.SheerPlan, SheerKept(lines), SkinStiffness.Sheer, d.Hollow ? (SkinBounds.HollowLines, 1 - SkinBounds.HollowLines) : (0, 1));
        skin.Loose(onWaterline, lines.Waterline, WaterlineKept(lines), SkinStiffness.Waterline, d.Hollow ? null : CharacterLines.OneSided(d, um));
        if (!lines.ForeIsRaised)
            skin.Lean(SplineRows.At(u, 0, 1), onWaterline, lines.Waterline);
        if (!lines.AftIsRaised)
            skin.Lean(SplineRows.At(u, 1, 1), onWaterline, lines.Waterline);
        if (d.Midship.Flare >= 0)
            skin.KeepOutside(onSheer, onWaterline);
        skin.KeepWithin(d.Beam / 2, um);
        for (var i = 1; i < nu - 1; i++)
        {
            skin.Fix(i, 0, 0, lines.Keel.Ordinate[i]);
            skin.Fix(i, nv - 1, null, lines.SheerProfile.Ordinate[i]);
            skin.AlongV(onWaterline, i, height: true, lines.ReferenceHeight(i));
        }

        var value = SplineRows.At(u, um, 0);
        var slope = SplineRows.At(u, um, 1);
        for (var j = 1; j < nv - 1; j++)
        {
            skin.AlongU(value, j, height: false, lines.Midship.Y[j]);
            skin.AlongU(value, j, height: true, lines.Midship.Z[j]);
            skin.AlongU(slope, j, height: false, 0);

            // Heights run level through the section, but above the waterline they follow the sheer's slope, below a keel that
            // is lowest elsewhere the keel's; poles that touch the design waterline stay level with it.
            if (j >= onWaterline.Indices[0] + 3)
                skin.AlongU(slope, j, height: true, 0.5 * lines.SheerProfile.At(um, 1));
            else if (d.KeelLow is null || j >= onWaterline.Indices[0])
                skin.AlongU(slope, j, height: true, 0);
        }

        if (lines.ForeIsRaised)
            skin.Enclose(lines.EntryArea(), d.Bow.EntryFullness);
        if (lines.AftIsRaised)
            skin.Enclose(lines.RunArea(), d.Stern.RunFullness);
        foreach (var (x, vee) in Vees(lines))
            AddVee(skin, lines, x, vee);
        return skin;
    }

    /// <summary>What the sheer in plan keeps of its batten: breadth and direction at the widest station, and areas that are dials.</summary>
    private static IEnumerable<SparseRow> SheerKept(CharacterLines lines)
    {
        var x = lines.SheerPlan.Abscissa;
        yield return SplineRows.At(lines.U, lines.WidestU, 0);
        yield return SplineRows.At(lines.U, lines.WidestU, 1);
        if (lines.Dials.Bow.SheerFullness is not null)
            yield return Batten.AreaRow(lines.U, x, 0, lines.WidestU);
        if (lines.Dials.Stern.SheerFullness is not null)
            yield return Batten.AreaRow(lines.U, x, lines.WidestU, 1);
    }

    /// <summary>What the design waterline keeps of its batten: both areas, and end angles that are dials.</summary>
    private static IEnumerable<SparseRow> WaterlineKept(CharacterLines lines)
    {
        var x = lines.Waterline.Abscissa;
        if (!lines.ForeIsRaised)
            yield return Batten.AreaRow(lines.U, x, 0, lines.WidestU);
        if (!lines.AftIsRaised)
            yield return Batten.AreaRow(lines.U, x, lines.WidestU, 1);
        if (lines.Dials.Bow.EntryAngle is not null)
            yield return SplineRows.At(lines.U, 0, 1);
        if (lines.Dials.Stern is PointedStern { RunAngle: not null })
            yield return SplineRows.At(lines.U, 1, 1);
    }

    /// <summary>Where along the keel a vee is asked for, and its angle.</summary>
    internal static IEnumerable<(double X, double Angle)> Vees(CharacterLines lines)
    {
        var d = lines.Dials;
        if (d.Bow.Vee is double vee)
            yield return (VeeMeasure.PlaceOf(d, lines.WaterlineEnds(), bow: true), vee);
        if (d.Stern is PointedStern { Vee: double run })
            yield return (VeeMeasure.PlaceOf(d, lines.WaterlineEnds(), bow: false), run);
    }

    private static void AddVee(SkinProgram skin, CharacterLines lines, double x, double angle)
    {
        var u = CharacterLines.ParameterAt(lines.U, lines.Keel.Abscissa, x);
        skin.KeelAngle(u, angle, lines.Keel.At(u, 1), LeastSpread(lines, u));
    }

    /// <summary>A part of the spread that the midship section has at the keel, by the breadth of the design waterline here.</summary>
    private static double LeastSpread(CharacterLines lines, double u) =>
        0.2 * SplineRows.Value(lines.V, 0, 1, lines.Midship.Y) * lines.Waterline.At(u) / lines.Midship.WaterlineHalfBreadth;

    /// <summary>A tenth of the rise that the midship section and the ends have at this height, so that no height folds back.</summary>
    private static double LeastRise(CharacterLines lines, double u, double v)
    {
        if (v <= 0)
            return 0;
        var rise = SplineRows.At(lines.V, v, 1);
        double mid = rise.Dot(lines.Midship.Z), end = rise.Dot(u < lines.WidestU ? lines.Bow.Z : lines.Stern.Z);
        var t = u < lines.WidestU ? u / lines.WidestU : (1 - u) / (1 - lines.WidestU);
        return 0.1 * Math.Max(0, Math.Min(mid, (t * mid) + ((1 - t) * end)));
    }
}
