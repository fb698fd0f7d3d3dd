using Lines.Kernel.Geometry;

namespace Lines.Drawing.Model;

/// <summary>One device-independent drawing: what every renderer reads.</summary>
/// <remarks><b>Frame.</b> Millimeters on the sheet at 1:1, x to the right, y up, origin at the lower left corner.</remarks>
/// <param name="Title">Title for the file's metadata.</param>
/// <param name="Width">Width of the sheet [mm].</param>
/// <param name="Height">Height of the sheet [mm].</param>
/// <param name="Marks">What is drawn, first below last.</param>
public sealed record Sheet(string Title, double Width, double Height, IReadOnlyList<Mark> Marks);

/// <summary>Anything drawn on a sheet.</summary>
/// <param name="Layer">The layer it belongs to, which carries its ink.</param>
public abstract record Mark(Layer Layer);

/// <summary>A line, arc, outline or filled area.</summary>
/// <param name="Layer">The layer, which carries the ink.</param>
/// <param name="Path">The path [mm].</param>
/// <param name="Filled">Whether the inside of a closed path is filled with the ink instead of stroked.</param>
/// <param name="Name">What the line is called, for who cuts the sheet up and letters each piece; empty where it has no name.</param>
public sealed record PathMark(Layer Layer, ArcPath Path, bool Filled = false, string Name = "") : Mark(Layer);

/// <summary>A line of lettering.</summary>
/// <param name="Layer">The layer, which carries the ink.</param>
/// <param name="Text">The text, one line.</param>
/// <param name="At">The anchor point [mm].</param>
/// <param name="Height">Height of the capitals [mm].</param>
/// <param name="Anchor">Which part of the text stands at the anchor point.</param>
/// <param name="Angle">Direction of the base line [rad], counter-clockwise from +x.</param>
public sealed record TextMark(Layer Layer, string Text, Point2 At, double Height, Anchor Anchor = Anchor.Left, double Angle = 0)
    : Mark(Layer);

/// <summary>Which point of a text stands at its anchor; all are on the base line but the middle ones, at half the capitals' height.</summary>
public enum Anchor
{
    /// <summary>Left end on the base line.</summary>
    Left,

    /// <summary>Center on the base line.</summary>
    Center,

    /// <summary>Right end on the base line.</summary>
    Right,

    /// <summary>Left end at half height.</summary>
    MiddleLeft,

    /// <summary>Center at half height.</summary>
    Middle,

    /// <summary>Right end at half height.</summary>
    MiddleRight,
}

/// <summary>A named family of marks drawn with one ink.</summary>
/// <param name="Name">Name: the layer's name in DXF, the group's class in SVG. Letters, digits, hyphen.</param>
/// <param name="Ink">How its lines are drawn on paper.</param>
/// <param name="Color">Color number of the layer in DXF (group code 62), 1 to 255; 7 is black or white.</param>
/// <param name="IsDrilled">Whether full circles are circles in DXF, which a controller picks for its drill; else they are closed polylines.</param>
public sealed record Layer(string Name, Ink Ink, int Color = 7, bool IsDrilled = false);

/// <summary>Weight, dash and tone of a line.</summary>
/// <param name="Width">Line width [mm].</param>
/// <param name="Dash">Lengths of dash, gap, dash, gap ... [mm]; null is an unbroken line.</param>
/// <param name="Tone">0 is black, 1 is white.</param>
public sealed record Ink(double Width, IReadOnlyList<double>? Dash = null, double Tone = 0);
