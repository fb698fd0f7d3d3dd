using Lines.Hull.Fairness;
using Lines.Hull.Sections;

namespace Lines.Hull.Form;

/// <summary>What makes a finished skin no hull of its dials: folds, a side past the beam, a vee that is none, hollows.</summary>
internal static class SkinFaults
{
    /// <summary>Half-breadth over half the beam that is rounding [m].</summary>
    private const double ExactBeam = 4e-6;

    /// <summary>The same with tumblehome, whose greatest breadth is found between the poles [m].</summary>
    private const double TumblehomeBeam = 1.4e-5;

    /// <summary>How much flatter than its vee a section may turn close to the keel [rad].</summary>
    private const double VeeTurn = 2 * Math.PI / 180;

    /// <summary>Heights must rise all the way up every section, no half-breadth be negative, and the widest section be the widest.</summary>
    /// <returns>The first fold, from the bow; the first swell, as far as there is no fold.</returns>
    public static (FormFault? Fold, FormFault? Swell) FoldOrSwell(CharacterLines lines, HullSurface surface)
    {
        var most = (lines.Dials.Beam / 2) + (lines.Dials.Midship.Flare < 0 ? TumblehomeBeam : ExactBeam);
        FormFault? swell = null;
        for (var i = 0; i <= 96; i++)
        {
            for (var j = 0; j <= 64; j++)
            {
                double u = i / 96.0, v = j / 64.0;
                var jet = surface.Side.JetAt(u, v);
                var isInside = i is > 0 and < 96 && j is > 0 and < 64;
                if (isInside && ((jet.U.X * jet.V.Z) - (jet.V.X * jet.U.Z) <= 0 || jet.Point.Y < -1e-9))
                    return (new FormFault(Invariant($"the skin folds near x = {jet.Point.X:F2} m"), HullAttempt.EndDials(lines, u)), null);
                if (jet.Point.Y > most)
                    swell ??= new FormFault(Invariant($"the side would swell past the beam near x = {jet.Point.X:F2} m"), HullAttempt.EndDials(lines, u));
            }
        }

        return (null, swell);
    }

    /// <summary>A vee that only a sliver of the section has, with flatter floors outside it, is none.</summary>
    public static FormFault? FlatVee(CharacterLines lines, HullSurface surface)
    {
        if (lines.Dials.Hollow)
            return null;
        foreach (var (x, vee) in HullShape.Vees(lines))
        {
            var u = CharacterLines.ParameterAt(lines.U, lines.Keel.Abscissa, x);
            for (var k = 1; k <= 20; k++)
            {
                var jet = surface.Side.JetAt(u, 0.1 * k / 20);
                var rise = jet.V.Z - (jet.U.Z * jet.V.X / jet.U.X);
                var spread = jet.V.Y - (jet.U.Y * jet.V.X / jet.U.X);
                if (Math.Atan2(rise, spread) < vee - VeeTurn)
                    return HullAttempt.VeeFault(lines.Dials);
            }
        }

        return null;
    }

    /// <summary>Without hollow lines asked for, no waterline, diagonal or section is hollow by more than a builder would take for fair.</summary>
    public static FormFault? Hollow(CharacterLines lines, HullSurface surface)
    {
        var d = lines.Dials;
        var top = Math.Min(d.Depth, Math.Min(d.Bow.Sheer, d.Stern.Sheer));
        double[] heights =
        [
            .. Enumerable.Range(1, 9).Select(k => d.Draft * k / 10), d.Draft, .. Enumerable.Range(1, 7).Select(k => d.Draft + ((top - d.Draft) * k / 8)),
        ];
        var cut = heights.SelectMany(z => Cut.Waterline(surface, z))
            .Concat(Enumerable.Range(1, 31).SelectMany(k => Cut.Station(surface, d.Length * k / 32)))
            .Concat([Cut.Sheer(surface), Cut.Stern(surface)])
            .Concat(DiagonalMark.Across(surface).SelectMany(m => Cut.Diagonal(surface, m.Height, m.Angle)));
        foreach (var line in cut)
        {
            var intention = Intention.Of(line, surface);
            var trace = LineTrace.Of(line, intention.Axes, intention.OutwardSign);
            foreach (var hollow in Hollows.In(trace, intention.HollowLimit))
            {
                var at = line.At(hollow.Place);
                if (!intention.Asks(at.Point))
                    return new FormFault(Invariant($"{NameOf(line, surface)} would be hollow by {Limits.Millimeters(hollow.Depth, intention.HollowLimit)} mm (allowed {intention.HollowLimit * 1000:F2})"), HullAttempt.EndDials(lines, at.U));
            }
        }

        return null;
    }

    private static string NameOf(HullLine line, HullSurface surface) => line.Kind switch
    {
        LineKind.Waterline => Invariant($"the waterline {line.Position * 1000:F0} mm above the base line"),
        LineKind.Station => Invariant($"the section {line.Position * 1000:F0} mm aft of the foremost point"),
        LineKind.Sheer => "the sheer in plan",
        LineKind.Stern => surface.Transom is null ? "the sternpost" : "the transom",
        _ => "a diagonal",
    };
}
