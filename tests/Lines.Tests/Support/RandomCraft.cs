using Lines.Hull.Form;

namespace Lines.Tests.Support;

/// <summary>Dials of slim craft drawn at random over the whole range that is designed for, feasible together or not.</summary>
/// <remarks>What must not be drawn freely is drawn within what the rest leaves: a midship fullness under the corner of its two tangents, a run
/// that suits its transom, a sheer in plan near the waterline's fullness, and without hollow lines a vee that leaves room for the waterline
/// outside it. End angles are not drawn: with a fullness given they are nearly the fullness said twice.</remarks>
/// <param name="random">Where chance comes from.</param>
/// <param name="spread">Part of every range about its middle that is drawn from: 1 all of it, 0.5 the middle half.</param>
internal sealed class RandomCraft(Random random, double spread)
{
    private const double Degree = Math.PI / 180;

    /// <summary>The next craft.</summary>
    public HullDials Next()
    {
        double length = Between(2, 12), beam = Math.Clamp(length / Between(3.5, 20), 0.1, 3);
        var draft = Math.Max(0.02, beam * Between(0.12, 0.45));
        var depth = draft + Math.Max(0.06, beam * Between(0.25, 0.7));
        var hollow = Chance(0.25);
        var flare = Between(-10, 35) * Degree;
        var hull = new HullDials
        {
            Length = length,
            Beam = beam,
            Depth = depth,
            Draft = draft,
            Hollow = hollow,
            Widest = Chance(0.5) ? Between(0.40, 0.60) : null,
            KeelLow = Chance(0.15) ? Between(0.42, 0.58) : null,
            Bow = Bow(length, beam, draft, depth, hollow),
            Stern = Chance(0.35) ? Transom(beam, draft, depth) : Pointed(length, beam, draft, depth, hollow),
            Midship = new MidshipDials(Between(0, 35) * Degree, 0.5, flare),
        };
        // Deadrise and flare that leave no fullness at all are drawn again.
        var most = MidshipSection.GreatestFullness(hull, 0);
        return most > 0.55 ? hull with { Midship = hull.Midship with { Fullness = Between(0.5, Math.Min(0.95, most)) } } : Next();
    }

    private BowDials Bow(double length, double beam, double draft, double depth, bool hollow)
    {
        double fullness = Fullness(hollow), rocker = Between(0, 1.5) * draft;
        var profile = (StemProfile)random.Next(3);
        return new BowDials(
            fullness,
            rocker,
            Sheer(depth),
            length * (profile == StemProfile.Raked ? Between(0.04, 0.2) : Between(0.01, 0.12)),
            Chance(0.3) ? fullness + Between(-0.01, 0.09) : null,
            Chance(0.2) ? Vee(fullness, length, beam, draft, rocker, hollow) : null,
            Profile: profile);
    }

    private PointedStern Pointed(double length, double beam, double draft, double depth, bool hollow)
    {
        var end = Bow(length, beam, draft, depth, hollow);
        return new PointedStern(end.EntryFullness, end.Rocker, end.Sheer, end.Forefoot, end.SheerFullness, end.Vee, Profile: end.Profile);
    }

    private TransomStern Transom(double beam, double draft, double depth)
    {
        double end = Between(0.2, 0.8), run = end + ((1 - end) * Between(0.55, 0.75));
        return new TransomStern(
            Math.Clamp(run, 0.5, 0.9), draft * (1 - Between(-0.3, 0.8)), Sheer(depth), Between(-10, 45) * Degree, beam * (end + ((1 - end) * Between(0.05, 0.5))));
    }

    private double Fullness(bool hollow) => hollow ? Between(0.5, 0.8) : Between(0.55, 0.8);

    private double Sheer(double depth) => depth * Between(1, 1.6);

    /// <summary>Any, if lines may be hollow; else so flat that the straight section at it is broader at the waterline than that curve is there, and
    /// where the waterline ends on the keel, up to the angle whose tangent is the slope of a parabolic keel over that of the waterline.</summary>
    private double Vee(double fullness, double length, double beam, double draft, double rocker, bool hollow)
    {
        if (hollow)
            return Between(0, 80) * Degree;
        var slope = Slope(fullness, length, beam);
        return Between(0, 1) * Math.Atan(rocker < draft ? (draft - rocker) / (0.1 * length * slope) : 4 * rocker / (length * slope));
    }

    /// <summary>Slope at the end of y = 1 - (1 - t)^n, whose fullness is n / (n + 1).</summary>
    private static double Slope(double fullness, double length, double beam) => fullness / (1 - fullness) * beam / length;

    private double Between(double a, double b) => a + ((b - a) * (0.5 + (spread * (random.NextDouble() - 0.5))));

    private bool Chance(double p) => random.NextDouble() < p;
}
