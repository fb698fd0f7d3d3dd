using Lines.Hull.Form;

namespace Lines.Hull.Fairness;

/// <summary>What a hull that is not fair becomes when one dial is turned.</summary>
/// <param name="Dial">The dial.</param>
/// <param name="Toward">1 where more of it brings the worst line nearer to its limits, -1 where less does, 0 where neither does.</param>
/// <param name="Fair">The least of the values tried with which the hull is fair, SI; null where none is.</param>
/// <param name="Shown">That value as a user is told it; empty where there is none.</param>
public sealed record EasingTrial(Dial Dial, int Toward, double? Fair, string Shown)
{
    /// <summary>Dials tried for one hull: those of its worst lines.</summary>
    private const int Most = 3;

    /// <summary>Multiples of a dial's search unit at which it is tried both ways: fullnesses by 0.02, 0.04 and 0.08.</summary>
    private static readonly int[] s_reaches = [4, 8, 16];

    /// <summary>Tries the dials of the worst lines of a hull, each both ways until it is fair or no hull any more.</summary>
    /// <param name="report">The judgment of the hull; of a fair one nothing is tried.</param>
    /// <param name="d">The dials of the hull.</param>
    /// <param name="told">How values are told: only what is fair as told is told.</param>
    /// <param name="shown">A value as text.</param>
    public static IReadOnlyList<EasingTrial> Of(FairnessReport report, HullDials d, ToldValue told, Func<Dial, double, string> shown)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(d);
        ArgumentNullException.ThrowIfNull(told);
        ArgumentNullException.ThrowIfNull(shown);
        return [.. report.Faults.Select(f => f.Ease).OfType<Dial>().Distinct().Take(Most)
            .Where(dial => DialAccess.ValueOf(d, dial) is not null).Select(dial => Try(report.Faults[0].Excess, d, dial, told, shown))];
    }

    private static EasingTrial Try(double worst, HullDials d, Dial dial, ToldValue told, Func<Dial, double, string> shown)
    {
        var ways = new (double Excess, int Steps, double? Fair)[2];
        Parallel.For(0, 2, k => ways[k] = Turned(d, dial, k == 0 ? -1 : 1, told));
        var (less, more) = (ways[0], ways[1]);
        // Fewer steps to a fair hull first; where neither way leads to one, the first step that helps more.
        var isMore = (more.Steps, more.Excess).CompareTo((less.Steps, less.Excess)) < 0;
        var best = isMore ? more : less;
        return best.Fair is null && !(best.Excess < worst)
            ? new EasingTrial(dial, 0, null, "")
            : new EasingTrial(dial, isMore ? 1 : -1, best.Fair, best.Fair is { } fair ? shown(dial, fair) : "");
    }

    // How far the worst line is over its limits after the first step, and after how many steps which value is fair.
    private static (double Excess, int Steps, double? Fair) Turned(HullDials d, Dial dial, int way, ToldValue told)
    {
        var (least, greatest) = DialAccess.BoundsOf(d, dial);
        var first = double.PositiveInfinity;
        for (var k = 0; k < s_reaches.Length; k++)
        {
            var value = told(dial, DialAccess.ValueOf(d, dial)!.Value + (way * s_reaches[k] * DialAccess.UnitOf(d, dial)), way > 0);
            if (!(value >= least && value <= greatest) || HullAttempt.Make(DialAccess.With(d, dial, value)).Surface is not { } hull)
                break;
            var report = FairnessReport.Of(hull);
            if (k == 0)
                first = report.Lines.Max(l => l.Excess);
            if (report.Fair)
                return (first, k, value);
        }

        return (first, s_reaches.Length, null);
    }
}
