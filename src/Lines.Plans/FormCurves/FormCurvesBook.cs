using System.Text;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Offsets;

namespace Lines.Plans.FormCurves;

/// <summary>The curves of form in figures: tables for people, comma-separated values for programs.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="Design">Which of the drafts is the design draft; the first is 0.</param>
/// <param name="Drafts">The figures of every draft, lowest first; see <see cref="CurveFigures"/>.</param>
/// <param name="Notation">How lengths are written; the other units follow it.</param>
public sealed record FormCurvesBook(string Title, int Design, IReadOnlyList<FigureGroup> Drafts, LengthNotation Notation)
{
    /// <summary>What the tables and curves hold, one sentence.</summary>
    public const string WhatItIs =
        "Upright and level, to the outside of planking. Drafts and heights are above the base line, centers aft of station 0; fresh water but where sea is named.";

    /// <summary>The figures of a hull's curves of form.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="curves">Its curves of form.</param>
    /// <param name="notation">How lengths are written.</param>
    public static FormCurvesBook Of(string title, HullSurface hull, CurvesOfForm curves, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(curves);
        return new FormCurvesBook(title, curves.Design, CurveFigures.Of(hull, curves), notation);
    }

    /// <summary>Volume, masses, areas, centers and coefficients at every draft.</summary>
    public FigureTable Hydrostatics => HydrostaticsAt(0, Drafts.Count);

    /// <summary>The areas of the sections at every draft.</summary>
    public FigureTable Sections => Table($"Immersed areas of the sections against draft, {FigureText.UnitOf(Quantity.SectionArea, Notation).Name}", 0, Drafts.Count, IsSection);

    /// <summary>The hydrostatics for a terminal: up to the design draft, and above it, for all drafts are too wide for one.</summary>
    public string Text()
    {
        var text = new StringBuilder($"Curves of form. {WhatItIs}\n\n").Append(OffsetsText.Write(HydrostaticsAt(0, Design + 1)));
        return (Design + 1 < Drafts.Count ? text.Append('\n').Append(OffsetsText.Write(HydrostaticsAt(Design + 1, Drafts.Count))) : text).ToString();
    }

    /// <summary>One figure at every draft.</summary>
    internal IReadOnlyList<Figure> Row(string key) => [.. Drafts.Select(d => d.Figures.First(f => string.Equals(f.Key, key, StringComparison.Ordinal)))];

    /// <summary>The drafts as comma-separated values, as <see cref="FigureJson.Csv"/> has them.</summary>
    public string Csv() => FigureJson.Csv(Drafts);

    private static bool IsSection(Figure figure) => figure.Key.StartsWith(CurveFigures.StationKey, StringComparison.Ordinal);

    private FigureTable HydrostaticsAt(int from, int to) => Table("Upright hydrostatics against draft", from, to, f => f.Key is not "draft" && !IsSection(f));

    private FigureTable Table(string title, int from, int to, Func<Figure, bool> rows)
    {
        var drafts = Drafts.Take(from..to).ToList();
        return new FigureTable(
            title,
            [
                new FigureColumn($"Draft{Unit(Drafts[0].Figures[0])}", ""),
                .. drafts.Select((d, k) => new FigureColumn(FigureText.Number(d.Figures[0], Notation), from + k == Design ? "design" : "")),
            ],
            [
                .. Enumerable.Range(0, drafts[0].Figures.Count).Where(i => rows(drafts[0].Figures[i])).Select(i =>
                    (IReadOnlyList<string>)[Name(drafts[0].Figures[i]), .. drafts.Select(d => FigureText.Number(d.Figures[i], Notation))]),
            ]);
    }

    private string Name(Figure figure) => IsSection(figure)
        ? figure.Name
        : figure.Name + (figure.Key.EndsWith("station_0", StringComparison.Ordinal) ? " " + figure.Note : "") + Unit(figure);

    private string Unit(Figure figure) => figure.Quantity == Quantity.Length && Notation is LengthNotation.FeetInches or LengthNotation.FeetInchesEighths
        ? ""
        : FigureText.UnitOf(figure.Quantity, Notation).Name is { Length: > 0 } name ? ", " + name : "";
}
