using Lines.Hull.Form;
using Lines.Hull.Loading;

namespace Lines.Hull.Hydrostatics;

/// <summary>The boat with its main hull full of water, crew aboard: what the sealed compartments and closed floats still carry.</summary>
/// <param name="Holed">The compartment or float that is holed besides; null where all are sound.</param>
/// <param name="Reserve">Buoyancy of all that is sealed, less the weight [kg]; negative where it sinks.</param>
/// <param name="Afloat">How it floats.</param>
/// <param name="Sheer">Height of the main hull's lowest sheer over the water [m], negative under it; null where it does not float.</param>
public sealed record SwampedCase(string? Holed, double Reserve, CaseAfloat Afloat, double? Sheer);

/// <summary>A boat whose main hull is full of water.</summary>
/// <remarks>
/// <b>Method.</b> Lost buoyancy: water stands in the hull as high as outside, so the hull displaces nothing but its sealed compartments. The planking's
/// own volume and what the crew's legs displace are left out, which is on the safe side for boats of wood.
/// </remarks>
public sealed class Swamped
{
    private readonly FloatingBody _main;
    private readonly IReadOnlyList<FloatingBody> _tight;

    /// <summary>Takes what is sealed of a boat.</summary>
    /// <param name="vessel">The shaped hulls.</param>
    /// <param name="compartments">Compartments of the main hull; those not sealed count for nothing.</param>
    public Swamped(VesselShape vessel, IReadOnlyList<Compartment> compartments)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(compartments);
        _main = FloatingBody.Of(vessel.Hulls[0]);
        _tight =
        [
            .. compartments.Where(c => c.IsSealed).Select(c => CompartmentBody.Between(vessel.Hulls[0], c.Name, c.From, c.To)),
            .. vessel.Hulls.Skip(1).Select(FloatingBody.Of).Where(b => !b.IsOpen),
        ];
    }

    /// <summary>The boat swamped, then with each compartment and each closed float holed in turn.</summary>
    /// <param name="weight">All weights aboard.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    public IReadOnlyList<SwampedCase> Under(Weight weight, double density)
    {
        return [Case(null), .. _tight.Select(Case)];

        SwampedCase Case(FloatingBody? holed)
        {
            var craft = new Craft([.. _tight.Where(b => b != holed)]);
            if (craft.Bodies.Count == 0)
                return new SwampedCase(holed?.Name, -weight.Mass, new CaseAfloat(FloatState.Sinks, weight, density, 0, null, null, []), null);
            var afloat = CaseAfloat.Of(craft, weight, density);
            return new SwampedCase(holed?.Name, afloat.Capacity - weight.Mass, afloat, afloat.Afloat is { } at ? _main.LowestSheer(at.Water).Height : null);
        }
    }
}
