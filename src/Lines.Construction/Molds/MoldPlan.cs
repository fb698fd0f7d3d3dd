using Lines.Construction.Pieces;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Units;

namespace Lines.Construction.Molds;

/// <summary>All molds of a hull and the strongback they stand on.</summary>
/// <param name="Strongback">The strongback.</param>
/// <param name="Molds">Stem, molds from the bow, stern or transom: in the order in which they stand; an end without an edge is left out.</param>
/// <param name="LeftOut">Mold stations that were left out, and why.</param>
public sealed record MoldPlan(Strongback Strongback, IReadOnlyList<Mold> Molds, IReadOnlyList<MoldLeftOut> LeftOut)
{
    /// <summary>What to do without an apex, a command.</summary>
    public const string InsteadOfApex = "take the inner stem's edge from the molds with a batten";

    /// <summary>Take-apart planes, x from the bow [m].</summary>
    public IReadOnlyList<double> Joints { get; init; } = [];

    /// <summary>The ends whose apex is not drawn and why, a clause each.</summary>
    /// <param name="notation">How lengths are written.</param>
    public IEnumerable<string> WithoutApex(LengthNotation notation) => Molds.Select(m => m.NoApex(notation)).OfType<string>();

    /// <summary>The same with what to do instead, a sentence each.</summary>
    /// <param name="notation">How lengths are written.</param>
    public IEnumerable<string> ApexSentences(LengthNotation notation) => WithoutApex(notation).Select(clause => $"{clause}; {InsteadOfApex}.");

    /// <summary>The bulkheads of the joints, two each, forward one first, then others; they stay in the boat and never stand on the strongback.</summary>
    public IReadOnlyList<Mold> Bulkheads { get; init; } = [];

    /// <summary>Thickness of the deck of a closed hull, under which bulkheads and transom end [m].</summary>
    public double DeckThickness { get; init; }

    /// <summary>Openings in bottom and deck.</summary>
    public IReadOnlyList<HullOpening> Openings { get; init; } = [];

    /// <summary>Bulkheads and openings that cannot be where they were put.</summary>
    public IReadOnlyList<Clash> Clashes { get; init; } = [];

    /// <summary>The molds and bulkheads that stand in an opening's reach and carry its marks, from the bow.</summary>
    public IReadOnlyList<Mold> MarkedWith(HullOpening opening) =>
        [.. Parts.Where(p => OpeningMarks.Crosses(p, opening) && OpeningMarks.HasRoom(p, opening, 0)).OrderBy(p => p.X)];

    /// <summary>All that is cut: molds, ends and bulkheads.</summary>
    public IReadOnlyList<Mold> Parts => [.. Molds, .. Bulkheads];

    /// <summary>The station molds that the profile mold of an end passes, from that end inward.</summary>
    /// <param name="end">The profile mold.</param>
    public IReadOnlyList<Mold> Passed(Mold end)
    {
        ArgumentNullException.ThrowIfNull(end);
        var stations = Molds.Where(m => m.Kind == MoldKind.Station);
        return [.. (end.Kind == MoldKind.Stem ? stations : stations.Reverse()).TakeWhile(m => m.LapFloor is not null)];
    }

    /// <summary>The molds of a hull, marked with the waterlines of its standard grid.</summary>
    /// <param name="hull">The hull, to the outside of planking.</param>
    /// <param name="build">What the builder decides.</param>
    /// <exception cref="BuildDialException">A dial of the building table cannot be as asked.</exception>
    public static MoldPlan Of(HullSurface hull, BuildDials build) => Of(hull, build, LinesGrid.For(hull).Waterlines);

    /// <summary>The molds of a hull.</summary>
    /// <remarks>
    /// <para><b>Method.</b> One mold at the widest station, the others spaced from it both ways (or where the builder says), each the section of
    /// the inset skin. The profile molds of sharp ends run from the sheer past the foot of the stem to the first mold abaft it, which they butt against,
    /// and are slotted into the molds they pass (<see cref="Lap"/>).</para>
    /// <para><b>Accuracy.</b> Edges are the exact section of the inset skin to <see cref="MoldShaping.FitTolerance"/>.</para>
    /// </remarks>
    /// <param name="hull">The hull, to the outside of planking.</param>
    /// <param name="build">What the builder decides.</param>
    /// <param name="waterlines">Heights of the waterlines to mark beside the design waterline [m].</param>
    /// <exception cref="BuildDialException">A dial of the building table cannot be as asked.</exception>
    public static MoldPlan Of(HullSurface hull, BuildDials build, IReadOnlyList<double> waterlines)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(waterlines);
        var shaping = new MoldShaping(hull, build, Strongback.For(hull, build), waterlines);
        var leftOut = new List<MoldLeftOut>();
        var stations = new List<Mold>();
        var places = MoldStations.Of(hull, build);
        double fore = Lap.Reach(hull, places, bow: true), aft = hull.Transom is null ? Lap.Reach(hull, places, bow: false) : double.PositiveInfinity;
        foreach (var x in places)
        {
            if (StationMold.TryShape(shaping, x, stations.Count + 1, x < fore || x > aft, out var mold, out var left))
                stations.Add(mold!);
            else
                leftOut.Add(left!);
        }

