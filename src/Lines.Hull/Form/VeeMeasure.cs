namespace Lines.Hull.Form;

/// <summary>How steeply the sections of a finished hull stand.</summary>
public static class VeeMeasure
{
    /// <summary>Angle from level at which a section stands at a place of the skin [rad].</summary>
    /// <param name="surface">The hull.</param>
    /// <param name="u">Parameter along the hull.</param>
    /// <param name="v">Parameter up the section.</param>
    public static double Standing(HullSurface surface, double u, double v)
    {
        ArgumentNullException.ThrowIfNull(surface);
        var jet = surface.Side.JetAt(u, v);
        return Math.Atan2(jet.V.Z - (jet.U.Z * jet.V.X / jet.U.X), jet.V.Y - (jet.U.Y * jet.V.X / jet.U.X));
    }

    /// <summary>Angle of the section on the keel where the vee of an end is taken [rad].</summary>
    /// <param name="surface">The hull; with a pointed stern for the vee aft.</param>
    /// <param name="bow">Whether forward.</param>
    public static double At(HullSurface surface, bool bow)
    {
        ArgumentNullException.ThrowIfNull(surface);
        var side = surface.Side;
        double[] keel = [.. Enumerable.Range(0, side.U.Count).Select(i => side.PoleAt(i, 0).X)];
        return Standing(surface, CharacterLines.ParameterAt(side.U, keel, PlaceOf(surface.Dials, (surface.WaterlineFore, surface.WaterlineAft), bow)), 0);
    }

    /// <summary>Where along the keel the vee of an end is taken [m]: a twentieth of the waterline from the foot of the stem.</summary>
    internal static double PlaceOf(HullDials d, (double Fore, double Aft) waterline, bool bow)
    {
        var inside = 0.05 * (waterline.Aft - waterline.Fore);
        return bow ? d.Bow.Forefoot + inside : d.Length - ((PointedStern)d.Stern).Heel - inside;
    }
}
