using Lines.Drawing.Model;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Plans.LinesPlan;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;

namespace Lines.Plans.FormCurves;

/// <summary>The curves of form on paper: the curves, their table, the sectional areas with theirs.</summary>
public static class FormCurvesPages
{
    private const double Margin = 12.7;

    /// <summary>How many pages there are.</summary>
    public const int Count = 3;

    /// <summary>The curves as one drawing.</summary>
    /// <param name="book">The figures.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static Sheet Curves(FormCurvesBook book, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(paper);
        return FormCurvesSheet.Of(book, paper);
    }

    /// <summary>The sectional areas as one drawing.</summary>
    /// <param name="book">The figures.</param>
    /// <param name="curves">The curves of form.</param>
    /// <param name="paper">The paper whose longer side the drawing is as wide as.</param>
    public static Sheet Sections(FormCurvesBook book, CurvesOfForm curves, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(curves);
        ArgumentNullException.ThrowIfNull(paper);
        return SectionAreasSheet.Of(book, curves, paper.Height);
    }

    /// <summary>All pages.</summary>
    /// <param name="book">The figures.</param>
    /// <param name="curves">The curves of form.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static IReadOnlyList<Sheet> Of(FormCurvesBook book, CurvesOfForm curves, PaperSize paper)
    {
        var first = Curves(book, paper);
        ArgumentNullException.ThrowIfNull(curves);
        return [first, Page(book.Hydrostatics, 0, _ => { }), Page(book.Sections, SectionAreasSheet.Height, Areas)];

        void Areas(PageMarks marks) => SectionAreasSheet.Draw(marks, book, curves, new Box2(0, paper.Width - Margin - 8 - SectionAreasSheet.Height, paper.Height, paper.Width - Margin - 8));

        Sheet Page(FigureTable table, double above, Action<PageMarks> draw)
        {
            var marks = new PageMarks();
            marks.Text(PlanInks.Titles, $"{book.Title}: curves of form", new Point2(Margin, paper.Width - Margin - 4), 3);
            draw(marks);
            var placed = PlacedTable.Fitted(table, paper.Height - (2 * Margin));
            marks.Add((placed with { Left = Margin, Top = paper.Width - Margin - 10 - above }).Marks());
            marks.Text(PlanInks.Lettering, FormCurvesBook.WhatItIs, new Point2(Margin, Margin), 2, paper.Height - (2 * Margin));
            return new Sheet(first.Title, paper.Height, paper.Width, marks.All);
        }
    }
}
