using Lines.Design.Text;

namespace Lines.Design.Studies;

/// <summary>Changes values in the lines of a design file.</summary>
internal static class TextEdit
{
    /// <summary>Puts another text in the place of a value; a comment behind it stays in its column where there is room.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="place">Place of the value.</param>
    /// <param name="text">The new text.</param>
    public static void Replace(IList<string> lines, Place place, string text)
    {
        var line = lines[place.Line - 1];
        var (before, after) = (line[..(place.Column - 1)], line[(place.Column - 1 + place.Length)..]);
        var comment = after.TrimStart(' ');
        if (comment.StartsWith('#'))
            after = new string(' ', Math.Max(2, place.Length + after.Length - comment.Length - text.Length)) + comment;
        lines[place.Line - 1] = before + text + after;
    }
}
