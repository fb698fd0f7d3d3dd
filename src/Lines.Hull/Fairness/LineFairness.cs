using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Fairness;

/// <summary>A fault of a line, or the worst place of one that has none.</summary>
/// <param name="Depth">Its size [m]; 0 where there is nothing.</param>
/// <param name="Place">Where it is, hull frame.</param>
/// <param name="Station">Number of the nearest station of the lines plan.</param>
public readonly record struct Blemish(double Depth, Point3 Place, string Station);

/// <summary>How fair one line is.</summary>
/// <param name="Line">The line.</param>
/// <param name="Name">Its name, with the view where it is seen in two: "sheer in profile".</param>
/// <param name="Inflections">Changes of the sign of curvature.</param>
/// <param name="UnaskedInflections">Those of them that stand where none was asked for, on a line with a hollow a builder could find (0.1 mm).</param>
/// <param name="MonotonePieces">Pieces along which the curvature only rises or only falls.</param>
/// <param name="Hollow">The deepest hollow nobody asked for.</param>
/// <param name="HollowLimit">What that may be [m].</param>
/// <param name="DeepestHollow">The deepest hollow, asked for or not [m].</param>
/// <param name="Batten">The greatest distance from the batten.</param>
/// <param name="BattenLimit">What that may be [m].</param>
/// <param name="Flat">The worst flat between two harder places: reported, not a limit.</param>
/// <param name="Ease">The dial to ease first if the line is not fair; null where it is.</param>
public sealed record LineFairness(
    HullLine Line,
    string Name,
    int Inflections,
    int UnaskedInflections,
    int MonotonePieces,
    Blemish Hollow,
    double HollowLimit,
    double DeepestHollow,
    Blemish Batten,
    double BattenLimit,
    Blemish Flat,
    Dial? Ease)
{
    /// <summary>Whether the line is within its limits.</summary>
    public bool Fair => Excess <= 1;

    /// <summary>The larger of hollow and batten distance over its limit; 1 is the limit.</summary>
    public double Excess => Math.Max(Hollow.Depth / HollowLimit, Batten.Depth / BattenLimit);

    /// <summary>The worse of the two blemishes against its limit.</summary>
    public Blemish Worst => IsHollow ? Hollow : Batten;

    /// <summary>Whether the hollow, not the batten, is the worse against its limit.</summary>
    public bool IsHollow => Hollow.Depth / HollowLimit > Batten.Depth / BattenLimit;

    /// <summary>The line as the subject of a sentence: numbered lines go without article.</summary>
    public string Subject => char.IsAsciiDigit(Name[^1]) ? Name : "the " + Name;

    /// <summary>What is worst about the line, where and how much, in words and millimeters, no full stop.</summary>
    public string Sentence
    {
        get
        {
            var place = Told(Worst);
            return IsHollow
                ? Invariant($"{Subject} is hollow by {Limits.Millimeters(Hollow.Depth, HollowLimit)} mm (limit {1000 * HollowLimit:F2}) {place}")
                : Invariant($"{Subject} stands {Limits.Millimeters(Batten.Depth, BattenLimit)} mm off a batten (limit {1000 * BattenLimit:F2}) {place}");
        }
    }

    /// <summary>The deepest hollow that is meant, because it was asked for or lies where such a line may or must reverse.</summary>
    public Blemish Meant { get; init; }

    /// <summary>Why that hollow is meant, as the end of a sentence; empty where there is none.</summary>
    public string MeantBecause { get; init; } = "";

    /// <summary>Whether the line has a hollow that is meant and that a builder could find.</summary>
    public bool IsMeantHollow => Meant.Depth > Limits.Hollow;

    /// <summary>The hollow that is meant, where, how much and why, in words and millimeters, no full stop.</summary>
    public string MeantSentence => Invariant($"{Subject} reverses by {1000 * Meant.Depth:F2} mm {Told(Meant)}, {MeantBecause}");

    private string Told(Blemish blemish) => Line.Kind == LineKind.Station
        ? Invariant($"{1000 * blemish.Place.Z:F0} mm above the base line")
        : Invariant($"near station {blemish.Station}, {1000 * blemish.Place.X:F0} mm from the bow");

    /// <summary>Bumps, dents, kinks, hollows and flats of the line, in order along it, each once; found when first asked for.</summary>
    /// <remarks>They are far smaller than the limits for a fair hull: what a loftsman would look at twice. A hollow or a flat that is
    /// the inward side of a bump, dent or kink is not named again.</remarks>
    public IReadOnlyList<PlacedFault> Faults => Finder.Value;

    private Lazy<IReadOnlyList<PlacedFault>> Finder { get; init; } = new([]);

    /// <summary>Judges one line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="intention">What it is meant to do.</param>
    /// <param name="lines">The lines of its hull, for the stations.</param>
    internal static LineFairness Of(HullLine line, Intention intention, HullLines lines)
    {
        var trace = LineTrace.Of(line, intention.Axes, intention.OutwardSign);
        Hollow deepest = default, unasked = default, meant = default;
        foreach (var hollow in Hollows.In(trace, 0))
        {
            if (hollow.Depth > deepest.Depth)
                deepest = hollow;
            if (hollow.Depth <= Math.Min(unasked.Depth, meant.Depth))
                continue;
            var asked = intention.Asks(At(hollow.Place));
            if (!asked && hollow.Depth > unasked.Depth)
                unasked = hollow;
            if (asked && hollow.Depth > meant.Depth)
                meant = hollow;
        }

        var inflections = CurvatureRuns.Inflections(trace);
        var flat = CurvatureRuns.WorstFlat(trace);
        var gap = BattenTest.Of(StemWidth.LeftOut(line, trace), intention.TurnZone);
        var result = new LineFairness(
            line,
            intention.Name,
            inflections.Count,
            unasked.Depth > Limits.Hollow ? inflections.Count(t => !intention.Asks(At(t))) : 0,
            CurvatureRuns.MonotonePieces(trace),
            Blemish(unasked.Depth, unasked.Place),
            intention.HollowLimit,
            deepest.Depth,
            Blemish(gap.Departure, gap.Place),
            Limits.Batten,
            Blemish(flat.Depth, flat.Place),
            null)
        {
            Meant = Blemish(meant.Depth, meant.Place),
            MeantBecause = meant.Depth > 0 ? intention.Meant(At(meant.Place))! : "",
            Finder = new(() => [.. LineFaults.In(StemWidth.LeftOut(line, trace), intention.TurnZone)
                .Where(f => f.Kind != FaultKind.Hollow || !intention.Asks(At(f.Place)))
                .Select(f => new PlacedFault(f, Blemish(f.Size, f.Place)))]),
        };
        return result.Fair ? result : result with { Ease = DialToEase.For(result, lines.Hull) };

        Point3 At(double t) => line.At(t).Point;

        Blemish Blemish(double depth, double t)
        {
            var p = At(t);
            return new Blemish(depth, p, lines.Grid.Stations.MinBy(s => Math.Abs(s.X - p.X)).Number);
        }
    }
}
