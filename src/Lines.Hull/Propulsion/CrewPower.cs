using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using MathNet.Numerics.RootFinding;

namespace Lines.Hull.Propulsion;

/// <summary>What each of a crew gives against speed, and the speed that a power reaches.</summary>
/// <remarks><b>Method.</b> Resistance times speed, over the drive's efficiency, over the crew. The speed of a power is the least at which that much is needed,
/// bracketed by a table and found within it by Brent's method; beyond a Froude number of 1 nothing is told.</remarks>
public sealed class CrewPower
{
    /// <summary>Slowest speed looked at [m/s], and the step of the table.</summary>
    private const double Slowest = 0.3, Step = 0.1;

    /// <summary>Error of a speed found [m/s].</summary>
    private const double Exact = 1e-9;

    private readonly DragEstimate _drag;
    private readonly Lazy<(double Speed, double Watts)[]> _table;

    /// <summary>Takes the boat, its drive and its crew.</summary>
    /// <param name="drag">What the boat takes.</param>
    /// <param name="drive">What it is driven with.</param>
    /// <param name="crew">How many drive it, at least 1.</param>
    public CrewPower(DragEstimate drag, Drive drive, int crew)
    {
        ArgumentNullException.ThrowIfNull(drag);
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentOutOfRangeException.ThrowIfLessThan(crew, 1);
        (_drag, Drive, Crew) = (drag, drive, crew);
        _table = new(() => [.. Enumerable.Range(0, 1 + (int)((Fastest - Slowest) / Step)).Select(k => Slowest + (k * Step)).Append(Fastest).Distinct().Select(v => (v, WattsEach(v)))]);
    }

    /// <summary>What it is driven with.</summary>
    public Drive Drive { get; }

    /// <summary>How many drive it.</summary>
    public int Crew { get; }

    /// <summary>The speed at a Froude number of 1 [m/s].</summary>
    public double Fastest => Math.Sqrt(Standards.Gravity * _drag.Length);

    /// <summary>Whether a power is less than the slowest speed looked at takes.</summary>
    /// <param name="wattsEach">What each of the crew gives [W].</param>
    public bool IsTooLittle(double wattsEach) => wattsEach <= _table.Value[0].Watts;

    /// <summary>What each of the crew gives at a speed [W].</summary>
    /// <param name="speed">Speed [m/s].</param>
    public double WattsEach(double speed) => WattsEach(_drag.At(speed));

    /// <summary>What each of the crew gives for a resistance [W].</summary>
    /// <param name="drag">The resistance at its speed.</param>
    public double WattsEach(DragAtSpeed drag)
    {
        ArgumentNullException.ThrowIfNull(drag);
        return drag.TowingPower / Drive.Efficiency / Crew;
    }

    /// <summary>The speed that a power reaches [m/s]; null where it does more than the estimate holds for, or less than the slowest speed takes.</summary>
    /// <param name="wattsEach">What each of the crew gives [W].</param>
    public double? SpeedAt(double wattsEach)
    {
        var past = Array.FindIndex(_table.Value, p => p.Watts >= wattsEach);
        return past <= 0 ? null : Brent.FindRoot(v => WattsEach(v) - wattsEach, _table.Value[past - 1].Speed, _table.Value[past].Speed, Exact);
    }
}
