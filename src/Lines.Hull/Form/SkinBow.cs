using Lines.Kernel.Numerics;

namespace Lines.Hull.Form;

/// <summary>The skin at a sample looked on as a half-breadth y over x and z.</summary>
internal sealed class SkinPoint
{
    public SkinPoint(Sample s, NetJet jet)
    {
        (At, Jet) = (s, jet);
        Delta = (s.Xu * jet.Zv) - (s.Xv * jet.Zu);
        P = ((jet.Yu * jet.Zv) - (jet.Yv * jet.Zu)) / Delta;
        Q = ((s.Xu * jet.Yv) - (s.Xv * jet.Yu)) / Delta;
        BendUU = jet.Yuu - (P * s.Xuu) - (Q * jet.Zuu);
        BendUV = jet.Yuv - (P * s.Xuv) - (Q * jet.Zuv);
        BendVV = jet.Yvv - (P * s.Xvv) - (Q * jet.Zvv);
    }

    public Sample At { get; }

    public NetJet Jet { get; }

    /// <summary>x_u z_v - x_v z_u; positive where heights rise up the section.</summary>
    public double Delta { get; }

    /// <summary>Slope dy/dx along a waterline.</summary>
    public double P { get; }

    /// <summary>Slope dy/dz up a section.</summary>
    public double Q { get; }

    /// <summary>y_uu without what x and z bend there.</summary>
    public double BendUU { get; }

    /// <summary>The same of y_uv.</summary>
    public double BendUV { get; }

    /// <summary>The same of y_vv.</summary>
    public double BendVV { get; }
}

/// <summary>The second derivative of y in one direction (dx, dz) at a sample: how much the skin bows inward there, if positive.</summary>
/// <param name="Point">Where.</param>
/// <param name="Dx">Step aft [m].</param>
/// <param name="Dz">Step up [m].</param>
/// <param name="A">The step in u.</param>
/// <param name="B">The step in v.</param>
/// <param name="Value">Second derivative times the step squared [m].</param>
/// <param name="Scale">Factor from it to a bow in meters.</param>
/// <param name="Weight">Stiffness of the bound.</param>
internal readonly record struct Bow(SkinPoint Point, double Dx, double Dz, double A, double B, double Value, double Scale, double Weight)
{
    /// <summary>How far the skin bows inward over the step [m]; negative where it bulges.</summary>
    public double Depth => Scale * Value;

    public static Bow Of(SkinPoint at, double dx, double dz, double scale, double weight)
    {
        var (s, j) = (at.At, at.Jet);
        double a = ((j.Zv * dx) - (s.Xv * dz)) / at.Delta, b = ((s.Xu * dz) - (j.Zu * dx)) / at.Delta;
        return new Bow(at, dx, dz, a, b, (at.BendUU * a * a) + (2 * at.BendUV * a * b) + (at.BendVV * b * b), scale, weight);
    }

    /// <summary>The bow linearized: a row over y and z of the net, in meters.</summary>
    /// <remarks>Through p, q, a and b, all quotients over delta = x_u z_v - x_v z_u.</remarks>
    public SparseRow Row(int zOffset)
    {
        var (s, j) = (Point.At, Point.Jet);
        double p = Point.P, q = Point.Q, a = A, b = B, id = 1 / Point.Delta, xu = s.Xu, xv = s.Xv;
        double xx = (s.Xuu * a * a) + (2 * s.Xuv * a * b) + (s.Xvv * b * b), zz = (j.Zuu * a * a) + (2 * j.Zuv * a * b) + (j.Zvv * b * b);
        double da = 2 * ((Point.BendUU * a) + (Point.BendUV * b)), db = 2 * ((Point.BendUV * a) + (Point.BendVV * b));
        double yu = (-xx * j.Zv * id) + (zz * xv * id), yv = (xx * j.Zu * id) - (zz * xu * id);
        double zu = (-xx * ((-j.Yv * id) + (p * xv * id))) - (zz * q * xv * id) + (da * a * xv * id) + (db * ((-Dx * id) + (b * xv * id)));
        double zv = (-xx * ((j.Yu * id) - (p * xu * id))) + (zz * q * xu * id) + (da * ((Dx * id) - (a * xu * id))) - (db * b * xu * id);
        return s.Row(
            zOffset,
            new Partials(Scale * yu, Scale * yv, Scale * a * a, 2 * Scale * a * b, Scale * b * b),
            new Partials(Scale * zu, Scale * zv, -q * Scale * a * a, -2 * q * Scale * a * b, -q * Scale * b * b));
    }
}
