namespace Lines.Hull.Fairness;

/// <summary>How far a line stands off a batten.</summary>
/// <param name="Departure">Greatest distance between line and batten [m].</param>
/// <param name="Place">Place along the line where that is.</param>
public readonly record struct BattenGap(double Departure, double Place);

/// <summary>The test a loftsman makes on the floor: does a batten held at every other mark go through the marks between?</summary>
/// <remarks>
/// <para><b>Method.</b> Ducks stand on the line 300 mm apart or a little less, and no further than a twelfth of its length. Where
/// the line makes a turn that no batten would be asked to take in one span (within 15 % of its length from either end, 30 % along a
/// buttock, and anywhere along a section or an end profile) they stand closer as the turn comes on, so that it turns by no more than
/// 0.12 rad from duck to duck. The batten is the curve of least bending energy through the ducks; its tails, which run on past the ends
/// of the line, are swung until it lies best there. The distance is measured square to the batten at every sample of the line, twice:
/// with ducks at the marks and with ducks half-way between them, so that no fault hides under a duck.</para>
/// <para>The turn of a stem is excepted by leaving out of a hull's lines what lies within the stem itself: see <see cref="StemWidth"/>.</para>
/// <para><b>Accuracy.</b> A bump or dent of one sign, 150 mm wide or narrower, on a line otherwise fair shows its full height within
/// 25 %. A fair line shows what the ducks cannot hold: 0.01 mm on a parabola 5 m long and 0.37 m deep, 0.1 mm on such an ellipse.</para>
/// </remarks>
public static class BattenTest
{
    /// <summary>Distance between ducks on a long line [m].</summary>
    public const double DuckSpacing = 0.3;

    /// <summary>Part of a line's length from either end within which it may turn sharply.</summary>
    public const double EndZone = 0.15;

    /// <summary>The same along a buttock, which turns up round the forefoot and under the quarter.</summary>
    public const double ButtockZone = 0.30;

    /// <summary>The same along a line that may turn sharply anywhere.</summary>
    public const double Anywhere = 0.5;

    /// <summary>The greatest departure of a line from its batten.</summary>
    /// <param name="trace">The line.</param>
    /// <param name="turnZone">Part of the line's length from either end within which ducks may stand closer for a turn, 0 to 0.5.</param>
    public static BattenGap Of(LineTrace trace, double turnZone)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var worst = new BattenGap(0, trace.Places[0]);
        if (trace.Samples.Count < 3)
            return worst;
        var marks = new DuckMarks(trace, DuckSpacing, turnZone);
        foreach (var shift in (ReadOnlySpan<double>)[0, 0.5])
        {
            var departures = LaidBatten.Departures(trace, marks.Ducks(shift, []));
            for (var k = 0; k < departures.Length; k++)
            {
                if (Math.Abs(departures[k]) > worst.Departure)
                    worst = new BattenGap(Math.Abs(departures[k]), trace.Places[k]);
            }
        }

        return worst;
    }
}
