using Lines.Kernel.Numerics;

namespace Lines.Hull.Form;

/// <summary>The skin at a sample looked on as a half-breadth y over x and z.</summary>
internal readonly struct SkinPoint
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
/// <param name="At">Where.</param>
/// <param name="Step">The direction, and how deep a bow over it counts.</param>
/// <param name="A">The step in u.</param>
/// <param name="B">The step in v.</param>
/// <param name="Value">Second derivative times the step squared [m].</param>
/// <param name="Weight">Stiffness of the bound.</param>
internal readonly record struct Bow(Sample At, BowStep Step, double A, double B, double Value, double Weight)
{
    /// <summary>How far the skin bows inward over the step [m]; negative where it bulges.</summary>
    public double Depth => Step.Scale * Value;

    public static Bow Of(in SkinPoint at, in BowStep step, double weight)
    {
        var (s, j) = (at.At, at.Jet);
        double a = ((j.Zv * step.Dx) - (s.Xv * step.Dz)) / at.Delta, b = ((s.Xu * step.Dz) - (j.Zu * step.Dx)) / at.Delta;
        return new Bow(s, step, a, b, (at.BendUU * a * a) + (2 * at.BendUV * a * b) + (at.BendVV * b * b), weight);
    }

    /// <summary>The bow linearized: a row over y and z of the net, in meters.</summary>
    /// <remarks>Through p, q, a and b, all quotients over delta = x_u z_v - x_v z_u, and through the step, which turns with them.</remarks>
    /// <param name="net">The net it was taken of.</param>
    /// <param name="zOffset">Where the heights begin in it.</param>
    /// <param name="values">Room for the row's coefficients.</param>
    public SparseRow Row(double[] net, int zOffset, double[] values)
    {
        var s = At;
        var at = new SkinPoint(s, s.JetOf(net, zOffset));
        var j = at.Jet;
        double p = at.P, q = at.Q, a = A, b = B, id = 1 / at.Delta, xu = s.Xu, xv = s.Xv, scale = Step.Scale;
        double xx = (s.Xuu * a * a) + (2 * s.Xuv * a * b) + (s.Xvv * b * b), zz = (j.Zuu * a * a) + (2 * j.Zuv * a * b) + (j.Zvv * b * b);
        double da = 2 * ((at.BendUU * a) + (at.BendUV * b)), db = 2 * ((at.BendUV * a) + (at.BendVV * b));
        double dx = scale * ((da * j.Zv) - (db * j.Zu)) * id, dz = scale * ((db * xu) - (da * xv)) * id;
        double toP = (-scale * xx) + (dz * Step.DzByP) + (Value * Step.ScaleByP), toQ = (-scale * zz) + (dz * Step.DzByQ) + (Value * Step.ScaleByQ);
        double toA = scale * da * id, toB = scale * db * id, toDelta = (dz * Step.DzByDelta) + (dx * Step.DxByDelta) - (toA * a) - (toB * b) - (((toP * p) + (toQ * q)) * id);
        return s.Row(
            zOffset,
            new Partials(((toP * j.Zv) - (toQ * xv)) * id, ((toQ * xu) - (toP * j.Zu)) * id, scale * a * a, 2 * scale * a * b, scale * b * b),
            new Partials(
                -(toP * j.Yv * id) - (toB * Step.Dx) - (toDelta * xv),
                (toP * j.Yu * id) + (toA * Step.Dx) + (toDelta * xu) + (dx * Step.DxByZv),
                -q * scale * a * a,
                -2 * q * scale * a * b,
                -q * scale * b * b),
            values);
    }
}

/// <summary>A direction in which a bow is taken, and how it turns with the skin.</summary>
/// <param name="Dx">Step aft [m].</param>
/// <param name="Dz">Step up [m].</param>
/// <param name="Scale">Factor from the second derivative times the step squared to a bow.</param>
internal readonly record struct BowStep(double Dx, double Dz, double Scale)
{
    /// <summary>Derivative of <see cref="Dz"/> by the slope p.</summary>
    public double DzByP { get; init; }

    /// <summary>The same by the slope q.</summary>
    public double DzByQ { get; init; }

    /// <summary>The same by delta.</summary>
    public double DzByDelta { get; init; }

    /// <summary>Derivative of <see cref="Dx"/> by delta.</summary>
    public double DxByDelta { get; init; }

    /// <summary>The same by z_v.</summary>
    public double DxByZv { get; init; }

    /// <summary>Derivative of <see cref="Scale"/> by p.</summary>
    public double ScaleByP { get; init; }

    /// <summary>The same by q.</summary>
    public double ScaleByQ { get; init; }

    /// <summary>Up the section, by a part of its parameter, whatever length that is there; the bow is taken square to the section.</summary>
    /// <param name="at">Where.</param>
    /// <param name="reach">Part of the parameter.</param>
    public static BowStep UpSection(in SkinPoint at, double reach)
    {
        var square = 1 + (at.Q * at.Q);
        var scale = 1 / (8 * Math.Sqrt(square));
        return new BowStep(0, reach * at.Delta / at.At.Xu, scale) { DzByDelta = reach / at.At.Xu, ScaleByQ = -scale * at.Q / square };
    }

    /// <summary>The same up the edge of a raked transom, in its own plane.</summary>
    /// <param name="at">Where on the edge.</param>
    /// <param name="reach">Part of the parameter.</param>
    public static BowStep UpTransom(in SkinPoint at, double reach)
    {
        var up = UpSection(at, reach);
        var rake = at.At.Xv / at.Jet.Zv;
        return up with { Dx = rake * up.Dz, DxByDelta = rake * up.DzByDelta, DxByZv = -rake * up.Dz / at.Jet.Zv };
    }

    /// <summary>Along a waterline.</summary>
    /// <param name="at">Where.</param>
    /// <param name="reach">Step aft [m].</param>
    public static BowStep AlongWaterline(in SkinPoint at, double reach)
    {
        var square = 1 + (at.P * at.P);
        var scale = 1 / (8 * square * Math.Sqrt(square));
        return new BowStep(reach, 0, scale) { ScaleByP = -3 * scale * at.P / square };
    }

    /// <summary>Along a diagonal, on which z falls as y grows: dz/dx = -t y', y' = p / (1 + t q).</summary>
    /// <param name="at">Where.</param>
    /// <param name="reach">Step aft [m].</param>
    /// <param name="fall">Its fall over half-breadth t, 1 at 45 degrees.</param>
    public static BowStep AlongDiagonal(in SkinPoint at, double reach, double fall = 1)
    {
        double by = 1 / (1 + (fall * at.Q)), down = fall * reach, scale = by / 8;
        return new BowStep(reach, -down * at.P * by, scale) { DzByP = -down * by, DzByQ = down * fall * at.P * by * by, ScaleByQ = -scale * fall * by };
    }

    /// <summary>Along a buttock, on which dz/dx = -p / q.</summary>
    /// <param name="at">Where.</param>
    /// <param name="reach">Step aft [m].</param>
    public static BowStep AlongButtock(in SkinPoint at, double reach)
    {
        double by = 1 / at.Q, rise = at.P * by, square = 1 + (rise * rise), scale = by / (8 * square * Math.Sqrt(square));
        var byRise = -3 * scale * rise / square;
        return new BowStep(reach, -reach * rise, scale)
        {
            DzByP = -reach * by,
            DzByQ = reach * rise * by,
            ScaleByP = byRise * by,
            ScaleByQ = (-scale * by) - (byRise * rise * by),
        };
    }
}
