using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>The planking's angle over one place of an edge, and what shrinking the flat outline would get wrong there.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame, starboard side.</para>
/// <para><b>Method.</b> sin β = n · m, n the skin's unit normal, m that of the plane the edge is drawn in. Planking is measured square to the skin, so in
/// that plane it takes t / cos β of a flat skin; the hull's own outline there, shrunk by t alone, stands proud by the difference.</para>
/// <para><b>Accuracy.</b> Bevels to rounding. The difference is the distance from the edge to the hull's outline in the plane less t, to 1e-9 m.</para>
/// </remarks>
/// <param name="Name">What the place is called: SHEER, BILGE, KEEL, FOOT, a waterline's label or a mold's name.</param>
/// <param name="At">The place on the edge [m].</param>
/// <param name="Angle">β, from square [rad]: of a station mold never negative, of a profile mold 90° less what lies between planking and the mold's side, of a
/// transom positive where the fore face is the larger.</param>
/// <param name="FlatError">How far an outline shrunk flat would stand proud [m]; null where the hull has no outline near.</param>
public sealed record EdgeBevel(string Name, Point3 At, double Angle, double? FlatError)
{
    private const int MostSteps = 60;
    private const double Settled = 1e-9;

    /// <summary>Angle between planking and the side of a profile mold, in the plane square to its edge [rad].</summary>
    public double FromSide => (Math.PI / 2) - Angle;

    /// <summary>The bevel at a parameter of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="s">The parameter.</param>
    /// <param name="name">What the place is called.</param>
    internal static EdgeBevel On(InsetSection section, double s, string name)
    {
        var p = section.At(s);
        return new EdgeBevel(name, p.Point, Signed(section, p), Outside(section, p) is { } distance ? distance - section.Skin.Thickness : null);
    }

    /// <summary>The angle from square at a point of a section [rad], its sign that of n · m.</summary>
    internal static double Signed(InsetSection section, SectionPoint p) => Math.Asin(Math.Clamp(p.Normal.Dot(section.Plane.Normal), -1, 1));

    // Distance of the edge from the hull's own outline in the plane: Newton in (u, v) on the outside in the plane, and square to that outline's tangent from the edge.
    private static double? Outside(InsetSection section, SectionPoint edge)
    {
        Vector3 m = section.Plane.Normal;
        double u = edge.U, v = edge.V;
        for (var i = 0; i < MostSteps; i++)
        {
            var p = section.Skin.At(u, v);
            Vector3 along = p.Normal.Cross(m).Unit();
            double f = section.Plane.DistanceTo(p.Outside.Point), g = (p.Outside.Point - edge.Point).Dot(along);
            if (Math.Abs(f) + Math.Abs(g) < Settled)
                return p.Outside.Point.DistanceTo(edge.Point);
            double a = p.Outside.U.Dot(m), b = p.Outside.V.Dot(m), c = p.Outside.U.Dot(along), d = p.Outside.V.Dot(along), det = (a * d) - (b * c);
            (u, v) = (u - (((f * d) - (g * b)) / det), v - (((a * g) - (c * f)) / det));
            if (!(Math.Abs(u) < 2 && Math.Abs(v) < 2))
                return null;
        }

        return null;
    }
}

/// <summary>The planking's angles along an edge.</summary>
/// <param name="Places">The places told, from the sheer down.</param>
/// <param name="Flattest">Where an outline shrunk flat would stand proud the most.</param>
public sealed record EdgeBevels(IReadOnlyList<EdgeBevel> Places, EdgeBevel Flattest)
{
    private const int Steps = 128;

    /// <summary>Those of an edge across the boat: at the sheer, at the bilge, where it runs at 45 degrees or nearest to it, and at its lower end.</summary>
    /// <param name="section">The section.</param>
    /// <param name="from">Parameter of the sheer mark.</param>
    /// <param name="to">Parameter of the edge's lower end.</param>
    internal static EdgeBevels Across(InsetSection section, double from, double to)
    {
        var even = Even(section, from, to);
        return Of(section, even, [("SHEER", from), ("BILGE", even.MinBy(e => Math.Abs(Math.Abs(e.Normal.Y) - Math.Abs(e.Normal.Z))).At), ("KEEL", to)]);
    }

    /// <summary>Those of any edge at named places.</summary>
    /// <param name="section">The section.</param>
    /// <param name="from">Parameter of its upper end.</param>
    /// <param name="to">Parameter of its lower end.</param>
    /// <param name="places">Names and parameters of the places told.</param>
    internal static EdgeBevels Along(InsetSection section, double from, double to, IEnumerable<(string Name, double At)> places) =>
        Of(section, Even(section, from, to), places.OrderBy(p => p.At));

    /// <summary>The same without signs, for edges that are told from square either way.</summary>
    internal EdgeBevels Unsigned() => new([.. Places.Select(p => p with { Angle = Math.Abs(p.Angle) })], Flattest with { Angle = Math.Abs(Flattest.Angle) });

    private static EdgeBevels Of(InsetSection section, List<(double At, Vector3 Normal)> even, IEnumerable<(string Name, double At)> places) => new(
        [.. places.Select(p => EdgeBevel.On(section, p.At, p.Name))],
        EdgeBevel.On(section, even.MaxBy(e => Math.Abs(e.Normal.Dot(section.Plane.Normal))).At, ""));

    private static List<(double At, Vector3 Normal)> Even(InsetSection section, double from, double to) =>
        [.. Enumerable.Range(0, Steps + 1).Select(k => from + ((to - from) * k / Steps)).Select(s => (s, section.At(s).Normal))];
}
