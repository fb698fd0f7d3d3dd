using Lines.Hull.Resistance;
using Lines.Kernel.Units;

namespace Lines.Plans.Comparison;

/// <summary>Where the drag curves of two designs change places.</summary>
/// <param name="First">Place of the one in the comparison, from 0.</param>
/// <param name="Second">Place of the other.</param>
/// <param name="From">Least speed looked at [m/s].</param>
/// <param name="To">Greatest speed looked at [m/s].</param>
/// <param name="Speeds">Speeds at which they cross [m/s], slowest first.</param>
/// <param name="FirstIsEasierAtFirst">Whether the one has the less drag at the least speed.</param>
public sealed record DragCrossings(int First, int Second, double From, double To, IReadOnlyList<double> Speeds, bool FirstIsEasierAtFirst)
{
    /// <summary>Steps by which crossings are looked for [m/s]: no two waves of a hull's drag are so close.</summary>
    private const double Step = 0.1 * Standards.Knot;

    /// <summary>Part of the drag by which curves may differ and still count as one: what the integrals are found to.</summary>
    private const double Same = 1e-4;

    /// <summary>Looks for the crossings.</summary>
    /// <remarks><b>Method.</b> Signs of the difference every tenth of a knot, then bisection; curves that only touch are not told. <b>Accuracy.</b> 1e-6 m/s of the curves as estimated.</remarks>
    /// <param name="first">Place of the one.</param>
    /// <param name="second">Place of the other.</param>
    /// <param name="drags">The estimates of all designs.</param>
    /// <param name="from">Least speed [m/s].</param>
    /// <param name="to">Greatest speed [m/s].</param>
    public static DragCrossings Of(int first, int second, IReadOnlyList<DragEstimate> drags, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(drags);
        double More(double speed)
        {
            double a = drags[first].At(speed).Total, b = drags[second].At(speed).Total;
            return Math.Abs(b - a) <= Same * a ? 0 : b - a;
        }

        var count = Math.Max(1, (int)Math.Ceiling((to - from) / Step));
        double lastAt = from, last = More(from), start = last;
        var crossings = new List<double>();
        for (var k = 1; k <= count; k++)
        {
            double at = from + ((to - from) * k / count), now = More(at);
            if (now == 0)
                continue;
            if (last * now < 0)
                crossings.Add(Between(lastAt, at, now > 0));
            (lastAt, last) = (at, now);
            start = start == 0 ? now : start;
        }

        return new DragCrossings(first, second, from, to, crossings, start > 0) { AreOne = start == 0 };

        double Between(double low, double high, bool rises)
        {
            while (high - low > 1e-6)
            {
                var middle = (low + high) / 2;
                var more = drags[second].At(middle).Total - drags[first].At(middle).Total > 0;
                (low, high) = more == rises ? (low, middle) : (middle, high);
            }

            return (low + high) / 2;
        }
    }

    /// <summary>Whether the curves are one, to what they are estimated with.</summary>
    public bool AreOne { get; init; }

    /// <summary>What is to be said of the two, one sentence.</summary>
    public string Sentence
    {
        get
        {
            string one = Letter(First), other = Letter(Second), span = Invariant($"between {From / Standards.Knot:0.0#} and {To / Standards.Knot:0.0#} kn");
            if (AreOne)
                return $"{one} and {other} have the same drag {span}.";
            var easier = FirstIsEasierAtFirst ? (one, other) : (other, one);
            if (Speeds.Count == 0)
                return $"{one} and {other} do not cross {span}: {easier.Item1} has the less drag all the way.";
            var places = string.Join(", ", Speeds.Select(s => Invariant($"{s / Standards.Knot:0.00} kn")));
            return $"{one} and {other} change places at {places}: {easier.Item1} has the less drag below, {(Speeds.Count == 1 ? $"{easier.Item2} above" : "then by turns")}.";
        }
    }

    /// <summary>The letter of a design.</summary>
    internal static string Letter(int index) => ((char)('A' + index)).ToString();
}
