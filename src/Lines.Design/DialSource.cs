using Lines.Construction.Molds;
using Lines.Construction.Pieces;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;
using Lines.Hull.Form;
using Lines.Kernel.Numerics;
using Lines.Kernel.Units;

namespace Lines.Design;

/// <summary>Knows where in its file every dial of a design stands.</summary>
public sealed class DialSource
{
    private readonly SourceText _source;
    private readonly DesignValues _values;
    private readonly DesignValues _file;

    /// <summary>Knows the places of one hull's dials.</summary>
    /// <param name="source">The text of the file.</param>
    /// <param name="values">The values of the form that shapes the hull.</param>
    /// <param name="file">The values of the file itself, which tell how all hulls are built.</param>
    internal DialSource(SourceText source, DesignValues values, DesignValues file)
    {
        _source = source;
        _values = values;
        _file = file;
    }

    /// <summary>The values of the tables that stand several times in the file; none for the source of an outrigger.</summary>
    internal IReadOnlyList<DesignValues> Repeated { get; init; } = [];

    /// <summary>The path of the file as the user named it.</summary>
    public string Path => _source.Path;

    /// <summary>The text of the file.</summary>
    public string Text => _source.Text;

    /// <summary>The notation most lengths of the file are written in: lengths are shown in it unless another is asked for.</summary>
    public LengthNotation Notation => _file.Notation;

    /// <summary>The path of a dial as it stands in the file: <c>hull.beam</c>, <c>outrigger.hull.beam</c>.</summary>
    /// <param name="dial">The dial.</param>
    public string PathOf(Dial dial) => Shown(KeyOf(dial));

    /// <summary>The place of a dial: its value, or the head of its table where the key is left out.</summary>
    public Place PlaceOf(Dial dial) => _values.PlaceOf(KeyOf(dial).Path);

    /// <summary>Shows why a solution is no hull for this file, as faults of it.</summary>
    /// <param name="solution">What shaping the hull gave.</param>
    /// <returns>The faults, sorted by place; none where the hull has all that was asked, and its dials found keep to the limits the other keys set.</returns>
    public IReadOnlyList<Diagnostic> Explain(HullSolution solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        if (solution.Unmet is { } unmet)
            return Explain(unmet);
        return solution.Surface is { } hull ? Contradicted(hull.Dials) : Explain(solution.Conflicts);
    }

    /// <summary>Holds the spacing of an outrigger against the beams, which targets may have found.</summary>
    /// <param name="main">Beam of the main hull [m].</param>
    /// <param name="own">Beam of the outrigger's hull [m].</param>
    /// <returns>The fault; nothing where the hulls are clear of each other, or this hull is no outrigger.</returns>
    public IReadOnlyList<Diagnostic> ExplainSpacing(double main, double own)
    {
        var faults = new DiagnosticBag(_source);
        if (_values.Form == DesignSchema.Outrigger)
            VesselChecks.Spacing(_values, main, own, faults);
        return faults.Sorted();
    }

    /// <summary>Holds the dials found for targets against the limits that keys put on each other, which could not be done before.</summary>
    private IReadOnlyList<Diagnostic> Contradicted(HullDials dials)
    {
        var faults = new DiagnosticBag(_source);
        var solved = new DesignValues(_values);
        foreach (var (dial, value) in TargetBalance.Of(_values).Found(dials))
        {
            var key = KeyOf(dial);
            solved.Put(key.Path, new KeyValue($"{KeyRange.Show(key, value, Notation)}, found for a target,", _values.PlaceOf(key.Path), "", value, []) { Notation = Notation });
        }

        Contradictions.Find(solved, faults);
        return faults.Sorted();
    }

