using Lines.Hull.Fairness;

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

    /// <summary>Part of its limit from which a hollow is worth watching.</summary>
    private const double NearHollow = 0.5;

    /// <summary>Heights must rise all the way up every section, and no half-breadth be negative.</summary>
    public static FormFault? Fold(CharacterLines lines, HullSurface surface)
    {
        for (var i = 1; i < 96; i++)
        {
            for (var j = 1; j < 64; j++)
            {
                var jet = surface.Side.JetAt(i / 96.0, j / 64.0);
                if ((jet.U.X * jet.V.Z) - (jet.V.X * jet.U.Z) <= 0 || jet.Point.Y < -1e-9)
                    return new FormFault(Invariant($"the skin folds near x = {jet.Point.X:F2} m"), HullAttempt.EndDials(lines, i / 96.0));
            }
        }

        return null;
    }

    /// <summary>The widest section is the widest.</summary>
    public static FormFault? Swell(CharacterLines lines, HullSurface surface)
    {
        var most = (lines.Dials.Beam / 2) + (lines.Dials.Midship.Flare < 0 ? TumblehomeBeam : ExactBeam);
        for (var i = 0; i <= 96; i++)
        {
            for (var j = 0; j <= 64; j++)
            {
                var point = surface.Side.PointAt(i / 96.0, j / 64.0);
                if (point.Y > most)
                    return new FormFault(Invariant($"the side would swell past the beam near x = {point.X:F2} m"), HullAttempt.EndDials(lines, i / 96.0));
            }
        }

        return null;
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
                if (VeeMeasure.Standing(surface, u, 0.1 * k / 20) < vee - VeeTurn)
                    return HullAttempt.VeeFault(lines.Dials);
            }
        }

        return null;
    }

    /// <summary>The hollows nobody asked for that come near to what a builder would take for fair, or are deeper.</summary>
    public static List<UnaskedHollow> Hollows(HullSurface surface) => [.. UnaskedHollows.Of(surface).Where(h => h.Part > NearHollow)];

    /// <summary>The deepest of them against its limit, where a hull is refused for it.</summary>
    public static FormFault? TooHollow(CharacterLines lines, IEnumerable<UnaskedHollow> hollows) =>
        hollows.Where(h => h.ExcludesHull && h.Part > 1).MaxBy(h => h.Part) is { } h
            ? new FormFault(Invariant($"{h.Subject} would be hollow by {Limits.Millimeters(h.Hollow.Depth, h.Limit)} mm (allowed {h.Limit * 1000:F2})"), HullAttempt.EndDials(lines, h.Line.At(h.Hollow.Place).U))
            : null;
}
