using Lines.Hull.Form;

namespace Lines.Tests.Support;

/// <summary>Dials of hulls to shape in tests.</summary>
internal static class FormDials
{
    public const double Degree = Math.PI / 180;

    public static HullDials DoubleEnder { get; } = new()
    {
        Length = 5.2,
        Beam = 0.74,
        Depth = 0.36,
        Draft = 0.115,
        Widest = 0.5,
        Bow = new BowDials(0.62, 0.05, 0.52, 0.25),
        Stern = new PointedStern(0.60, 0.04, 0.48, 0.22),
        Midship = new MidshipDials(6 * Degree, 0.80, 6 * Degree),
    };

    public static HullDials TransomBoat { get; } = DoubleEnder with
    {
        Length = 4.3,
        Beam = 1.1,
        Depth = 0.40,
        Draft = 0.14,
        Widest = null,
        Stern = new TransomStern(0.72, 0.10, 0.46, 12 * Degree, 0.66),
        Midship = new MidshipDials(5 * Degree, 0.76, 8 * Degree),
    };

    /// <summary>Dials drawn at random over slim craft, every optional dial now and then; feasible or not.</summary>
    public static HullDials Random(Random random)
    {
        double Between(double a, double b) => a + ((b - a) * random.NextDouble());
        bool Chance(double p) => random.NextDouble() < p;
        double length = Between(3.5, 7.0), beam = length / Between(4.5, 11), draft = Between(0.10, 0.16) * Math.Min(1, (beam / 0.7) + 0.3);
        var depth = draft + Between(0.18, 0.30);
        double bowSheer = depth + Between(0.02, 0.2), sternSheer = depth + Between(0.02, 0.15);
        SternDials stern = Chance(0.4)
            ? new TransomStern(Between(0.62, 0.8), draft - (Between(0.2, 0.7) * draft), sternSheer, Between(-5, 25) * Degree, beam * Between(0.4, 0.8))
            : new PointedStern(Between(0.57, 0.70), Between(0.1, 0.8) * draft, sternSheer, Between(0.04, 0.08) * length);
        return new HullDials
        {
            Length = length,
            Beam = beam,
            Depth = depth,
            Draft = draft,
            Widest = Chance(0.5) ? Between(0.45, 0.55) : null,
            KeelLow = Chance(0.15) ? Between(0.42, 0.58) : null,
            Bow = new BowDials(
                Between(0.57, 0.70),
                Between(0.1, 0.8) * draft,
                bowSheer,
                Between(0.04, 0.08) * length,
                Chance(0.2) ? Between(0.62, 0.75) : null,
                Chance(0.15) ? Between(20, 60) * Degree : null),
            Stern = stern,
            Midship = new MidshipDials(Between(2, 10) * Degree, Between(0.62, 0.8), Chance(0.2) ? Between(-6, 0) * Degree : Between(0, 10) * Degree),
        };
    }
}
