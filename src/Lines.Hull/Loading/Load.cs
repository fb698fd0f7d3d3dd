using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Loading;

/// <summary>Something or somebody the boat carries.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Mass">Its mass [kg], above 0.</param>
/// <param name="At">Its center, frame of the main hull [m].</param>
/// <param name="Cases">The load cases it belongs to; null for every one.</param>
public sealed record Load(string Name, double Mass, Point3 At, IReadOnlyList<string>? Cases)
{
    /// <summary>Whether it is on board in a load case.</summary>
    /// <param name="loadCase">Name of the case.</param>
    public bool IsIn(string loadCase) => Cases is null || Cases.Contains(loadCase, StringComparer.Ordinal);
}

/// <summary>The loads that are on board together.</summary>
/// <param name="Name">What the case is called.</param>
/// <param name="Loads">The loads, in the order of the design.</param>
public sealed record LoadCase(string Name, IReadOnlyList<Load> Loads)
{
    /// <summary>The name of the one case where no load names any.</summary>
    public const string Only = "loaded";

    /// <summary>Name of the case without loads.</summary>
    public const string LightShip = "light ship";

    /// <summary>The loads as weights.</summary>
    public IEnumerable<Weight> Weights => Loads.Select(l => new Weight(l.Mass, l.At));

    /// <summary>Boat and loads together.</summary>
    /// <param name="structure">The empty boat.</param>
    public Weight With(Structure structure)
    {
        ArgumentNullException.ThrowIfNull(structure);
        return Weight.Of([new Weight(structure.Mass, structure.At), .. Weights]);
    }

    /// <summary>The light ship, then the cases of a vessel; a case called light ship stands in its place.</summary>
    /// <param name="vessel">The vessel.</param>
    public static IReadOnlyList<LoadCase> All(Vessel vessel)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return vessel.Cases.Any(c => LightShip.Equals(c.Name, StringComparison.OrdinalIgnoreCase)) ? vessel.Cases : [new LoadCase(LightShip, []), .. vessel.Cases];
    }

    /// <summary>Mass of all loads, without the boat [kg].</summary>
    public double Mass => Loads.Sum(l => l.Mass);

    /// <summary>Center of mass of the loads, without the boat [m].</summary>
    public Point3 Center => new(Loads.Sum(l => l.Mass * l.At.X) / Mass, Loads.Sum(l => l.Mass * l.At.Y) / Mass, Loads.Sum(l => l.Mass * l.At.Z) / Mass);

    /// <summary>The cases of a list of loads, in the order in which they are first named; without loads there is none.</summary>
    internal static IReadOnlyList<LoadCase> Of(IReadOnlyList<Load> loads)
    {
        var named = loads.SelectMany(l => l.Cases ?? []).Distinct(StringComparer.Ordinal).ToList();
        if (named.Count == 0 && loads.Count > 0)
            return [new LoadCase(Only, loads)];
        return [.. named.Select(n => new LoadCase(n, [.. loads.Where(l => l.IsIn(n))]))];
    }
}

/// <summary>A part of the main hull between two bulkheads.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">Its forward bulkhead, aft of the foremost point [m].</param>
/// <param name="To">Its after bulkhead [m], further aft.</param>
/// <param name="IsSealed">Whether no water gets into it.</param>
public sealed record Compartment(string Name, double From, double To, bool IsSealed);

/// <summary>A sail plan, as far as heeling and driving need it.</summary>
/// <param name="Area">Area of all sails [m²].</param>
/// <param name="Aft">Center of the area aft of the foremost point [m].</param>
/// <param name="Height">Center of the area above the base line [m].</param>
public sealed record Rig(double Area, double Aft, double Height);

/// <summary>Weight of the empty boat, with all that is fixed to it.</summary>
/// <param name="Mass">Its mass [kg], above 0.</param>
/// <param name="At">Its center, frame of the main hull [m].</param>
public sealed record Structure(double Mass, Point3 At);
