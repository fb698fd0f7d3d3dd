using Lines.Hull.Fairness;

namespace Lines.Plans.Curvature;

/// <summary>The steps in which a plate shows one of the principal curvatures: the same on every plate, each step twice the one before.</summary>
/// <remarks>A fixed scale lets two plates be laid side by side.</remarks>
/// <param name="Name">The curvature, for people.</param>
/// <param name="Steps">Sizes at which one gray gives way to the next darker [1/m], rising.</param>
/// <param name="Of">Which curvature it is.</param>
internal sealed record CurvatureScale(string Name, IReadOnlyList<double> Steps, Func<PrincipalCurvatures, double> Of)
{
    /// <summary>Depth of the shallowest hollow that is hatched, in <see cref="BowChord"/> [m]: what a line may be hollow unasked.</summary>
    public const double LeastBow = Limits.Hollow;

    /// <summary>Straightedge under which that hollow is measured [m]: the spacing of the ducks of the batten test.</summary>
    public const double BowChord = BattenTest.DuckSpacing;

    /// <summary>Curvature below which the skin counts as hollow [1/m], negative.</summary>
    /// <remarks><b>Method.</b> Bow = κ c² / 8 under a chord c.</remarks>
    public const double Hollow = -8 * LeastBow / (BowChord * BowChord);

    /// <summary>The greater curvature: on a boat mostly that around the girth.</summary>
    public static CurvatureScale Greater { get; } = new("Greater curvature, mostly around the girth", [0.5, 1, 2, 4, 8, 16], p => p.Greater);

    /// <summary>The lesser curvature: on a boat mostly that along the length.</summary>
    public static CurvatureScale Lesser { get; } = new("Lesser curvature, mostly along the boat", [0.0125, 0.025, 0.05, 0.1, 0.2, 0.4], p => p.Lesser);
}
