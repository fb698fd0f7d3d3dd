using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>How one page is divided: the printable border, the window onto the drawing, the strip that neighbors share, the foot.</summary>
/// <remarks><b>Frame.</b> The page as it is read, millimeters, y up, before the printer's correction. A page read sideways goes to the
/// printer upright like the others, turned a quarter to the left, so that one correction serves all.</remarks>
internal sealed class PageLayout
{
    /// <summary>Width of the strip that neighboring pages both carry [mm], half of it on each side of the seam.</summary>
    public const double Strip = 8;

    /// <summary>Height of the foot with label, scale bar and map [mm].</summary>
    public const double FootHeight = 15;

    /// <summary>Heaviest line a page is made ready for without being told [mm].</summary>
    public const double UsualInk = 0.6;

    /// <summary>Divides a page.</summary>
    /// <param name="settings">Paper, border and what the printer needs.</param>
    /// <param name="heaviest">Width of the heaviest line [mm]; half of it is kept inside the border too.</param>
    /// <param name="sideways">Whether the page is read with its longer side level.</param>
    public PageLayout(PrintSettings settings, double heaviest = UsualInk, bool sideways = false)
    {
        var paper = Paper = settings.Paper;
        Sideways = sideways;
        var printable = new Box2(0, 0, paper.Width, paper.Height).Grown(-settings.Border);
        var upright = settings.Correction.Fitting(printable.Grown(-heaviest / 2));
        Content = sideways ? new Box2(upright.Bottom, paper.Width - upright.Right, upright.Top, paper.Width - upright.Left) : upright;
        Foot = Content with { Top = Content.Bottom + FootHeight };
        Window = Content with { Bottom = Foot.Top + 1 };
    }

    /// <summary>The paper.</summary>
    public PaperSize Paper { get; }

    /// <summary>Whether the page is read with its longer side level.</summary>
    public bool Sideways { get; }

    /// <summary>Where the middles of lines may run.</summary>
    public Box2 Content { get; }

    /// <summary>The foot: page label, scale bar, neighbor map.</summary>
    public Box2 Foot { get; }

    /// <summary>The window onto the drawing, shared strips included.</summary>
    public Box2 Window { get; }

    /// <summary>What a page adds to the drawing: the window less half a strip all round.</summary>
    public Box2 Cell => Window.Grown(-Strip / 2);

    /// <summary>The page as it goes to the printer, upright.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="marks">Its marks, as it is read.</param>
    public Sheet PageOf(string title, IReadOnlyList<Mark> marks) => Sideways
        ? MovedMarks.TurnedLeft(new Sheet(title, Paper.Height, Paper.Width, marks))
        : new Sheet(title, Paper.Width, Paper.Height, marks);
}
