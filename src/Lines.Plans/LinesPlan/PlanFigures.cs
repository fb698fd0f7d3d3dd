using Lines.Kernel.Units;
using Lines.Plans.Figures;

namespace Lines.Plans.LinesPlan;

/// <summary>The figures a lines plan shows, as every other output shows them.</summary>
/// <param name="groups">The hull's figures.</param>
/// <param name="notation">How lengths are written.</param>
internal sealed class PlanFigures(IReadOnlyList<FigureGroup> groups, LengthNotation notation)
{
    private readonly Dictionary<string, Figure> _byKey = groups.SelectMany(g => g.Figures).ToDictionary(f => f.Key, StringComparer.Ordinal);

    /// <summary>The figure of a key.</summary>
    /// <exception cref="KeyNotFoundException">The hull's figures have none.</exception>
    public Figure this[string key] => _byKey[key];

    /// <summary>A figure's length, its unit left to the title block.</summary>
    public string Length(string key) => this[key].Value is { } meters ? Length(meters) : "unknown";

    /// <summary>A length, its unit left to the title block.</summary>
    public string Length(double meters) => new Length(meters).ToFigure(notation);

    /// <summary>A length in a column, its unit left to the title block.</summary>
    public string Cell(double meters) => new Length(meters).ToCell(notation);

    /// <summary>Name and value of a figure, a length without its unit.</summary>
    public (string Name, string Value) Row(string key) =>
        (this[key].Name, this[key] is { Quantity: Quantity.Length, Value: { } meters } ? Cell(meters) : FigureText.Show(this[key], notation));
}
