using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Fairness;

/// <summary>One tooth of a curvature comb.</summary>
/// <param name="Foot">The place on the line, in the axes in which it is seen flat [m].</param>
/// <param name="Normal">Unit vector square to the line, out of the boat.</param>
/// <param name="Curvature">Curvature [1/m], positive where the line bulges out of the boat.</param>
public readonly record struct CombTooth(Point2 Foot, Vector2 Normal, double Curvature);

/// <summary>The curvature of a line drawn square to it, from exact derivatives.</summary>
public static class CurvatureComb
{
    /// <summary>The comb of a line in its own axes.</summary>
    /// <param name="line">The line.</param>
    /// <param name="teeth">Number of teeth, at least 2, evenly spaced along it, ends included.</param>
    public static IReadOnlyList<CombTooth> Of(HullLine line, int teeth)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Of(line, teeth, line.Axes, line.Tag.OutwardSign);
    }

    /// <summary>The comb of a line seen in given axes.</summary>
    /// <param name="line">The line.</param>
    /// <param name="teeth">Number of teeth, at least 2.</param>
    /// <param name="axes">The axes, such as <see cref="FlatAxes.Profile"/> for the sheer in profile.</param>
    /// <param name="outwardSign">Sign of the curvature in those axes where the line bulges out of the boat.</param>
    public static IReadOnlyList<CombTooth> Of(HullLine line, int teeth, FlatAxes axes, int outwardSign)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (teeth < 2)
            throw new ArgumentOutOfRangeException(nameof(teeth), teeth, "a comb has at least 2 teeth");
        var comb = new CombTooth[teeth];
        for (var k = 0; k < teeth; k++)
        {
            var jet = line.JetAt(k / (teeth - 1.0));
            Vector2 first = axes.Flat(jet.First), second = axes.Flat(jet.Second);
            var speed = first.Length;
            var outward = -outwardSign * first.Unit().TurnedLeft;
            comb[k] = new CombTooth(axes.Flat(jet.Point), outward, outwardSign * first.Cross(second) / (speed * speed * speed));
        }

        return comb;
    }
}
