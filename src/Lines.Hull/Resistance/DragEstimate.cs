using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Kernel.Units;

namespace Lines.Hull.Resistance;

/// <summary>Resistance at one speed, its parts apart [N].</summary>
/// <param name="Speed">Speed through the water [m/s].</param>
/// <param name="Froude">Froude number on the main hull's waterline length.</param>
/// <param name="Friction">Friction of all hulls as smooth planks, each by its own length.</param>
/// <param name="Form">What the hulls' shape adds to it.</param>
/// <param name="Wave">Wave resistance of every hull as if alone, together.</param>
/// <param name="Interference">What the hulls' waves add to each other; negative where they help.</param>
/// <param name="Transom">What immersed transoms lack in pressure; 0 without one.</param>
/// <param name="Appendages">Rudder and boards; 0 where none are told.</param>
/// <param name="Air">Air on topsides and crew, in the wind asked for; negative where that drives the boat.</param>
public sealed record DragAtSpeed(double Speed, double Froude, double Friction, double Form, double Wave, double Interference, double Transom, double Appendages, double Air)
{
    /// <summary>All parts together [N].</summary>
    public double Total => Friction + Form + Wave + Interference + Transom + Appendages + Air;

    /// <summary>Power that tows the boat [W]; a paddler gives more, for no blade returns all of it.</summary>
    public double TowingPower => Total * Speed;
}

/// <summary>How slim a hull is in the water.</summary>
/// <param name="Hull">What it is called.</param>
/// <param name="Ratio">Waterline length over the cube root of the volume.</param>
public readonly record struct HullSlenderness(string Hull, double Ratio);

/// <summary>An estimate of the resistance of a vessel as she lies in the water.</summary>
/// <remarks>
/// <para><b>Method.</b> <see cref="FrictionLine"/> on the wetted skin without the transom, <see cref="SlenderForm"/>, <see cref="WaveResistance"/>, <see cref="TransomDrag"/>, <see cref="Appendage"/>, <see cref="AirDrag"/>. Level and
/// trim are those of rest; heel is not looked at. Not counted: leeway, spray, and what the moving hull sinks and trims beyond that.</para>
/// <para><b>Range.</b> Displacement speeds, Froude numbers to 1 without planing, L/∇^⅓ over 6, smooth hulls in deep calm water.</para>
/// </remarks>
public sealed class DragEstimate
{
    /// <summary>Relative error of areas and volumes, and of the wave integral by the whole resistance: far below that of the theory.</summary>
    private const double Tolerance = 1e-4;

    private readonly Water _water;
    private readonly AirDrag _air;
    private readonly Appendage? _appendage;
    private readonly List<Wet> _shapes = [];
    private readonly WaveResistance _waves;

    /// <summary>Takes the hulls of a vessel.</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="water">The water.</param>
    /// <param name="plane">How she lies in it, hull frame; null level at the main hull's design waterline.</param>
    /// <param name="crew">How many sit in the air.</param>
    /// <param name="appendage">Rudder and boards; null for none.</param>
    /// <param name="headWind">Wind from ahead [m/s], negative from astern.</param>
    /// <exception cref="DownfloodingException">A hull is under water to its sheer at that waterline.</exception>
    public DragEstimate(VesselShape vessel, Water water, WaterPlane? plane = null, int crew = 1, Appendage? appendage = null, double headWind = 0)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(water);
        (_water, _appendage, HeadWind) = (water, appendage, headWind);
        var lies = (plane ?? WaterPlane.LevelAt(vessel.Main.Draft)) with { Heel = 0 };
        _air = AirDrag.Of(vessel.Main, lies, crew);
        var inWater = new List<HullInWater>();

        // A pair is one shape at one height: reckoned once, counted twice.
        foreach (var alike in vessel.Hulls.GroupBy(h => (h.Surface, h.Place.X, h.Place.Z)))
        {
            var hull = alike.First();
            var side = InLevelWater(hull.Surface.Side, hull.Place with { Y = 0 }, lies);
            var region = new WaterRegion(side, 0);
            if (region.Spans.Count == 0)
                continue;
            var length = region.Spans.Max(s => region.AlongAt(s[^1]).Point.X) - region.Spans.Min(s => region.AlongAt(s[0]).Point.X);
            var wetted = 2 * UprightHydrostatics.SkinBelow(side, region, Tolerance);
            inWater.AddRange(alike.Select(h => new HullInWater(side, 0, 0, h.Place.Y)));
            var transom = hull.Surface.Transom is not null && region.WaterlineAt(side.U.End) is > 0 and var top ? new TransomDrag(side, top) : null;
            _shapes.Add(new Wet([.. alike.Select(h => h.Name)], length, wetted, FloatingBody.Of(hull).Below(lies, Tolerance).Volume, transom));
        }

        _waves = new WaveResistance(inWater);
    }

    /// <summary>Wind from ahead [m/s], negative from astern.</summary>
    public double HeadWind { get; }

    /// <summary>Hulls that are in the water.</summary>
    public int Hulls => _shapes.Sum(s => s.Count);

    /// <summary>What all hulls displace [kg], as she lies.</summary>
    public double Displacement => _water.Density * _shapes.Sum(s => s.Count * s.Volume);

    /// <summary>How slim each hull in the water is, the main hull first.</summary>
    public IReadOnlyList<HullSlenderness> Slenderness => [.. _shapes.SelectMany(s => s.Names.Select(n => new HullSlenderness(n, s.Slenderness)))];

    /// <summary>Length of the main hull's waterline [m].</summary>
    public double Length => _shapes[0].Length;

    /// <summary>The resistance at a speed.</summary>
    /// <param name="speed">Speed [m/s]; the shortest hull's Reynolds number must reach <see cref="FrictionLine.LeastReynolds"/>.</param>
    public DragAtSpeed At(double speed)
    {
        double friction = 0, form = 0, transom = 0;
        foreach (var shape in _shapes)
        {
            var plank = shape.Count * 0.5 * _water.Density * speed * speed * shape.Area * FrictionLine.Coefficient(speed * shape.Length / _water.Viscosity);
            friction += plank;
            form += plank * (SlenderForm.Factor(shape.Slenderness) - 1);
            transom += shape.Count * (shape.Transom?.At(speed, _water.Density, plank / shape.Count) ?? 0);
        }

        var (together, alone) = _waves.Parts(speed, Tolerance, friction / _water.Density);
        return new DragAtSpeed(speed, speed / Math.Sqrt(Standards.Gravity * Length), friction, form, _water.Density * alone, _water.Density * (together - alone), transom, _appendage?.At(speed, _water) ?? 0, _air.At(speed, _water.Density, HeadWind));
    }

    /// <summary>A skin turned and moved so that the water is the plane z = 0.</summary>
    private static BSplineSurface InLevelWater(BSplineSurface side, Vector3 place, WaterPlane water)
    {
        var poles = new Point3[side.U.Count, side.V.Count];
        for (var i = 0; i < side.U.Count; i++)
        {
            for (var j = 0; j < side.V.Count; j++)
            {
                var p = side.PoleAt(i, j) + place;
                poles[i, j] = new Point3(water.Aft.Dot(p - default(Point3)), p.Y, water.HeightOf(p));
            }
        }

        return new BSplineSurface(side.U, side.V, poles);
    }

    private sealed record Wet(IReadOnlyList<string> Names, double Length, double Area, double Volume, TransomDrag? Transom)
    {
        public int Count => Names.Count;

        public double Slenderness { get; } = Length / Math.Cbrt(Volume);
    }
}
