using System.Text;
using Lines.Hull.Form;

namespace Lines.Design.Schema;

/// <summary>Writes the table of keys as the page a designer reads.</summary>
public static class SchemaDocument
{
    /// <summary>The keys as Markdown, a section for each table of the file.</summary>
    /// <returns>The page, lines ended by a line feed.</returns>
    public static string Markdown()
    {
        var page = new StringBuilder();
        page.Append("# The keys of a design file\n\n")
            .Append("One file is one vessel, written in TOML. Lengths and angles stand in quotes with their unit: ")
            .Append("`\"5.20 m\"`, `\"740 mm\"`, `\"29 1/8 in\"`, `\"17' 6 1/2\\\"\"`, `\"2-3-5+\"` (feet-inches-eighths, a last `+` or `-` for a ")
            .Append("sixteenth more or less), `\"12 deg\"`. Pure numbers stand without quotes. The decimal mark is a point.\n\n")
            .Append("x runs aft from the foremost point, heights run up from the base line through the lowest point of the keel, and all is ")
            .Append("to the outside of planking. `lines check FILE` lists every fault of reading at once: spelling, units, ranges, and keys that contradict each other. ")
            .Append("Within the ranges below some values still exclude each other; that shows only as the hull is shaped, in order midship section, keel ")
            .Append("and ends, waterline, sheer, skin, so such faults come one group of keys at a time, with the nearest values that do not.\n\n")
            .Append("This page is written from the table the reader itself uses (`src/Lines.Design/Schema/DesignSchema.cs`) and a test keeps it ")
            .Append("true; to write it anew: `LINES_REGENERATE=1 dotnet test tests/Lines.Tests --filter FullyQualifiedName~SchemaDocumentGolden`.\n");
        page.Append("\n## Targets in place of dials\n\n")
            .Append("A target says what the finished hull must have, and the dial left out for it is found: as many dials are left out as targets are given. ")
            .Append("It is met to a part in 100,000; where that cannot be, `lines check` says what excludes it and the nearest value that can be reached. ")
            .Append("`entry_angle` is a target where `entry_fullness` is left out and no other target accounts for that, else it shapes the waterline's end beside it.\n\n")
            .Append("| target | the dials it may stand in place of |\n|---|---|\n");
        foreach (var key in DesignSchema.Keys.Where(k => k.Target is not null))
            page.Append("| `").Append(key.Path).Append("` | ").Append(string.Join(", ", HullTargets.MoversOf(key.Target!.Value).Select(d => $"`{DesignSchema.ByDial[d].Path}`"))).Append(" |\n");
        foreach (var table in DesignSchema.Tables)
            Section(page, DesignSchema.Vessel, table);
        page.Append("\n# Tables that may stand several times\n\n")
            .Append("Each is written in double brackets, once for every one there is; places are in the frame of the main hull.\n");
        foreach (var form in DesignSchema.Repeated)
        {
            Section(page, form, form.Tables[0]);
            if (form.HasHull)
                page.Append('\n').Append(string.Join(", ", form.Tables.Skip(1).Select(t => $"`{form.Head(t.Path)}`"))).Append(" shape its hull: they take the keys of ").Append(string.Join(", ", form.Tables.Skip(1).Select(t => $"`[{t.Path}]`"))).Append(", targets too.\n");
        }

        return page.ToString();
    }

    private static void Section(StringBuilder page, SchemaForm form, SchemaTable table)
    {
        page.Append("\n## ").Append(table.Path.Length == 0 && !form.IsRepeated ? "Head of the file" : $"`{form.Head(table.Path)}`").Append("\n\n").Append(table.Doc).Append("\n\n")
            .Append("| key | written like | range | left out | what it is |\n|---|---|---|---|---|\n");
        foreach (var key in form.Keys.Where(k => k.Table.Equals(table.Path, StringComparison.Ordinal)))
            page.Append(Row(key));
    }

    private static string Row(SchemaKey key)
    {
        var range = key.Kind is KeyKind.Text or KeyKind.Names ? KeyRange.Show(key) + (key.Kind == KeyKind.Names ? " characters each" : " characters")
            : double.IsFinite(key.Least) ? string.Join(", ", key.Bounds.Select(b => $"{b.Side} {b.Words}").Prepend(KeyRange.Show(key))) + (key.Apart is { } apart ? $", {apart.Side} {apart.Words} between them" : "")
            : key.Choices.Count > 0 ? string.Join(" or ", key.Choices.Select(c => $"`\"{c}\"`"))
            : key.Kind == KeyKind.Flag ? "`true` or `false`"
            : "";
        var doc = (key.Stern is null ? "" : $"({key.Stern} stern) ") + key.Doc + (key is { Target: not null, Dial: null } ? " A target in place of a dial." : "") + (key.InPlaceOf is null ? "" : $" In place of `{key.InPlaceOf.Split('.')[^1]}`, not beside it.");
        var substitute = DesignSchema.Keys.FirstOrDefault(k => key.Path.Equals(k.InPlaceOf, StringComparison.Ordinal));
        var otherwise = key.Default ?? (key.Dial is { } dial && HullTargets.MayBeLeftOut.Contains(dial) ? "required, or a target in its place" : substitute is null ? "required" : $"required, or `{substitute.Name}` ({substitute.Stern} stern)");
        return $"| `{key.Name}` | `{key.Example.Replace("|", "\\|", StringComparison.Ordinal)}` | {range} | {otherwise} | {doc} |\n";
    }
}
