using Lines.Construction.Materials;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Kernel.Splines;

namespace Lines.Construction.Planking;

/// <summary>Which line the first strip is laid along.</summary>
public enum StripRun
{
    /// <summary>The sheer: every strip runs from end to end beside it.</summary>
    Sheer,

    /// <summary>A level line at the height of the lowest sheer; short strips fill up to the sheer toward the ends.</summary>
    Level,
}

/// <summary>How a hull is planked with strips.</summary>
/// <remarks>
/// <para><b>Method.</b> The skin is cut at even stations and every section measured along its girth. A strip's edges keep whole strip widths from the
/// line the first is laid along, measured down the girth; a strip is as long as the edge nearer to that line while that lies on the skin.</para>
/// <para><b>Accuracy.</b> Lengths to 1 mm in a meter, counts exact but where a girth is a whole number of strips.</para>
/// </remarks>
/// <param name="Width">Width of a strip [m].</param>
/// <param name="Thickness">Its thickness [m].</param>
/// <param name="Strips">The strips of one side, from the sheer down.</param>
/// <param name="Bends">Where strips are bent more than they take: the worst place of every stretch of the hull, kind by kind, from the bow.</param>
/// <param name="Sections">Where a section was measured: the stations of the molds.</param>
public sealed record StripPlan(double Width, double Thickness, IReadOnlyList<Strip> Strips, IReadOnlyList<StripBend> Bends, IReadOnlyList<StripSection> Sections)
{
    private const int Stations = 160;

    private const double EndGap = 0.002;

    private const int Apart = 4;

    /// <summary>Length of all strips, both sides [m].</summary>
    public double Length => 2 * Strips.Sum(s => s.Length);

    /// <summary>The planking of a skin.</summary>
    /// <param name="side">The starboard skin.</param>
    /// <param name="build">What the builder decides.</param>
    /// <param name="wood">Wood of the strips.</param>
    /// <param name="molds">Stations to be told of, x from the bow [m].</param>
    public static StripPlan Of(BSplineSurface side, BuildDials build, Wood wood, IReadOnlyList<double> molds)
    {
        ArgumentNullException.ThrowIfNull(side);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(wood);
        ArgumentNullException.ThrowIfNull(molds);
        double fore = Math.Min(side.PointAt(0, 0).X, side.PointAt(0, 1).X) + EndGap, aft = Math.Max(side.PointAt(1, 0).X, side.PointAt(1, 1).X) - EndGap;
        List<StationStrips> stations = [.. Enumerable.Range(0, Stations + 1).Select(k => SkinStation.Of(side, fore + ((aft - fore) * k / Stations)))
            .OfType<SkinStation>().Where(s => s.High > s.Low).Select(s => new StationStrips(s))];
        var level = HullSurface.LeastSheerOf(side);
        double Guide(StationStrips s) => build.Strips == StripRun.Level ? s.DownTo(level) : 0;
        List<double> guides = [.. stations.Select(Guide)];
        int first = -(int)Math.Ceiling(guides.Max() / build.StripWidth), last = (int)Math.Ceiling(stations.Zip(guides).Max(s => s.First.Girth - s.Second) / build.StripWidth);
        var limits = new StripLimits(build.StripWidth, build.Planking, wood, StemWidth.Half(aft - fore) + (build.StripWidth / 2));
        var strips = new List<Strip>();
        var bends = new List<(int Section, StripBend Bend)>();
        for (var k = first; k < last; k++)
        {
            var walk = new StripWalk(stations, guides, build.StripWidth, k);
            if (walk.Lengths.Count == 0)
                continue;
            strips.Add(new Strip(strips.Count + 1, walk.Lengths));
            bends.AddRange(limits.Beyond(walk, strips.Count));
        }

        List<StripSection> sections = [.. molds.Select(x => SkinStation.Of(side, x)).OfType<SkinStation>().Select(s => limits.Section(new StationStrips(s)))];
        return new StripPlan(build.StripWidth, build.Planking, strips, [.. bends.GroupBy(b => b.Bend.Kind).OrderBy(g => g.Key).SelectMany(Stretches)], sections);
    }

    // Places no further apart than a few sections are one stretch of the hull; the worst of it stands for it.
    private static IEnumerable<StripBend> Stretches(IEnumerable<(int Section, StripBend Bend)> places)
    {
        (int Section, StripBend Bend)? stretch = null;
        foreach (var (section, bend) in places.OrderBy(p => p.Section))
        {
            if (stretch is { } open && section > open.Section + Apart)
                yield return open.Bend;
            stretch = (section, stretch is { } on && section <= on.Section + Apart ? on.Bend.With(bend) : bend);
        }

        if (stretch is { } last)
            yield return last.Bend;
    }
}

/// <summary>One strip of one side.</summary>
/// <param name="Number">Its number from the sheer.</param>
/// <param name="Lengths">Its length [m]; several where it runs out and comes again, as a strip that fills up to the sheer at both ends.</param>
public sealed record Strip(int Number, IReadOnlyList<double> Lengths)
{
    /// <summary>Length of all its parts [m].</summary>
    public double Length => Lengths.Sum();
}

/// <summary>What strips do at one mold.</summary>
/// <param name="X">The station [m].</param>
/// <param name="Girth">Girth of the outside from sheer to keel, one side [m].</param>
/// <param name="Count">Strips a side, the last one narrowed.</param>
/// <param name="Radius">Least radius across strips anywhere on the girth but by stem and keel, where they are fitted piece by piece [m]; infinite where nothing is round.</param>
/// <param name="Facet">What stands over the round at most and is planed off [m].</param>
public readonly record struct StripSection(double X, double Girth, int Count, double Radius, double Facet);
