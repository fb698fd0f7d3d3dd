using System.Text;
using Lines.Design.Schema;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Sections;

namespace Lines.Plans.Figures;

/// <summary>The judgment of the lines as text for a terminal, sizes in millimeters as a loftsman would take them off the floor.</summary>
public static class FairnessText
{
    /// <summary>Verdict, what to mend, and the worst of each family of lines.</summary>
    /// <param name="report">The judgment.</param>
    /// <param name="outrigger">Which outrigger it is of; nothing for the main hull.</param>
    public static string Of(FairnessReport report, string outrigger = "")
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(outrigger);
        var (heading, form) = outrigger.Length == 0 ? ("Fairness", DesignSchema.Vessel) : ($"Fairness of {outrigger}", DesignSchema.Outrigger);
        var text = new StringBuilder(heading).Append("\n  ").Append(report.Verdict).Append('\n');
        foreach (var fault in report.Faults)
        {
            text.Append("  - ").Append(fault.Sentence);
            if (fault.Ease is { } dial)
            {
                var (verb, end) = Turn(report, dial);
                text.Append("; ").Append(verb).Append(' ').Append(form.Shown(DesignSchema.ByDial[dial].Path)).Append(end);
            }

            text.Append('\n');
        }

        foreach (var line in report.MeantHollows)
            text.Append("  - meant: ").Append(line.MeantSentence).Append('\n');

        text.Append("\n  family         lines   hollow mm   meant mm   off batten mm   inflections   curvature pieces\n");
        foreach (var family in report.Lines.GroupBy(l => l.Line.Kind))
        {
            LineFairness hollow = family.MaxBy(l => l.Hollow.Depth)!, batten = family.MaxBy(l => l.Batten.Depth)!;
            text.Append(Invariant($"  {Family(family.Key),-12}{family.Count(),8}{Limits.Millimeters(hollow.Hollow.Depth, hollow.HollowLimit),12}{1000 * family.Max(l => l.Meant.Depth),11:F2}"))
                .Append(Invariant($"{Limits.Millimeters(batten.Batten.Depth, batten.BattenLimit),16}{family.Sum(l => l.UnaskedInflections),14}"))
                .Append(Invariant($"{family.Max(l => l.MonotonePieces),19}\n"));
        }

        if (Between(report) is { } between)
            text.Append("  ").Append(between).Append('\n');
        return text.Append("  ").Append(Allowed(report)).Append('\n').ToString();
    }

    /// <summary>Which way to turn a dial, as the words before and after its key.</summary>
    internal static (string Verb, string End) Turn(FairnessReport report, Dial dial) => report.Trials.FirstOrDefault(t => t.Dial == dial) switch
    {
        null => ("change", ""),
        { Toward: 0 } => ("change", ", but not alone: a step of it either way brings the worst line no nearer"),
        { Fair: null } t => (t.Toward > 0 ? "raise" : "lower", ""),
        var t => (t.Toward > 0 ? "raise" : "lower", $" to {t.Shown}, with which the hull is fair"),
    };

    /// <summary>The deepest hollow between the lines of the plan, in a sentence; null where none was looked for.</summary>
    internal static string? Between(FairnessReport report) => report.Between is { } b
        ? Invariant($"Between these lines, on many more of the same surface, the deepest hollow nobody asked for is {Limits.Millimeters(b.Depth, b.Limit)} mm, on {b.Subject} (allowed {1000 * b.Limit:F2} mm).")
        : null;

    /// <summary>What the lines may be, in a sentence.</summary>
    internal static string Allowed(FairnessReport report)
    {
        var low = report.Lines.Where(l => l.Line.Kind == LineKind.Waterline).Select(l => l.HollowLimit).DefaultIfEmpty(Limits.Hollow).Max();
        return Invariant($"Allowed: {1000 * Limits.Hollow:F2} mm of hollow nobody asked for (waterlines below the design waterline {1000 * low:F2} mm, for they cut the bottom aslant and square to the skin a small part of it is left), ")
            + Invariant($"{1000 * Limits.Batten:F2} mm (1/32 in) off the batten. Convex throughout: nowhere hollow by more than {1000 * Limits.Hollow:F2} mm; ")
            + "inflections count only on lines hollow by more than that. Meant: hollows where they were asked for or must be; look at the deep ones on the plan.";
    }

    /// <summary>What lines of a kind are called together.</summary>
    internal static string Family(LineKind kind) => kind switch
    {
        LineKind.Station => "sections",
        LineKind.Waterline => "waterlines",
        LineKind.Buttock => "buttocks",
        LineKind.Diagonal => "diagonals",
        LineKind.Sheer => "sheer",
        LineKind.Keel => "keel",
        LineKind.Stem => "stem",
        _ => "stern",
    };
}
