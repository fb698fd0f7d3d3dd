using Lines.Construction.Molds;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;
using Lines.Hull.Form;
using Lines.Kernel.Units;

namespace Lines.Design;

/// <summary>Knows where in its file every dial of a design stands.</summary>
public sealed class DialSource
{
    private readonly SourceText _source;
    private readonly DesignValues _values;

    internal DialSource(SourceText source, DesignValues values)
    {
        _source = source;
        _values = values;
    }

    /// <summary>The path of the file as the user named it.</summary>
    public string Path => _source.Path;

    /// <summary>The text of the file.</summary>
    public string Text => _source.Text;

    /// <summary>The place of a dial: its value, or the head of its table where the key is left out.</summary>
    public Place PlaceOf(Dial dial) => _values.PlaceOf(KeyOf(dial).Path);

    /// <summary>Shows dials that exclude each other as faults of the file, one at every dial named.</summary>
    /// <param name="conflicts">What shaping the hull found.</param>
    /// <returns>The faults, sorted by place.</returns>
    public IReadOnlyList<Diagnostic> Explain(IEnumerable<DialConflict> conflicts)
    {
        ArgumentNullException.ThrowIfNull(conflicts);
        var faults = new DiagnosticBag(_source);
        foreach (var conflict in conflicts)
        {
            foreach (var hint in conflict.Dials)
            {
                var key = KeyOf(hint.Dial);
                var raw = _values.Find(key.Path) is { } value ? SourceText.Shown(value.Raw) + ": " : "";
                faults.Add(_values.PlaceOf(key.Path), key.Path, raw + conflict.Reason, Remedy(key, hint.Nearest, conflict.Together));
            }
        }

        return faults.Sorted();
    }

    /// <summary>Shows a key of the building table that cannot be as asked as a fault of the file.</summary>
    /// <param name="fault">What shaping the molds found.</param>
    public IReadOnlyList<Diagnostic> ExplainBuild(BuildDialException fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        var key = DesignSchema.ByPath[$"build.{fault.Key}"];
        var faults = new DiagnosticBag(_source);
        var raw = _values.Find(key.Path) is { } value ? SourceText.Shown(value.Raw) + ": " : "";
        faults.Add(_values.PlaceOf(key.Path), key.Path, raw + fault.Message, fault.Remedy ?? Remedy(key, fault.Nearest, false));
        return faults.Sorted();
    }

    private string Remedy(SchemaKey key, double? nearest, bool together)
    {
        if (nearest is not { } value)
            return "no value of this dial was found to do, alone or with the others named";
        if (key.Kind == KeyKind.Flag)
            return "true would do, the others kept";
        var written = _values.Find(key.Path);
        var notation = written?.Notation ?? LengthNotation.Millimeters;
        var rounded = Round(key, value, written?.Number, notation);
        var shown = key.Kind is KeyKind.Length or KeyKind.Lengths && notation != LengthNotation.Millimeters
            ? new Length(rounded).ToText(notation)
            : KeyRange.Show(key, rounded);
        return together ? $"feasible together: {shown} here, and what is said at the other dials named" : $"nearest feasible {shown}, the others kept";
    }

    /// <summary>A nearest feasible value to the step it is shown in, away from the value in the file.</summary>
    /// <remarks>Rounded the other way it would be infeasible again.</remarks>
    private static double Round(SchemaKey key, double value, double? from, LengthNotation notation)
    {
        var step = key.Kind switch
        {
            KeyKind.Length or KeyKind.Lengths => notation.Step(),
            KeyKind.Angle => Angle.FromDegrees(0.1).Radians,
            _ => 0.001,
        };
        return from is null ? step * Math.Round(value / step) : KeyRange.ToStep(value, step, upward: value > from);
    }

    private static SchemaKey KeyOf(Dial dial) => DesignSchema.ByDial[dial];
}
