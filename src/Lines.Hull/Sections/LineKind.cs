namespace Lines.Hull.Sections;

/// <summary>What a line of the hull is.</summary>
public enum LineKind
{
    /// <summary>Cut by a plane square to the keel, constant x.</summary>
    Station,

    /// <summary>Cut by a level plane, constant z.</summary>
    Waterline,

    /// <summary>Cut by a plane alongside the centerplane, constant y.</summary>
    Buttock,

    /// <summary>Cut by a plane that runs lengthwise and slopes down from the centerplane.</summary>
    Diagonal,

    /// <summary>The upper edge of the skin.</summary>
    Sheer,

    /// <summary>The lower edge of the skin, in the centerplane.</summary>
    Keel,

    /// <summary>The fore edge of the skin, in the centerplane.</summary>
    Stem,

    /// <summary>The after edge of the skin: sternpost in the centerplane, or outline of the transom.</summary>
    Stern,

    /// <summary>Cut by some other plane.</summary>
    Other,
}
