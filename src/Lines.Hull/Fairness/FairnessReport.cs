using System.Globalization;
using System.Runtime.CompilerServices;
using Lines.Hull.Form;
using Lines.Hull.Sections;

namespace Lines.Hull.Fairness;

/// <summary>Whether the lines of a hull are fair.</summary>
/// <param name="Lines">Every line judged: sheer in plan and in profile, keel, stem, stern, waterlines, buttocks, diagonals, sections.</param>
/// <param name="Fair">Whether every line is within its limits.</param>
/// <param name="ConvexThroughout">Whether no line, asked to or not, is hollow by more than 0.1 mm.</param>
public sealed record FairnessReport(IReadOnlyList<LineFairness> Lines, bool Fair, bool ConvexThroughout)
{
    private static readonly ConditionalWeakTable<HullSurface, FairnessReport> Made = [];

    /// <summary>The lines that are not fair, worst against its limit first.</summary>
    public IReadOnlyList<LineFairness> Faults => [.. Lines.Where(l => !l.Fair).OrderByDescending(l => l.Excess)];

    /// <summary>What turning a dial to ease does, where it was tried.</summary>
    public IReadOnlyList<EasingTrial> Trials { get; init; } = [];

    /// <summary>The lines with a hollow that is meant, deepest first.</summary>
    public IReadOnlyList<LineFairness> MeantHollows => [.. Lines.Where(l => l.IsMeantHollow).OrderByDescending(l => l.Meant.Depth)];

    /// <summary>The line that stands furthest off its batten.</summary>
    public LineFairness WorstOnBatten => Lines.MaxBy(l => l.Batten.Depth)!;

    /// <summary>The deepest hollow nobody asked for on many lines between those of the plan, on which line, and what it may be [m]; null where none was looked for or found.</summary>
    public (string Subject, double Depth, double Limit)? Between { get; init; }

    private (string Subject, double Depth, double Limit) Deepest
    {
        get
        {
            var line = Lines.MaxBy(l => l.Hollow.Depth)!;
            return Between is { } between && between.Depth > line.Hollow.Depth ? between : (line.Subject, line.Hollow.Depth, line.HollowLimit);
        }
    }

    /// <summary>The judgment in one plain sentence, lengths in millimeters.</summary>
    public string Verdict
    {
        get
        {
            if (Faults is [var worst, ..])
                return Invariant($"Not fair: {Faults.Count} of {Lines.Count} lines {(Faults.Count == 1 ? "is outside its limits" : "are outside their limits")}; worst, {worst.Sentence}.");
            return Invariant($"Fair: {Shape}; {WorstOnBatten.Subject} stands furthest off a batten, {1000 * WorstOnBatten.Batten.Depth:F2} mm.");
        }
    }

    /// <summary>How hollow a fair hull is; a hollow over what most lines may have stands beside what its own line may.</summary>
    private string Shape => ConvexThroughout ? "convex throughout"
        : Deepest.Depth <= Limits.Hollow ? $"hollow only where that is meant ({MeantHollows[0].MeantSentence})"
        : Invariant($"deepest hollow nobody asked for {Limits.Millimeters(Deepest.Depth, Limits.Hollow)} mm, on {Deepest.Subject}, which may have {1000 * Deepest.Limit:F2}");

    /// <summary>Judges the lines of a hull on its own grid: once, for shaping a hull asks the same.</summary>
    /// <param name="hull">The hull.</param>
    public static FairnessReport Of(HullSurface hull) => Made.GetValue(hull, static h =>
    {
        var report = Of(HullLines.Of(h));
        var deepest = UnaskedHollows.Of(h).Where(u => u.ExcludesHull).MaxBy(u => u.Hollow.Depth);
        return deepest is null ? report : report with { ConvexThroughout = report.ConvexThroughout && deepest.Hollow.Depth <= Limits.Hollow, Between = (deepest.Subject, deepest.Hollow.Depth, deepest.Limit) };
    });

    /// <summary>Judges lines of a hull.</summary>
    /// <param name="lines">The lines.</param>
    public static FairnessReport Of(HullLines lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var judged = new List<LineFairness>();
        foreach (var line in lines.All)
        {
            judged.Add(LineFairness.Of(line, Intention.Of(line, lines.Hull), lines));
            if (line.Kind == LineKind.Sheer)
                judged.Add(LineFairness.Of(line, Intention.OfSheerProfile(lines.Hull), lines));
        }

        return new FairnessReport(judged, judged.TrueForAll(l => l.Fair), judged.TrueForAll(l => l.DeepestHollow <= Limits.Hollow));
    }
}

/// <summary>The limits of fairness.</summary>
public static class Limits
{
    /// <summary>Deepest hollow nobody asked for [m], on every line but waterlines below the design waterline.</summary>
    public const double Hollow = 0.0001;

    /// <summary>Greatest distance from the batten [m], 1/32 in as a builder reads it.</summary>
    public const double Batten = 0.0008;

    /// <summary>Deepest hollow nobody asked for on a waterline below the design waterline [m].</summary>
    /// <param name="length">Length of the hull [m].</param>
    public static double HollowUnderWater(double length) => Math.Max(0.002, length / 2000);

    /// <summary>A size in millimeters to two decimals, or to as many as tell it from a limit it is over.</summary>
    /// <param name="size">The size [m].</param>
    /// <param name="limit">Its limit [m].</param>
    public static string Millimeters(double size, double limit)
    {
        string To(double meters, int decimals) => (1000 * meters).ToString(Invariant($"F{decimals}"), CultureInfo.InvariantCulture);
        var shown = 2;
        while (size > limit && shown < 6 && string.Equals(To(size, shown), To(limit, shown), StringComparison.Ordinal))
            shown++;
        return To(size, shown);
    }
}
