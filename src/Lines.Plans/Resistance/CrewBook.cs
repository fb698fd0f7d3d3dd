using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Offsets;

namespace Lines.Plans.Resistance;

/// <summary>What a crew reaches with its own power.</summary>
/// <param name="Reached">The figures of every kind of person and time, or of a power asked for.</param>
/// <param name="Power">The crew and its drive.</param>
/// <param name="Notation">How lengths are written.</param>
public sealed record CrewBook(IReadOnlyList<FigureGroup> Reached, CrewPower Power, LengthNotation Notation)
{
    private const double Minute = 60, Hour = 3600, Longest = 8 * Hour;

    private static readonly double[] s_times = [Hour / 6, Hour, 4 * Hour, 8 * Hour];

    /// <summary>What is reached in the usual times, in a time asked for and with a power asked for.</summary>
    /// <param name="power">The crew and its drive.</param>
    /// <param name="watts">What each of the crew gives [W]; null where none is asked for.</param>
    /// <param name="seconds">For how long [s]; null where none is asked for.</param>
    /// <param name="notation">How lengths are written.</param>
    public static CrewBook Of(CrewPower power, double? watts, double? seconds, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(power);
        var times = s_times.Concat(seconds is double t ? [t] : Array.Empty<double>()).Distinct().Order();
        List<FigureGroup> groups =
        [
            .. Stamina.All.SelectMany(person => times.Select(time => (person, time)))
                .Where(p => p.person.WattsFor(p.time) is not null)
                .Select(p => Group(power, Invariant($"{p.person.Key}_{p.time / Minute:0}_min"), p.person.Name, p.person.WattsFor(p.time)!.Value, p.time)),
        ];
        if (watts is double asked)
            groups.AddRange(Stamina.All.Select(person => Group(power, $"{person.Key}_as_asked", person.Name, asked, person.SecondsAt(asked))));
        return new CrewBook(groups, power, notation);
    }

    /// <summary>Who drives and how, in words.</summary>
    public string Crew => Invariant($"{(Power.Crew == 1 ? "one" : "two")}, {Power.Drive.Name}: {100 * Power.Drive.Efficiency:0} % of the crew's power moves the boat ({Power.Drive.Source})");

    /// <summary>The table.</summary>
    public FigureTable Table => new(
        $"What a crew reaches: {Crew}",
        [new FigureColumn("Who", ""), .. Reached[0].Figures.Select(f => new FigureColumn(f.Name, FigureText.UnitOf(f.Quantity, Notation).Name))],
        [.. Reached.Select(g => (IReadOnlyList<string>)[g.Title, .. g.Figures.Select(f => Cell(f, Notation))])]);

    /// <summary>What the figures are worth.</summary>
    public static IReadOnlyList<string> Worth { get; } =
    [
        "Powers of people: Malewicki 1983 from secondary copies, Wilson, Bicycling Science, from memory; measured on pedals. Arms and trunk give less, how much these sources do not say.",
    ];

    /// <summary>What each of the crew gives at a speed, and for how long who can.</summary>
    /// <param name="power">The crew and its drive.</param>
    /// <param name="drag">The resistance at the speed.</param>
    internal static IEnumerable<Figure> At(CrewPower power, DragAtSpeed drag)
    {
        var watts = power.WattsEach(drag);
        yield return new Figure("crew_power", "Each of crew", watts, Quantity.Power) { IsEstimate = true, Note = power.Drive.Name };
        foreach (var person in Stamina.All)
            yield return Kept(person, watts);
    }

    /// <summary>A figure as it stands in a table; the longest time that is published may be more.</summary>
    internal static string Cell(Figure figure, LengthNotation notation) =>
        figure.Value is null ? figure.Why : FigureText.Number(figure, notation) + (figure is { Quantity: Quantity.Duration, Value: >= Longest } ? "+" : "");

    private static Figure Kept(Stamina person, double watts)
    {
        var seconds = person.SecondsAt(watts);
        return new Figure($"kept_up_{person.Key}", $"Kept up, {person.Name}", seconds, Quantity.Duration)
        {
            IsEstimate = true,
            Why = seconds is null ? Invariant($"< {person.Points[0].Seconds / Minute:0}") : "",
            Note = Invariant($"{person.Points[^1].Seconds / Minute:0} min is that or longer"),
        };
    }

    private static FigureGroup Group(CrewPower power, string key, string title, double watts, double? seconds)
    {
        var speed = power.SpeedAt(watts);
        var beyond = power.IsTooLittle(watts) ? "too little to make way" : "beyond Froude 1";
        return new FigureGroup($"reached_{key}", title,
        [
            new("kept_up", "For", seconds, Quantity.Duration) { IsEstimate = true, Why = "too hard" },
            new("crew_power", "Each of crew", watts, Quantity.Power) { IsEstimate = true },
            new("speed", "Speed", speed, Quantity.Speed) { IsEstimate = true, Why = beyond },
            new("distance", "Distance", speed * seconds, Quantity.Distance) { IsEstimate = true, Why = seconds is null ? "too hard" : beyond },
        ]);
    }
}
