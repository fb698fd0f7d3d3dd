namespace Lines.Hull.Propulsion;

/// <summary>How much power a kind of person gives, for how long.</summary>
/// <remarks>
/// <para><b>Method.</b> Straight lines between published points, power and time both by their logarithms; nothing is told beyond the points.</para>
/// <para><b>Range.</b> Measured on pedals. A paddler, who works with arms and trunk, gives less; how much less these sources do not say.</para>
/// <para><b>Source.</b> D. Malewicki's curves of 1983, from secondary copies: a healthy adult gives 0.1 hp for eight hours and is spent by 0.4 hp in ten
/// minutes, a first-class athlete gives 0.4 hp for eight hours. D. G. Wilson, <i>Bicycling Science</i>, from memory: for one hour 150 to 200 W and
/// 350 to 400 W; the middles are taken. A horsepower is 745.7 W.</para>
/// </remarks>
public sealed class Stamina
{
    private const double Horsepower = 745.69987158227;
    private const double Hour = 3600;

    private readonly (double Seconds, double Watts)[] _points;

    private Stamina(string key, string name, params (double Seconds, double Watts)[] points) => (Key, Name, _points) = (key, name, points);

    /// <summary>Their name in the numbers.</summary>
    public string Key { get; }

    /// <summary>Who they are.</summary>
    public string Name { get; }

    /// <summary>A healthy adult who does not train.</summary>
    public static Stamina HealthyAdult { get; } = new("adult", "healthy adult", (Hour / 6, 0.4 * Horsepower), (Hour, 175), (8 * Hour, 0.1 * Horsepower));

    /// <summary>A first-class athlete.</summary>
    public static Stamina Athlete { get; } = new("athlete", "first-class athlete", (Hour, 375), (8 * Hour, 0.4 * Horsepower));

    /// <summary>Both.</summary>
    public static IReadOnlyList<Stamina> All { get; } = [HealthyAdult, Athlete];

    /// <summary>Times at which the power is published, and that power.</summary>
    public IReadOnlyList<(double Seconds, double Watts)> Points => _points;

    /// <summary>The power that can be kept up for a time [W]; null outside the published times.</summary>
    /// <param name="seconds">The time [s].</param>
    public double? WattsFor(double seconds)
    {
        if (!(seconds >= _points[0].Seconds && seconds <= _points[^1].Seconds))
            return null;
        var k = Math.Max(1, Array.FindIndex(_points, p => p.Seconds >= seconds));
        return Between(seconds, _points[k - 1].Seconds, _points[k].Seconds, _points[k - 1].Watts, _points[k].Watts);
    }

    /// <summary>How long a power can be kept up [s]; the longest published time where it can be kept up longer, null where it spends a person sooner than any published.</summary>
    /// <param name="watts">The power [W].</param>
    public double? SecondsAt(double watts)
    {
        if (watts <= _points[^1].Watts)
            return _points[^1].Seconds;
        if (watts > _points[0].Watts)
            return null;
        var k = Math.Max(1, Array.FindIndex(_points, p => p.Watts <= watts));
        return Between(watts, _points[k - 1].Watts, _points[k].Watts, _points[k - 1].Seconds, _points[k].Seconds);
    }

    private static double Between(double x, double x0, double x1, double y0, double y1) =>
        y0 * Math.Exp(Math.Log(x / x0) / Math.Log(x1 / x0) * Math.Log(y1 / y0));
}
