using System.Text;
using System.Text.Json;
using Lines.Hull.Offsets;
using Lines.Kernel.Units;

namespace Lines.Plans.Offsets;

/// <summary>What came of laying the lines down again from the rounded table of offsets, in words and for programs.</summary>
public static class OffsetsRefitReport
{
    /// <summary>The judgment as plain text, one line of it for each line of the hull, lengths in millimeters.</summary>
    /// <param name="refit">The judgment.</param>
    public static string Text(OffsetsRefit refit)
    {
        ArgumentNullException.ThrowIfNull(refit);
        var width = refit.Lines.Max(l => l.Name.Length);
        var text = new StringBuilder()
            .Append(Invariant($"Table rounded to {1000 * refit.Step:F2} mm, every line refitted from it alone; departures in mm,\n"))
            .Append(Invariant($"at the stations at most {500 * refit.Step:F2}, between them at most {1000 * refit.Step:F2}.\n\n"))
            .Append("line".PadRight(width)).Append("  at stations  between    at x  moved by rounding\n");
        foreach (var line in refit.Lines)
        {
            text.Append(line.Name.PadRight(width))
                .Append(Invariant($"{1000 * line.AtStations,13:F2}{1000 * line.Between,9:F2}{1000 * line.X,8:F0}{1000 * line.Moved,19:F2}"))
                .Append(refit.Within(line) ? "\n" : "  too far\n");
        }

        return text.Append('\n').Append(Verdict(refit)).Append('\n').ToString();
    }

    /// <summary>The judgment in one sentence.</summary>
    /// <param name="refit">The judgment.</param>
    public static string Verdict(OffsetsRefit refit)
    {
        ArgumentNullException.ThrowIfNull(refit);
        var worst = refit.Worst;
        return refit.Holds
            ? Invariant($"The table holds: {worst.Name} departs furthest, {1000 * worst.Between:F2} mm at x = {1000 * worst.X:F0} mm.")
            : Invariant($"The table does not hold: {refit.Lines.Count(l => !refit.Within(l))} of {refit.Lines.Count} lines depart too far; worst, {worst.Name}, {1000 * worst.Between:F2} mm at x = {1000 * worst.X:F0} mm. Take those lines from the plan (draw -o plan.dxf){(refit.Step > LengthNotation.Millimeters.Step() ? ", or the table in millimeters (--units mm)" : "")}.");
    }

    /// <summary>The judgment as one JSON object.</summary>
    /// <param name="refit">The judgment.</param>
    /// <param name="file">The design file as it was named.</param>
    /// <param name="version">Version of the program.</param>
    /// <returns>UTF-8 text ended by a line feed.</returns>
    public static byte[] Json(OffsetsRefit refit, string file, string version)
    {
        ArgumentNullException.ThrowIfNull(refit);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("version", version);
            json.WriteString("file", file);
            json.WriteStartObject("offsets");
            json.WriteNumber("step_m", refit.Step);
            json.WriteBoolean("holds", refit.Holds);
            json.WriteStartArray("lines");
            foreach (var line in refit.Lines)
            {
                json.WriteStartObject();
                json.WriteString("line", line.Name);
                json.WriteNumber("at_stations_m", line.AtStations);
                json.WriteNumber("between_m", line.Between);
                json.WriteNumber("at_x_m", line.X);
                json.WriteNumber("moved_by_rounding_m", line.Moved);
                json.WriteBoolean("holds", refit.Within(line));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteStartArray("diagnostics");
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }
}
