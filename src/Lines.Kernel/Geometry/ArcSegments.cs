using System.Collections;

namespace Lines.Kernel.Geometry;

/// <summary>The segments of a path in order, made while they are read: a closed path has as many as vertices, an open one less by one.</summary>
/// <param name="Path">The path.</param>
public readonly record struct ArcSegments(ArcPath Path) : IReadOnlyList<ArcSegment>
{
    /// <inheritdoc/>
    public int Count => Path.Closed ? Path.Vertices.Count : Math.Max(0, Path.Vertices.Count - 1);

    /// <inheritdoc/>
    public ArcSegment this[int index]
    {
        get
        {
            var next = index + 1 < Path.Vertices.Count ? index + 1 : 0;
            return new ArcSegment(Path.Vertices[index].Point, Path.Vertices[next].Point, Path.Vertices[index].Bulge);
        }
    }

    /// <summary>Reads them one after the other and takes no memory for it.</summary>
    public Enumerator GetEnumerator() => new(this);

    IEnumerator<ArcSegment> IEnumerable<ArcSegment>.GetEnumerator()
    {
        for (var i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<ArcSegment>)this).GetEnumerator();

    /// <summary>Where the reading is.</summary>
    public record struct Enumerator
    {
        private readonly ArcSegments _segments;
        private readonly int _count;
        private int _next;

        internal Enumerator(ArcSegments segments) => (_segments, _count) = (segments, segments.Count);

        /// <summary>The segment read last.</summary>
        public ArcSegment Current { get; private set; }

        /// <summary>Reads the next one.</summary>
        /// <returns>Whether there was one.</returns>
        public bool MoveNext()
        {
            if (_next == _count)
                return false;
            Current = _segments[_next++];
            return true;
        }
    }
}
