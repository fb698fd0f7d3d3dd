using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Sections;

/// <content>Direction and curvature of the line, from exact derivatives of the skin.</content>
public sealed partial class HullLine
{
    /// <summary>Unit direction of the line at a place along it, toward its end.</summary>
    /// <param name="t">Place, 0 to 1.</param>
    public Vector3 DirectionAt(double t) => JetAt(t).First.Unit();

    /// <summary>Signed curvature of the line, seen in its own axes.</summary>
    /// <param name="t">Place, 0 to 1.</param>
    /// <returns>Curvature [1/m], see <see cref="CurvatureAt(double, FlatAxes)"/>.</returns>
    public double CurvatureAt(double t) => CurvatureAt(t, Axes);

    /// <summary>Signed curvature of the line, seen in given axes.</summary>
    /// <remarks>
    /// <para><b>Sign.</b> Positive where the line turns left while t grows; times <see cref="LineTag.OutwardSign"/> it is positive
    /// where the line bulges out of the boat, and a sign change is a hollow.</para>
    /// <para><b>Method.</b> κ = (C′ × C″) / |C′|³. On a cut, f(u, v) = n · S − d and the line runs along (f_v, −f_u); its second
    /// derivative follows from those of S by the chain rule.</para>
    /// <para><b>Accuracy.</b> Rounding only. Where the skin has no tangent plane (the corner at which the stem runs into the keel)
    /// the value just beside it is given.</para>
    /// </remarks>
    /// <param name="t">Place, 0 to 1.</param>
    /// <param name="axes">Axes in which the line is seen.</param>
    /// <returns>Curvature [1/m]; its reciprocal is the radius of the osculating circle.</returns>
    public double CurvatureAt(double t, FlatAxes axes)
    {
        var jet = JetAt(t);
        var first = axes.Flat(jet.First);
        var speed = first.Length;
        return first.Cross(axes.Flat(jet.Second)) / (speed * speed * speed);
    }

    /// <summary>Point with first and second derivative by a parameter of the line's own, which grows toward its end.</summary>
    /// <remarks>Speed has no meaning; direction and curvature have.</remarks>
    /// <param name="t">Place, 0 to 1.</param>
    public CurveJet JetAt(double t)
    {
        var p = At(t);
        var jet = Plane is { } plane ? CutJet(plane, p) : EdgeJet(p);
        for (var aside = 1e-9; !(jet.First.Length > Singular) && aside < 1e-2; aside *= 4)
        {
            p = At(p.T < 0.5 ? t + aside : t - aside);
            jet = Plane is { } cut ? CutJet(cut, p) : EdgeJet(p);
        }

        return jet;
    }

    /// <summary>Speed under which a direction is drowned in rounding.</summary>
    private const double Singular = 1e-7;

    private CurveJet CutJet(Plane plane, LinePoint p)
    {
        var s = _hull.Side.JetAt(p.U, p.V);
        var n = plane.Normal;
        double fu = n.Dot(s.U), fv = n.Dot(s.V), fuu = n.Dot(s.UU), fuv = n.Dot(s.UV), fvv = n.Dot(s.VV);
        double a = fv, b = -fu; // the line runs along (a, b)
        var (du, dv) = RunAt(p.T);
        var side = (a * du) + (b * dv) < 0 ? -1.0 : 1.0;
        (a, b) = (side * a, side * b);
        double aa = side * ((fuv * a) + (fvv * b)), bb = -side * ((fuu * a) + (fuv * b));
        var first = (a * s.U) + (b * s.V);
        var second = (a * a * s.UU) + (2 * a * b * s.UV) + (b * b * s.VV) + (aa * s.U) + (bb * s.V);
        return new CurveJet(s.Point, first, second);
    }

    private CurveJet EdgeJet(LinePoint p)
    {
        var s = _hull.Side.JetAt(p.U, p.V);
        var (du, dv) = RunAt(p.T);
        return du == 0
            ? new CurveJet(s.Point, Math.Sign(dv) * s.V, s.VV)
            : new CurveJet(s.Point, Math.Sign(du) * s.U, s.UU);
    }

    // The chord of the segment that holds a place, in parameters.
    private (double U, double V) RunAt(double t)
    {
        var k = SegmentAt(t);
        return (_nodes[k + 1].U - _nodes[k].U, _nodes[k + 1].V - _nodes[k].V);
    }
}