    private IReadOnlyList<Diagnostic> Explain(TargetConflict conflict)
    {
        var faults = Bag;
        var named = conflict.Targets.Select(h => (Hint: h, Key: DesignSchema.ByTarget[h.Target])).OrderBy(t => _values.PlaceOf(t.Key.Path)).ToList();
        var first = named[0].Key;
        var elsewhere = Invariant($"does not go with {Shown(first)} (line {_values.PlaceOf(first.Path).Line}), as said there");
        foreach (var (hint, key) in named)
        {
            var remedy = hint.Nearest is { } nearest
                ? (conflict.Together ? "within reach " : "nearest that can be reached ") + KeyRange.Show(key, nearest, NotationOf(key)) + (hint.Fair ? "" : " (some line is then not yet fair)")
                    + (conflict.Together ? " if the other targets change too, each as said" : ", the others kept")
                : "no other value of it was found to do, alone or with the others";
            faults.Add(_values.PlaceOf(key.Path), key.Path, $"{SourceText.Shown(_values.Find(key.Path)!.Raw)}: {(key == first ? Reason(conflict) : elsewhere)}", remedy);
        }

        foreach (var key in conflict.Dials.Select(KeyOf).Where(k => _values.Has(k.Path)))
            faults.Add(_values.PlaceOf(key.Path), key.Path, $"{SourceText.Shown(_values.Find(key.Path)!.Raw)}: {elsewhere}", $"change it, or ask for the {first.Name} told there");
        return faults.Sorted();
    }

    private string Reason(TargetConflict conflict)
    {
        if (conflict.Beyond is var (dial, limit))
            return $"it takes {KeyOf(dial).Name} beyond {KeyRange.Show(KeyOf(dial), limit, Notation)}, the last that the other keys leave it";
        if (conflict.Reason.Length > 0)
            return $"it cannot be reached: {conflict.Reason}";
        var names = TargetBalance.Of(_values).LeftOut.Select(d => KeyOf(d).Name).ToList();
        return names.Count == 1 ? $"no {names[0]} gives it with the other keys" : $"no {string.Join(" and ", names)} give it together with the other targets";
    }

