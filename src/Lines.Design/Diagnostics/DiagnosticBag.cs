using Lines.Design.Text;

namespace Lines.Design.Diagnostics;

/// <summary>Collects the faults of one file and gives them sorted by place.</summary>
public sealed class DiagnosticBag
{
    /// <summary>More faults than this are counted, not listed: such a file is not a design with mistakes in it.</summary>
    public const int Listed = 100;

    private readonly SourceText _source;
    private readonly List<Diagnostic> _faults;
    private readonly HashSet<Place> _unshown;
    private readonly Func<string, string> _shown;

    /// <summary>An empty bag for one file.</summary>
    public DiagnosticBag(SourceText source)
        : this(source, [], [], key => key)
    {
    }

    private DiagnosticBag(SourceText source, List<Diagnostic> faults, HashSet<Place> unshown, Func<string, string> shown) =>
        (_source, _faults, _unshown, _shown) = (source, faults, unshown, shown);

    /// <summary>The same bag for one who knows keys by other paths than the file.</summary>
    /// <param name="shown">The path of a key in the file.</param>
    internal DiagnosticBag Within(Func<string, string> shown) => new(_source, _faults, _unshown, shown);

    /// <summary>Whether nothing is wrong so far.</summary>
    public bool IsEmpty => _faults.Count == 0;

    /// <summary>Whether what is added now is most likely counted only, so that advice on it would be wasted.</summary>
    internal bool IsFull => _faults.Count > 2 * Listed;

    /// <summary>Adds a fault.</summary>
    /// <param name="place">Where.</param>
    /// <param name="key">The key with its table.</param>
    /// <param name="problem">What is wrong, one clause.</param>
    /// <param name="remedy">What would be right, one clause.</param>
    /// <param name="toward">Which way the value has to move: see <see cref="Diagnostic.Toward"/>.</param>
    /// <param name="instead">See <see cref="Diagnostic.Instead"/>.</param>
    public void Add(Place place, string key, string problem, string remedy, int toward = 0, (string Key, string Remedy)? instead = null) =>
        _faults.Add(new Diagnostic(_source.Path, place, SourceText.Shown(_shown(key)), problem, remedy, "")
        {
            Toward = toward,
            Instead = instead is var (other, told) ? (_shown(other), told) : null,
        });

    /// <summary>Adds a fault whose line is not fit to be shown.</summary>
    /// <param name="place">Where.</param>
    /// <param name="key">The key with its table.</param>
    /// <param name="problem">What is wrong, one clause.</param>
    /// <param name="remedy">What would be right, one clause.</param>
    internal void AddWithoutExcerpt(Place place, string key, string problem, string remedy)
    {
        Add(place, key, problem, remedy);
        _unshown.Add(place);
    }

    /// <summary>The faults in the order of their places, those at one place in the order they were added.</summary>
    /// <param name="severity">How much each weighs.</param>
    public IReadOnlyList<Diagnostic> Sorted(Severity severity = Severity.Error)
    {
        var sorted = _faults.OrderBy(f => f.Place).Take(Listed).Select(f => f with { Severity = severity, Excerpt = _unshown.Contains(f.Place) ? "" : _source.Excerpt(f.Place) }).ToList();
        if (_faults.Count > Listed)
        {
            sorted.Add(new Diagnostic(
                _source.Path, sorted[^1].Place, "file", Invariant($"has {_faults.Count - Listed} more faults, not listed"), "mend these first", "")
            { Severity = severity });
        }

        return sorted;
    }
}
