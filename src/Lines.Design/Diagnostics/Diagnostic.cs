using Lines.Design.Text;

namespace Lines.Design.Diagnostics;

/// <summary>How much a diagnostic weighs.</summary>
public enum Severity
{
    /// <summary>The design is not sound.</summary>
    Error,

    /// <summary>The design is sound, but something asked for is missing.</summary>
    Warning,

    /// <summary>Nothing is missing and there is nothing to do.</summary>
    Note,
}

/// <summary>One fault of a design file, or a warning or note about it, at its place.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Place">Where in it.</param>
/// <param name="Key">The key with its table, like <c>hull.beam</c>.</param>
/// <param name="Problem">What is wrong, one clause.</param>
/// <param name="Remedy">What would be right, one clause.</param>
/// <param name="Excerpt">The line and a caret line under it; empty where the line is.</param>
public sealed record Diagnostic(string File, Place Place, string Key, string Problem, string Remedy, string Excerpt)
{
    /// <summary>How much it weighs.</summary>
    public Severity Severity { get; init; }

    /// <summary>Which way the value has to move: -1 for less, 1 for more, 0 where that is no question of more or less.</summary>
    public int Toward { get; init; }

    /// <summary>The key whose change would do as well, and to what; null where no other key alone would.</summary>
    public (string Key, string Remedy)? Instead { get; init; }

    /// <summary>The fault on one line: <c>file:line:column: key: what is wrong; what would be right</c>, <c>warning:</c> or <c>note:</c> before the key of one.</summary>
    public string Headline => Invariant($"{File}:{Place.Line}:{Place.Column}: {(Severity == Severity.Error ? "" : SeverityName + ": ")}{Key}: {Problem}; {Remedy}");

    /// <summary><c>error</c>, <c>warning</c> or <c>note</c>.</summary>
    public string SeverityName => Severity.ToString().ToLowerInvariant();

    /// <summary>The headline and the excerpt.</summary>
    public override string ToString() => Excerpt.Length == 0 ? Headline : $"{Headline}\n{Excerpt}";
}
