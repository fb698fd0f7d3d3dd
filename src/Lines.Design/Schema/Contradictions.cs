using Lines.Design.Diagnostics;
using Lines.Design.Text;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Finds values out of their range, and values that are each sound and cannot stand together, by the limits the table of keys gives.</summary>
internal sealed class Contradictions(DesignValues values, DiagnosticBag faults)
{
    public static void Find(DesignValues values, DiagnosticBag faults)
    {
        var find = new Contradictions(values, faults.Within(values.Form.Shown));
        foreach (var (key, value) in values.Beyond)
            find.OutOfRange(key, value);
        foreach (var key in values.Form.Keys.Where(k => k.Bounds.Count > 0 && k.IsOf(values.Stern)))
            find.Check(key);
        if (values.Find("build.mold_at") is { Numbers.Count: 0 } none)
            faults.Add(none.Place, "build.mold_at", "[] names no station", "name at least one, or leave the key out for even spacing");
    }

    private void OutOfRange(SchemaKey key, KeyValue value)
    {
        var low = value.Number < key.Least;
        var limit = KeyRange.ShowLimit(key, low ? key.Least : key.Greatest, !low, value.Notation);
        var cent = key.Kind == KeyKind.Ratio && KeyRange.Holds(key, value.Number / 100) ? $", so {KeyRange.Show(key, value.Number / 100)} if per cent are meant" : "";
        faults.Add(value.Place, key.Path, $"{SourceText.Shown(value.Raw)} is {(low ? "below" : "above")} {limit}", $"give {Narrowed(key, value.Notation)}{cent}", low ? 1 : -1);
    }

    /// <summary>The range of a key as the other keys narrow it, so that what is told would really do.</summary>
    private string Narrowed(SchemaKey key, LengthNotation notation)
    {
        var (low, over, high, under) = (key.Least, "", key.Greatest, "");
        foreach (var (isUpper, open, limit) in LimitsOf(key))
        {
            if (isUpper && (limit < high || (limit == high && open)))
                (high, under) = (limit, open ? "less than " : "");
            if (!isUpper && (limit > low || (limit == low && open)))
                (low, over) = (limit, open ? "more than " : "");
        }

        return low < high
            ? $"{over}{KeyRange.ShowLimit(key, low, isUpper: false, notation)}{(over.Length == 0 ? "" : " up")} to {under}{KeyRange.ShowLimit(key, high, isUpper: true, notation)}"
            : KeyRange.Show(key, notation);
    }

    /// <summary>The limits the sound values of the file put on a key: its own, and those of other keys that follow from it.</summary>
    private IEnumerable<(bool IsUpper, bool Open, double Limit)> LimitsOf(SchemaKey key)
    {
        foreach (var bound in key.Bounds.Where(b => key.IsOf(values.Stern) && b.From.All(values.Has)))
        {
            if (bound.Limit(values.NumberOrNone) is { } limit)
                yield return (bound.IsUpper, bound.Open, limit);
        }

        foreach (var other in values.Form.Keys.Where(k => k.IsOf(values.Stern) && values.Has(k.Path)))
        {
            var numbers = other.Kind == KeyKind.Lengths ? values.Find(other.Path)!.Numbers : [values.Number(other.Path)];
            foreach (var bound in other.Bounds.Where(b => b.Part is not null && b.From[0].Equals(key.Path, StringComparison.Ordinal)))
            {
                foreach (var number in numbers)
                    yield return (!bound.IsUpper, bound.Open, number / bound.Part!.Value);
            }
        }
    }

    private void Check(SchemaKey key)
    {
        if (values.Find(key.Path) is not { } value)
            return;
        if (key.Kind != KeyKind.Lengths)
        {
            Check(key, value);
            return;
        }

        foreach (var item in value.Items)
            Check(key, item);
        if (key.Apart is { } apart)
            CheckApart(key, value.Items, apart);
    }

    private void CheckApart(SchemaKey key, IReadOnlyList<KeyValue> rising, KeyBound apart)
    {
        if (!CanTell(apart) || apart.Limit(values.NumberOrNone) is not { } limit)
            return;
        foreach (var (before, after) in rising.Zip(rising.Skip(1)))
        {
            if (!apart.Allows(after.Number - before.Number, limit))
                faults.Add(after.Place, key.Path, $"has {SourceText.Shown(after.Raw)} beside {SourceText.Shown(before.Raw)}{apart.Problem}", $"{Remedy(key, apart, limit, after.Notation)} between places");
        }
    }

    /// <summary>Whether the keys a limit follows from are sound, or left out.</summary>
    private bool CanTell(KeyBound bound) => bound.From.All(f => values.Has(f) || !values.IsGiven(f));

    /// <summary>Tells the first limit a value does not keep to; where a key it follows from is itself at fault, that is told instead.</summary>
    private void Check(SchemaKey key, KeyValue value)
    {
        foreach (var bound in key.Bounds.Where(CanTell))
        {
            if (bound.Limit(values.NumberOrNone) is not { } limit || bound.Allows(value.Number, limit))
                continue;
            faults.Add(value.Place, key.Path, $"{SourceText.Shown(value.Raw)} {bound.Problem}", Remedy(key, bound, limit, value.Notation), bound.IsUpper ? -1 : 1, Instead(bound, value.Number));
            return;
        }
    }

    private (string Key, string Remedy)? Instead(KeyBound bound, double number)
    {
        if (bound.Part is not { } part || values.Find(bound.From[0]) is not { } other)
            return null;
        var turned = bound with { IsUpper = !bound.IsUpper };
        return (bound.From[0], $"give {turned.Side} {KeyRange.ShowLimit(values.Form.ByPath[bound.From[0]], number / part, turned.IsUpper, other.Notation)}");
    }

    private static string Remedy(SchemaKey key, KeyBound bound, double limit, LengthNotation notation)
    {
        var shown = KeyRange.ShowLimit(key, limit, bound.IsUpper, notation);
        return $"give {bound.Side} {shown}{(bound.Named ? $" ({bound.Words})" : "")}{bound.Otherwise}";
    }
}
