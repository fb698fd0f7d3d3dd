using Lines.Plans.Paper;

namespace Lines.Plans.Report;

/// <summary>What every user must be told, each in one place of the code: the report, the sheets and the command print these.</summary>
public static class Cautions
{
    /// <summary>What the figures are.</summary>
    public const string Figures = "The figures are estimates for design. They are not a certificate of stability or strength.";

    /// <summary>Who decides.</summary>
    public const string Rules = "Before people are carried, the rules of the place and a licensed designer decide.";

    /// <summary>What an outrigger boat does not do.</summary>
    public const string Outriggers = "Outrigger boats do not right themselves once over, and can pitch over their bows when driven hard.";

    /// <summary>What to try before going out.</summary>
    public const string Trials =
        "Try her close to shore before any trip: swamped, heeled, and climbing back aboard; life jacket on, never alone, with cold water in mind. Seal the flotation and see that it stays sealed.";

    /// <summary>What freeboards are told for.</summary>
    public const string CalmWater = "Freeboards and drafts are for calm water with the crew sitting still where the file puts them.";

    /// <summary>What to do with a print.</summary>
    public const string Print = $"Measure the test square before cutting: {TestSquare.Size} each way, on page 1 of the paper patterns, beside the part in the router files of single parts, once in all-molds.dxf.";

    /// <summary>What stands on every sheet of a hull that is not fair.</summary>
    public const string NotFair = "NOT FAIR: see report";

    /// <summary>A sheet's heading, with the mark of a hull that is not fair.</summary>
    public static string Marked(string heading, bool isFair) => isFair ? heading : $"{heading}   {NotFair}";

    /// <summary>What harms the builder.</summary>
    public const string Shop =
        "Cedar dust and epoxy sensitize; saws and routers bite. Use extraction, a respirator and gloves, and keep hands clear of the blade.";

    /// <summary>Wood dust.</summary>
    public const string Dust = "Cedar dust causes asthma: extraction at the machine, a respirator on.";

    /// <summary>Resin.</summary>
    public const string Epoxy = "Epoxy sensitizes the skin: gloves, fresh air; a full pot heats and smokes, so mix little and pour it out flat.";

    /// <summary>Dust of cured laminate.</summary>
    public const string Glass = "Glass and carbon dust: respirator, gloves, covered arms; sand wet where you can.";

    /// <summary>The router.</summary>
    public const string Router = "Routers bite: check units and origin, hold the sheet down, set the depth, cut air first; outlines carry no tabs.";

    /// <summary>Paper patterns.</summary>
    public const string Paper = "Measure the calibration page before printing the rest.";

    /// <summary>The strongback.</summary>
    public const string Strongback = "Screw the strongback down: a hull tips it.";

    /// <summary>Lifting.</summary>
    public const string Lift = "Two people lift, or three.";

    /// <summary>Those of a report, in the order they are printed.</summary>
    /// <param name="outriggers">Whether the boat has outriggers.</param>
    public static IReadOnlyList<string> For(bool outriggers) => [Figures, Rules, .. outriggers ? [Outriggers] : Array.Empty<string>(), Trials, Print, Shop];
}
