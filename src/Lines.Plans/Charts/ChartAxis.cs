using System.Globalization;
using Lines.Plans.LinesPlan;

namespace Lines.Plans.Charts;

/// <summary>One axis of a chart, ruled in round numbers.</summary>
/// <param name="Title">What is measured, with its unit.</param>
/// <param name="From">Value where it begins.</param>
/// <param name="To">Value where it ends.</param>
/// <param name="Step">From one line to the next.</param>
internal sealed record ChartAxis(string Title, double From, double To, double Step)
{
    /// <summary>The axis that shows values.</summary>
    /// <param name="title">What is measured, with its unit.</param>
    /// <param name="values">The values, one at least.</param>
    /// <param name="parts">About how many lines it is ruled in.</param>
    /// <param name="fromZero">Whether it begins at 0.</param>
    public static ChartAxis Of(string title, IReadOnlyList<double> values, int parts, bool fromZero)
    {
        double least = fromZero ? Math.Min(0, values.Min()) : values.Min(), most = values.Max();
        if (!(most > least))
            (least, most) = fromZero ? (least, least + 1) : (least - (Math.Max(Math.Abs(least), 1e-9) / 100), least + (Math.Max(Math.Abs(least), 1e-9) / 100));
        var step = RoundNumber.AtLeast((most - least) / parts);
        return new ChartAxis(title, step * Math.Floor((least / step) + 1e-9), step * Math.Ceiling((most / step) - 1e-9), step);
    }

    /// <summary>The ruled values, from the first to the last.</summary>
    public IReadOnlyList<double> Lines => [.. Enumerable.Range(0, 1 + (int)Math.Round((To - From) / Step)).Select(k => From + (k * Step))];

    /// <summary>Where a value lies along the axis, 0 to 1.</summary>
    public double Part(double value) => (value - From) / (To - From);

    /// <summary>A ruled value as it is written, with as many decimals as the others.</summary>
    public string Told(double value)
    {
        var decimals = Math.Max(0, (int)-Math.Floor(Math.Log10(Step) + 1e-9));
        return (Math.Round(value, decimals) + 0.0).ToString(Invariant($"F{decimals}"), CultureInfo.InvariantCulture);
    }
}
