using System.Collections;
using Lines.Drawing.Model;

namespace Lines.Plans.Paper;

/// <summary>Pages drawn in order on a thread of their own, while whoever reads them works on those before.</summary>
/// <remarks>A page that is read before its turn is drawn by its reader; each is drawn once. A fault is thrown where its page is read.</remarks>
internal sealed class DrawnAhead : IReadOnlyList<Sheet>
{
    private readonly Lazy<Sheet>[] _pages;

    /// <summary>Begins to draw.</summary>
    public DrawnAhead(IEnumerable<Func<Sheet>> pages)
    {
        _pages = [.. pages.Select(p => new Lazy<Sheet>(p))];
        _ = Task.Run(() => Array.ForEach(_pages, p => _ = p.Value));
    }

    /// <inheritdoc/>
    public int Count => _pages.Length;

    /// <inheritdoc/>
    public Sheet this[int index] => _pages[index].Value;

    /// <inheritdoc/>
    public IEnumerator<Sheet> GetEnumerator() => _pages.Select(p => p.Value).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
