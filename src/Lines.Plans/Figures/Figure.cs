namespace Lines.Plans.Figures;

/// <summary>What kind of thing a figure measures.</summary>
public enum Quantity
{
    /// <summary>Length [m].</summary>
    Length,

    /// <summary>Area [m²].</summary>
    Area,

    /// <summary>Area of a section [m²], shown in units as small as sections are.</summary>
    SectionArea,

    /// <summary>Volume [m³].</summary>
    Volume,

    /// <summary>Mass [kg].</summary>
    Mass,

    /// <summary>Mass that sinks the boat by a length [kg/m], shown for a centimeter or an inch.</summary>
    MassPerLength,

    /// <summary>Second moment of area [m⁴].</summary>
    SecondMoment,

    /// <summary>Length of stock that is bought by the run [m], shown in meters or feet.</summary>
    Run,

    /// <summary>Distance gone [m], shown in nautical miles.</summary>
    Distance,

    /// <summary>Time [s], shown in minutes.</summary>
    Duration,

    /// <summary>Angle [rad].</summary>
    Angle,

    /// <summary>Mass times a lever [kg m].</summary>
    MassMoment,

    /// <summary>Mass times a lever that trims the boat by a centimeter [kg m], shown for a centimeter or an inch.</summary>
    TrimMoment,

    /// <summary>Force [N].</summary>
    Force,

    /// <summary>Resistance [N], shown finer than a load.</summary>
    Drag,

    /// <summary>Power [W].</summary>
    Power,

    /// <summary>Moment of a force [N m].</summary>
    Moment,

    /// <summary>Area under righting arms [m rad].</summary>
    RightingArea,

    /// <summary>Speed [m/s], shown in knots.</summary>
    Speed,

    /// <summary>Speed of the wind [m/s].</summary>
    Wind,

    /// <summary>A pure number.</summary>
    Ratio,

    /// <summary>A part of a whole, shown as per cent.</summary>
    Fraction,

    /// <summary>A count of things.</summary>
    Count,
}

/// <summary>One figure that some output shows: computed, named and explained once, read alike by text, JSON and report.</summary>
/// <param name="Key">Its name for programs, without the unit: <c>waterline_length</c>.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Value">Its value, SI; null where it is unknown.</param>
/// <param name="Quantity">What it measures.</param>
public sealed record Figure(string Key, string Name, double? Value, Quantity Quantity)
{
    /// <summary>What the number means, or an estimate's source and range; empty where nothing need be said.</summary>
    public string Note { get; init; } = "";

    /// <summary>Whether it is an estimate rather than geometry.</summary>
    public bool IsEstimate { get; init; }

    /// <summary>Why the value is unknown; empty where it is known.</summary>
    public string Why { get; init; } = "";
}

/// <summary>Figures that belong together.</summary>
/// <param name="Key">Name for programs.</param>
/// <param name="Title">Name for people.</param>
/// <param name="Figures">The figures, in the order they are shown.</param>
public sealed record FigureGroup(string Key, string Title, IReadOnlyList<Figure> Figures);