        if (stations.Count == 0)
            throw new BuildDialException(MoldStations.KeyOf(build), "no mold finds room in the hull", build.MoldAt is null ? null : hull.WidestX);
        var stem = End(MoldKind.Stem, hull.Side.PointAt(0, 1).X, () => ProfileMold.Shape(shaping, bow: true, stations));
        var stern = hull.Transom is null
            ? End(MoldKind.Stern, hull.Side.PointAt(1, 1).X, () => ProfileMold.Shape(shaping, bow: false, stations))
            : End(MoldKind.Transom, hull.Side.PointAt(1, 1).X, () => TransomPattern.Shape(shaping));
        var clashes = new List<Clash>();
        List<Mold> bulkheads = [.. Bulkhead.Of(shaping, leftOut), .. Bulkhead.Given(shaping, clashes)];
        clashes.AddRange(Pieces.Clashes.Of(build, hull.WidestX, [.. stations, .. bulkheads]));
        return new MoldPlan(
            shaping.Strongback,
            [.. stem, .. SightLine.Drilled([.. stations.Select(s => OpeningMarks.On(s, build.Openings))], build.StemSiding), .. stern],
            [.. leftOut.Select(l => l.InRoomOf is { } end && leftOut.Exists(o => o.End == end) ? l.WithoutItsEnd() : l)])
        { Joints = build.Joints, DeckThickness = build.DeckThickness, Bulkheads = [.. bulkheads.Select(b => OpeningMarks.On(b, build.Openings))], Openings = build.Openings, Clashes = clashes };

        // An end whose inside finds no edge is left out like any mold, and the sheet says why.
        IReadOnlyList<Mold> End(MoldKind kind, double x, Func<Mold> shape)
        {
            try
            {
                return [shape()];
            }
            catch (NoEdgeException e)
            {
                leftOut.Add(new MoldLeftOut(x, e.Why) { End = kind, Key = "planking", Remedy = $"thinner planking, or molds at other places, may leave it an edge" });
                return [];
            }
        }
    }
}

/// <summary>A mold that is not made: of a station or of an end.</summary>
/// <param name="X">x of the station or end [m].</param>
/// <param name="Why">Why, one clause; its lengths are <see cref="Length"/> values, so that they are shown in the builder's own notation.</param>
public sealed record MoldLeftOut(double X, FormattableString Why)
{
    /// <summary>The end it is of; null for that of a station.</summary>
    public MoldKind? End { get; init; }

    /// <summary>The end in whose room the even spacing alone put the station, so that the end's mold carries the planking there; null for others.</summary>
    public MoldKind? InRoomOf { get; init; }

    /// <summary>Whether the bulkheads of a joint are meant.</summary>
    public bool IsOfJoint { get; init; }

    /// <summary>The key of the building table that put it there, or keeps it from being made.</summary>
    public required string Key { get; init; }

    /// <summary>What would do, one clause; lengths as in <see cref="Why"/>.</summary>
    public required FormattableString Remedy { get; init; }

    /// <summary>Whether something asked for is missing; not where the even spacing alone put a station into the room of an end.</summary>
    public bool IsLoss => InRoomOf is null;

    /// <summary>The part that is missing, as patterns are named: <c>STERN</c>, <c>mold at x = 200 mm</c>.</summary>
    public string Part(LengthNotation notation) => IsOfJoint ? $"bulkheads at x = {new Length(X).ToText(notation)}" : End is { } end ? Mold.NameOf(end) : $"mold at x = {new Length(X).ToText(notation)}";

    /// <summary>That it is not made, one clause without the reason.</summary>
    public string Headline(LengthNotation notation) => End switch
    {
        null when IsOfJoint => $"no bulkheads at x = {new Length(X).ToText(notation)}",
        null => $"no mold at x = {new Length(X).ToText(notation)}",
        MoldKind.Transom => "the transom pattern is not made",
        var end => $"the {(end == MoldKind.Stem ? "stem" : "stern")} mold is not made",
    };

    /// <summary>The reason with its lengths in one notation.</summary>
    public string Reason(LengthNotation notation) => Why.Told(notation);

    /// <summary>That there is no mold, and why, as one sentence.</summary>
    public string Sentence(LengthNotation notation)
    {
        var headline = Headline(notation);
        return $"{char.ToUpperInvariant(headline[0])}{headline[1..]}: {Reason(notation)}.";
    }

    /// <summary>The remedy with its lengths in one notation.</summary>
    public string Advice(LengthNotation notation) => Remedy.Told(notation);

    /// <summary>The same where the end that would carry the planking there is not made either.</summary>
    internal MoldLeftOut WithoutItsEnd() => this with { Remedy = $"the {(InRoomOf == MoldKind.Stem ? "stem" : "stern")} mold, once it is made, carries the planking there" };
}
