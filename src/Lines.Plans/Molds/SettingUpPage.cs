using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>A page of the setting-up sheet: letter paper held sideways, heading and title over it, notes at its foot.</summary>
internal sealed class SettingUpPage
{
    /// <summary>Height of the band of the heading [mm].</summary>
    public const double TitleBand = 13;

    private const double Margin = 11;
    private const double NoteLetters = 2.1;
    private const double NoteLine = 3.6;
    private const double SmallLetters = 2.3;

    /// <summary>Begins a page.</summary>
    /// <param name="heading">Its heading.</param>
    /// <param name="title">Title of the design.</param>
    public SettingUpPage(string heading, string title)
    {
        Marks.Text(SettingUpInks.Heading, heading, new Point2(Room.Left, Room.Top - 5), 5, (Room.Width / 2) - 4);
        Marks.Text(SettingUpInks.Text, title, new Point2(Room.Right, Room.Top - 4), 4, Room.Width / 2, Anchor.Right);
    }

    /// <summary>The paper within its margins [mm].</summary>
    public static Box2 Room => new(Margin, Margin, Width - Margin, Height - Margin);

    /// <summary>Height of notes at the foot of a page [mm].</summary>
    public static double HeightOf(IReadOnlyCollection<string> notes) => notes.Count * NoteLine;

    /// <summary>What has been drawn.</summary>
    public PageMarks Marks { get; } = new();

    private static double Width => PaperSize.Letter.Height;

    private static double Height => PaperSize.Letter.Width;

    /// <summary>Writes under heading and title.</summary>
    /// <param name="left">Under the heading.</param>
    /// <param name="right">Under the title.</param>
    public void Under(string left, string right)
    {
        Marks.Text(SettingUpInks.Text, left, new Point2(Room.Left, Room.Top - 10), SmallLetters);
        if (right.Length > 0)
            Marks.Text(SettingUpInks.Text, right, new Point2(Room.Right, Room.Top - 10), SmallLetters, anchor: Anchor.Right);
    }

    /// <summary>Writes notes at the foot.</summary>
    public void Note(IReadOnlyList<string> notes)
    {
        for (var i = 0; i < notes.Count; i++)
            Marks.Text(SettingUpInks.Text, notes[i], new Point2(Room.Left, Room.Bottom + ((notes.Count - 1 - i) * NoteLine)), NoteLetters, Room.Width);
    }

    /// <summary>The sheet.</summary>
    /// <param name="name">Its name.</param>
    public Sheet ToSheet(string name) => new(name, Width, Height, Marks.All);
}
