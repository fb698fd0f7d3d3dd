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

    /// <summary>Without hollow lines asked for, no waterline, diagonal or section is hollow by more than a builder would take for fair.</summary>
    /// <returns>What comes near to that or is deeper, each with its place on the skin and whether it runs up a section.</returns>
    public static IEnumerable<UnaskedHollow> Hollow(CharacterLines lines, HullSurface surface)
    {
        var d = lines.Dials;
        var top = Math.Min(d.Depth, Math.Min(d.Bow.Sheer, d.Stern.Sheer));
        double[] heights =
        [
            .. Enumerable.Range(1, 9).Select(k => d.Draft * k / 10), d.Draft, .. Enumerable.Range(1, 7).Select(k => d.Draft + ((top - d.Draft) * k / 8)),
        ];
        var grid = LinesGrid.For(surface);
        var cut = heights.SelectMany(z => Cut.Waterline(surface, z))
            .Concat(Enumerable.Range(1, 31).Select(k => d.Length * k / 32).Concat(grid.Stations.Select(s => s.X)).SelectMany(x => Cut.Station(surface, x)))
            .Concat([Cut.Sheer(surface), Cut.Stern(surface)])
            .Concat(grid.Diagonals.SelectMany(m => Cut.Diagonal(surface, m.Height, m.Angle)))
            .Concat(grid.Buttocks.SelectMany(y => Cut.Buttock(surface, y)));
        foreach (var line in cut)
        {
            var intention = Intention.Of(line, surface);
            var trace = LineTrace.Of(line, intention.Axes, intention.OutwardSign);
            foreach (var hollow in Hollows.In(trace, NearHollow * intention.HollowLimit))
            {
                var at = line.At(hollow.Place);
                if (intention.Asks(at.Point))
                    continue;
                var fault = new FormFault(Invariant($"{NameOf(line, surface)} would be hollow by {Limits.Millimeters(hollow.Depth, intention.HollowLimit)} mm (allowed {intention.HollowLimit * 1000:F2})"), HullAttempt.EndDials(lines, at.U));
                yield return new UnaskedHollow(line.Kind == LineKind.Buttock ? null : fault, hollow.Depth / intention.HollowLimit, at.U, at.V, line.Kind is LineKind.Station or LineKind.Stern);
            }
        }
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

/// <summary>A hollow that was not asked for.</summary>
/// <param name="Fault">What it is, should it be too deep; null for a buttock, whose hollow is a matter of fairness.</param>
/// <param name="Part">Its depth as a part of what is allowed.</param>
/// <param name="U">Where on the skin it is deepest.</param>
/// <param name="V">The same.</param>
/// <param name="IsUpSection">Whether it runs up a section rather than lengthwise.</param>
internal readonly record struct UnaskedHollow(FormFault? Fault, double Part, double U, double V, bool IsUpSection);
