using Lines.Hull.Hydrostatics;
using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Plans.Resistance;

namespace Lines.Cli.Input;

/// <summary>What is asked about drag and power.</summary>
/// <param name="Water">The water.</param>
/// <param name="Speeds">Speeds [m/s]; empty for the usual ones.</param>
/// <param name="Crew">How many drive the boat.</param>
/// <param name="Drive">What they drive her with.</param>
/// <param name="Watts">A power of each [W]; null where none is asked about.</param>
/// <param name="Seconds">A time [s]; null where none is asked about.</param>
internal sealed record DragAsked(Water Water, IReadOnlyList<double> Speeds, int Crew, Drive Drive, double? Watts, double? Seconds)
{
    /// <summary>Wind from ahead [m/s], negative from astern.</summary>
    public double HeadWind { get; init; }

    /// <summary>How the boat lies in the water; null level at the design waterline.</summary>
    public WaterPlane? Plane { get; init; }

    /// <summary>The same in words.</summary>
    public string Lies { get; init; } = "level at the design waterline";

    /// <summary>One paddler at sea.</summary>
    public static DragAsked Usual { get; } = new(Water.Sea, [], 1, Drive.FlatBlade, null, null);
}

/// <summary>What a boat takes, and its figures.</summary>
/// <param name="Drag">The estimate.</param>
/// <param name="Book">The figures.</param>
internal sealed record DragStudy(DragEstimate Drag, DragBook Book);
