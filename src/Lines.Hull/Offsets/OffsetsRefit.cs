using Lines.Hull.Sections;

namespace Lines.Hull.Offsets;

/// <summary>How far a line comes back from a rounded table of offsets.</summary>
/// <param name="Kind">What the line is.</param>
/// <param name="Name">The line with what is tabled of it: "sheer, height", "WL 3, half-breadth".</param>
/// <param name="AtStations">Greatest distance of the rounded table from the line at its stations and ends [m].</param>
/// <param name="Between">Greatest distance of the refitted line from the line between them [m].</param>
/// <param name="X">Where that is [m aft of the hull's foremost point].</param>
/// <param name="Moved">By how much rounding alone moved the refitted line at most [m].</param>
public sealed record RefittedLine(LineKind Kind, string Name, double AtStations, double Between, double X, double Moved);

/// <summary>The lines of a hull laid down again from its rounded table of offsets alone.</summary>
/// <remarks>
/// <para><b>Method.</b> A batten, the curve of least bending energy, through what the table has of a line: its values at the stations,
/// its points between them, and where the profile of the ends says so the ends of the line. It leaves its ends in the direction of the
/// cubic through the four points there. Distances between the stations are square to the refitted line, at eight places in every span.
/// Diagonals, whose ends are in no table, are judged from their first station to their last.</para>
/// </remarks>
/// <param name="Step">Step of the rounding [m].</param>
/// <param name="Lines">The lines, in the order of the table.</param>
public sealed record OffsetsRefit(double Step, IReadOnlyList<RefittedLine> Lines)
{
    private const double Slack = 1e-9; // lines are cut within a nanometer

    /// <summary>Whether every line is within half a step at the stations and one step between them.</summary>
    public bool Holds => Lines.All(Within);

    /// <summary>The line that comes back worst between the stations.</summary>
    public RefittedLine Worst => Lines.MaxBy(l => l.Between)!;

    /// <summary>Whether a line is within half a step at the stations and one step between them.</summary>
    public bool Within(RefittedLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.AtStations <= (Step / 2) + Slack && line.Between <= Step + Slack;
    }

    /// <summary>Lays every line down again from the table to the outside of planking.</summary>
    /// <param name="lines">The hull with its lines.</param>
    /// <param name="step">Step to which the table is rounded [m], above 0; halves go away from zero.</param>
    public static OffsetsRefit Of(HullLines lines, double step)
    {
        ArgumentNullException.ThrowIfNull(lines);
        if (!(step > 0 && double.IsFinite(step)))
            throw new ArgumentOutOfRangeException(nameof(step), step, "a table is rounded to a step above 0");
        return new OffsetsRefit(step, new OffsetsRefitter(lines, TableOfOffsets.Outside(lines), step).Judged());
    }
}
