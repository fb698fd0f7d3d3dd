using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Hull.Resistance;

/// <summary>Resistance at one speed, its parts apart [N].</summary>
/// <param name="Speed">Speed through the water [m/s].</param>
/// <param name="Froude">Froude number on the main hull's waterline length.</param>
/// <param name="Friction">Friction of all hulls as smooth planks, each by its own length.</param>
/// <param name="Form">What the hulls' shape adds to it.</param>
/// <param name="Wave">Wave resistance of every hull as if alone, together.</param>
/// <param name="Interference">What the hulls' waves add to each other; negative where they help.</param>
public sealed record DragAtSpeed(double Speed, double Froude, double Friction, double Form, double Wave, double Interference)
{
    /// <summary>All parts together [N].</summary>
    public double Total => Friction + Form + Wave + Interference;

    /// <summary>Power that tows the boat [W]; a paddler gives more, for no blade returns all of it.</summary>
    public double TowingPower => Total * Speed;
}

/// <summary>An estimate of the resistance of a vessel at rest in her waterline: level, at the main hull's design draft.</summary>
/// <remarks>
/// <para><b>Method.</b> <see cref="FrictionLine"/> on the wetted area, <see cref="SlenderForm"/>, <see cref="WaveResistance"/>. Not counted: air, rudder
/// and other appendages, spray, the sinkage and trim of a moving hull, and what a transom that runs dry lacks in pressure.</para>
/// <para><b>Range.</b> Displacement speeds, Froude numbers to 1 without planing, L/∇^⅓ over 6, smooth hulls in deep calm water.</para>
/// </remarks>
public sealed class DragEstimate
{
    /// <summary>Relative error of areas and volumes, and of the wave integral by the whole resistance: far below that of the theory.</summary>
    private const double Tolerance = 1e-4;

    private readonly Water _water;
    private readonly List<Wet> _shapes = [];
    private readonly WaveResistance _waves;

    /// <summary>Takes the hulls of a vessel.</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="water">The water.</param>
    /// <exception cref="DownfloodingException">A hull is under water to its sheer at that waterline.</exception>
    public DragEstimate(VesselShape vessel, Water water)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(water);
        _water = water;
        var inWater = new List<HullInWater>();
        var placed = vessel.Hulls.Select(h => new HullInWater(h.Surface, vessel.Main.Draft - h.Place.Z, h.Place.X, h.Place.Y));

        // A pair is one shape at one height: reckoned once, counted twice.
        foreach (var alike in placed.GroupBy(h => (h.Hull, h.Height)))
        {
            var afloat = UprightHydrostatics.Below(alike.Key.Hull, alike.Key.Height, Tolerance);
            if (afloat.Waterplane is not { } plane)
                continue;
            inWater.AddRange(alike);
            _shapes.Add(new Wet(alike.Count(), plane.Length, afloat.WettedSurface, plane.Length / Math.Cbrt(afloat.Volume)));
        }

        _waves = new WaveResistance(inWater);
    }

    /// <summary>Hulls that are in the water.</summary>
    public int Hulls => _shapes.Sum(s => s.Count);

    /// <summary>Waterline length over the cube root of the volume, of each hull in the water, the main hull first.</summary>
    public IReadOnlyList<double> Slenderness => [.. _shapes.SelectMany(s => Enumerable.Repeat(s.Slenderness, s.Count))];

    /// <summary>Length of the main hull's waterline [m].</summary>
    public double Length => _shapes[0].Length;

    /// <summary>The resistance at a speed.</summary>
    /// <param name="speed">Speed [m/s]; the shortest hull's Reynolds number must reach <see cref="FrictionLine.LeastReynolds"/>.</param>
    public DragAtSpeed At(double speed)
    {
        double friction = 0, form = 0;
        foreach (var shape in _shapes)
        {
            var plank = shape.Count * 0.5 * _water.Density * speed * speed * shape.Area * FrictionLine.Coefficient(speed * shape.Length / _water.Viscosity);
            friction += plank;
            form += plank * (SlenderForm.Factor(shape.Slenderness) - 1);
        }

        var (together, alone) = _waves.Parts(speed, Tolerance, friction / _water.Density);
        return new DragAtSpeed(speed, speed / Math.Sqrt(Standards.Gravity * Length), friction, form, _water.Density * alone, _water.Density * (together - alone));
    }

    private sealed record Wet(int Count, double Length, double Area, double Slenderness);
}