    /// <summary>Shows dials that exclude each other as faults of the file, one at every dial named.</summary>
    /// <param name="conflicts">What shaping the hull found.</param>
    /// <returns>The faults, sorted by place.</returns>
    public IReadOnlyList<Diagnostic> Explain(IEnumerable<DialConflict> conflicts)
    {
        ArgumentNullException.ThrowIfNull(conflicts);
        var faults = Bag;
        foreach (var conflict in conflicts)
        {
            var named = conflict.Dials.Select(h => (Hint: h, Key: KeyOf(h.Dial))).OrderBy(d => _values.PlaceOf(d.Key.Path)).ToList();
            foreach (var (hint, key) in named)
            {
                var first = named[0].Key;
                var raw = _values.Find(key.Path) is { } value ? SourceText.Shown(value.Raw) + ": " : "";
                var problem = key == first ? conflict.Reason : Invariant($"does not go with {Shown(first)} (line {_values.PlaceOf(first.Path).Line}), as said there");
                faults.Add(_values.PlaceOf(key.Path), key.Path, raw + problem, Remedy(key, hint.Nearest, hint.Fair, conflict.Together));
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
        var raw = _file.Find(key.Path) is { } value ? SourceText.Shown(value.Raw) + ": " : "";
        var told = fault.Nearest is { } n ? AsTold(key, n, upward: !(n < _file.Find(key.Path)?.Number)) : fault.Nearest;
        faults.Add(_file.PlaceOf(key.Path), key.Path, Whose + raw + fault.Message, fault.Remedy ?? Remedy(key, told, fair: true, together: false));
        return faults.Sorted();
    }

    /// <summary>Shows the molds that were left out, each at the place of its station in the file where it is listed, as warnings what is missing, else as notes;
    /// and as notes the inner stems whose edge is not drawn.</summary>
    /// <param name="molds">The molds.</param>
    /// <returns>The warnings and notes, sorted by place.</returns>
    public IReadOnlyList<Diagnostic> ExplainLeftOut(MoldPlan molds)
    {
        ArgumentNullException.ThrowIfNull(molds);
        var (warnings, notes) = (new DiagnosticBag(_source), new DiagnosticBag(_source));
        foreach (var left in molds.LeftOut)
        {
            var key = DesignSchema.ByPath[$"build.{left.Key}"];
            var listed = _file.Find(key.Path)?.Items.FirstOrDefault(i => i.Number == left.X);
            var notation = listed?.Notation ?? Notation;
            (left.IsLoss ? warnings : notes).Add(
                listed?.Place ?? _file.PlaceOf(key.Path),
                key.Path,
                $"{Whose}{left.Headline(notation)}: {left.Reason(notation)}",
                left.Advice(notation));
        }

        const string siding = "build.stem_siding";
        foreach (var missing in molds.WithoutApex(Notation))
            notes.Add(_file.PlaceOf(siding), siding, $"{Whose}{missing}", MoldPlan.InsteadOfApex);
        return [.. warnings.Sorted(Severity.Warning).Concat(notes.Sorted(Severity.Note)).OrderBy(d => d.Place)];
    }

    /// <summary>Shows bulkheads and openings that cannot be where the file puts them, as warnings at their places.</summary>
    /// <param name="molds">The molds and bulkheads of the hull.</param>
    public IReadOnlyList<Diagnostic> ExplainClashes(MoldPlan molds)
    {
        ArgumentNullException.ThrowIfNull(molds);
        var faults = new DiagnosticBag(_source);
        foreach (var clash in molds.Clashes)
        {
            var form = clash.IsOpening ? DesignSchema.Opening : DesignSchema.Bulkhead;
            var place = Repeated.Where(v => v.Form == form).ElementAt(clash.Index).Find(clash.IsOpening ? "from" : "at")!;
            faults.Add(place.Place, form.Shown(clash.IsOpening ? "from" : "at"), clash.What.Told(place.Notation), "move one of them, or change its size");
        }

        return faults.Sorted(Severity.Warning);
    }

    /// <summary>Shows the ends of compartments where the file puts no bulkhead, as notes; ends next to those of the hull close themselves.</summary>
    /// <param name="molds">The molds and bulkheads of the hull.</param>
    public IReadOnlyList<Diagnostic> ExplainCompartments(MoldPlan molds)
    {
        // As near as this a bulkhead is meant for the compartment [m], and no farther from the hull's end than this share of its length one is needed.
        const double near = 0.02, room = 0.05;
        ArgumentNullException.ThrowIfNull(molds);
        var notes = new DiagnosticBag(_source);
        foreach (var at in Repeated.Where(v => v.Form == DesignSchema.Compartment).SelectMany(v => new[] { v.Find("from"), v.Find("to") }).OfType<KeyValue>())
        {
            var length = _values.Number("hull.length");
            if (Math.Min(at.Number, length - at.Number) < room * length || molds.Bulkheads.Any(b => Math.Min(Math.Abs(b.X - at.Number), Math.Abs(b.FarX - at.Number)) <= near))
                continue;
            notes.Add(at.Place, "compartment", $"no bulkhead is made at {SourceText.Shown(at.Raw)}", $"write [[bulkhead]] with a name and at = {SourceText.Shown(at.Raw)} for its pattern, its weight and its plywood in the bill");
        }

        return notes.Sorted(Severity.Note);
    }

    /// <summary>Shows what looks mistaken in what the boat carries, as notes: centers beyond the boat, cases misspelled.</summary>
    /// <param name="shape">Her hulls.</param>
    public IReadOnlyList<Diagnostic> ExplainLoads(VesselShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var notes = new DiagnosticBag(_source);
        var loads = Repeated.Where(v => v.Form == DesignSchema.Load).ToList();
        VesselChecks.LoneCases(loads, notes);
        var (fore, aft) = (shape.Hulls.Min(h => h.Place.X), shape.Hulls.Max(h => h.Place.X + h.Surface.Dials.Length));
        var (port, starboard) = (shape.Hulls.Max(h => (h.Surface.Dials.Beam / 2) - h.Place.Y), shape.Hulls.Max(h => h.Place.Y + (h.Surface.Dials.Beam / 2)));
        var centers = loads.Select(v => (Key: DesignSchema.Load.Shown("at"), Value: v.Find("at"))).Append((Key: "structure.at", Value: _file.Find("structure.at")));
        foreach (var (key, value) in centers)
        {
            if (value is not { Numbers: [var x, var y, _] })
                continue;
            (string Side, double By)[] beyond = [("ahead of", fore - x), ("abaft", x - aft), ("to port of", -y - port), ("to starboard of", y - starboard)];
            if (beyond.MaxBy(b => b.By) is { By: > 0 } most)
                notes.Add(value.Place, key, $"its center is {new Length(most.By).ToText(value.Items[0].Notation)} {most.Side} all hulls", "see that it is carried out there");
        }

        return notes.Sorted(Severity.Note);
    }

    /// <summary>Shows the pieces that do not go into the space they are to be stored in, as warnings at that space.</summary>
    /// <param name="pieces">The pieces of the hull.</param>
    public IReadOnlyList<Diagnostic> ExplainStorage(IReadOnlyList<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        var faults = new DiagnosticBag(_source);
        if (_file.Find("build.storage") is not { } space)
            return [];
        foreach (var piece in pieces.Where(p => !p.Fits(space.Numbers)))
        {
            var which = pieces.Count == 1 ? "the hull" : Invariant($"piece {piece.Number}");
            var longer = piece.Stored.Max() > space.Numbers.Max();
            faults.Add(
                space.Place, "build.storage",
                $"{Whose}{which} does not go into it: {string.Join(" x ", piece.Stored.Select(m => new Length(m).ToText(space.Items[0].Notation)))} with outer stems and outwales",
                longer ? "set joints so that pieces are shorter, or find a longer space" : "find a space broader or higher, or lay it aslant and measure");
        }

        return faults.Sorted(Severity.Warning);
    }

    /// <summary>A value of a dial as it is told in the notation of the file, rounded to the step shown, on the side asked for.</summary>
    /// <param name="dial">The dial.</param>
    /// <param name="value">The value, SI.</param>
    /// <param name="upward">Whether to round up; otherwise down.</param>
    /// <returns>The number that the text told is read as, SI.</returns>
    public double AsTold(Dial dial, double value, bool upward) => AsTold(KeyOf(dial), value, upward);

    /// <summary>A value of a target as it is told in the notation of the file, rounded to the step shown, on the side asked for.</summary>
    /// <param name="target">The target.</param>
    /// <param name="value">The value, SI.</param>
    /// <param name="upward">Whether to round up; otherwise down.</param>
    /// <returns>The number that the text told is read as, SI.</returns>
    public double AsTold(Target target, double value, bool upward) => AsTold(DesignSchema.ByTarget[target], value, upward);

    /// <summary>A value of a dial as text, in the notation of the file.</summary>
    public string Shown(Dial dial, double value) => KeyRange.Show(KeyOf(dial), value, NotationOf(KeyOf(dial)));

    private double AsTold(SchemaKey key, double value, bool upward)
    {
        var step = key.Kind switch
        {
            KeyKind.Length or KeyKind.Lengths => NotationOf(key).Step(),
            KeyKind.Angle => Angle.FromDegrees(0.1).Radians,
            KeyKind.Mass => KeyRange.StepOfMass(NotationOf(key)),
            _ => 0.001,
        };
        return ValueReader.Number(key, KeyRange.Show(key, Rounding.ToStep(value, step, upward), NotationOf(key)));
    }

    private string Remedy(SchemaKey key, double? nearest, bool fair, bool together)
    {
        if (nearest is not { } value)
            return together ? "no values were found that go together; begin from a template's" : "no other value of it alone was found to do";
        var unfair = fair ? "" : " (some line is then not yet fair)";
        if (key.Kind == KeyKind.Flag)
            return $"true would do{unfair}, the others kept";
        var shown = KeyRange.Show(key, value, NotationOf(key));
        return together
            ? $"feasible {shown} if the others named change too, each as said{unfair}"
            : $"nearest feasible {shown}{unfair}, the others kept";
    }

    private LengthNotation NotationOf(SchemaKey key) => (_values.Find(key.Path) ?? _file.Find(key.Path))?.Notation ?? LengthNotation.Millimeters;

    /// <summary>Whose mold a fault of the building table is about, where it is not the main hull's.</summary>
    private string Whose => _values.Form.IsRepeated ? Invariant($"{_values.Form.Name} at line {_values.Head.Line}: ") : "";

    private DiagnosticBag Bag => new DiagnosticBag(_source).Within(_values.Form.Shown);

    private string Shown(SchemaKey key) => _values.Form.Shown(key.Path);

    private static SchemaKey KeyOf(Dial dial) => DesignSchema.ByDial[dial];
}
