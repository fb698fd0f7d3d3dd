namespace Lines.Tests.Support;

/// <summary>Design files to read and to spoil.</summary>
internal static class SampleDesigns
{
    /// <summary>A sound design that gives every key of a pointed stern.</summary>
    public const string Pointed = """
        title = "Gauge Tender"             # printed on every sheet

        [hull]
        length = "5.20 m"
        beam = "740 mm"
        depth = "360 mm"
        draft = "115 mm"
        widest = 0.50
        keel_low = 0.52
        hollow = false

        [hull.bow]
        entry_fullness = 0.62
        sheer_fullness = 0.68
        rocker = "50 mm"
        sheer = "520 mm"
        forefoot = "250 mm"
        vee = "45 deg"
        entry_angle = "12 deg"

        [hull.stern]
        kind = "pointed"
        run_fullness = 0.60
        sheer_fullness = 0.66
        rocker = "40 mm"
        sheer = "480 mm"
        heel = "220 mm"
        vee = "40 deg"
        run_angle = "13 deg"

        [hull.midship]
        deadrise = "6 deg"
        fullness = 0.80
        flare = "6 deg"

        [build]
        planking = "6 mm"
        sheathing = "0.4 mm"
        mold_spacing = "350 mm"
        mold_stock = "15 mm"
        strip_width = "20 mm"
        stem_siding = "25 mm"
        joints = ["3.90 m", "1.30 m"]
        mold_at = ["0.9 m", "1.8 m", "2.6 m", "3.5 m", "4.4 m"]
        strongback_top = "700 mm"

        [rig]
        area = "7.5 m2"
        aft = "2.3 m"
        height = "2.1 m"

        [structure]
        mass = "38 kg"
        at = ["2.6 m", "0 m", "0.2 m"]

        """;

    /// <summary>A sound design with a transom whose foot is given by its immersion, and nothing optional.</summary>
    public const string Transom = """
        title = "Silt Boat"
        [hull]
        length = "13' 9\""
        beam = "3-7-2+"
        depth = "16 1/2 in"
        draft = "5 1/2 in"
        [hull.bow]
        entry_fullness = 0.60
        rocker = "1 in"
        sheer = "24 in"
        forefoot = "12 in"
        [hull.stern]
        kind = "transom"
        run_fullness = 0.70
        immersion = "1 in"
        sheer = "18 in"
        rake = "14 deg"
        breadth = "26 in"
        [hull.midship]
        deadrise = "8 deg"
        fullness = 0.78
        flare = "-2 deg"
        [build]
        planking = "1/4 in"
        [rig]
        area = "50 ft2"
        aft = "6 ft"
        height = "7 ft"
        [structure]
        mass = "90 lb"
        at = ["7 ft", "0 in", "8 in"]

        """;

    /// <summary>What either may be built of and what that costs.</summary>
    public const string Materials = """
        [material]
        wood = "okoume"
        outside_cloth = "163 g/m2"
        bottom_cloth = "4 oz/yd2"
        inside_cloth = "163 g/m2"
        fill_coats = "150 g/m2"
        [price]
        currency = "EUR"
        board_foot = 11.5
        cloth = 9
        resin = 24
        sheet = 45
        profile_sheet = 60
        plywood_sheet = 110

        [appendage]
        area = "0.12 m2"
        chord = "200 mm"
        thickness = 0.1

        """;

    /// <summary>The pointed design with the line of one key replaced; an empty line takes the key out.</summary>
    public static string With(string table, string key, string line) => Replace(Pointed, table, key, line);

    /// <summary>A design with the line of one key replaced.</summary>
    public static string Replace(string design, string table, string key, string line)
    {
        var inside = table.Length == 0;
        var found = false;
        var lines = design.Split('\n').ToList();
        for (var i = 0; i < lines.Count; i++)
        {
            if (lines[i].StartsWith('['))
                inside = lines[i].Equals($"[{table}]", StringComparison.Ordinal);
            if (!inside || !lines[i].StartsWith(key + " =", StringComparison.Ordinal))
                continue;
            lines[i] = line;
            found = true;
        }

        return found ? string.Join('\n', lines) : throw new ArgumentException($"no key {key} in [{table}]", nameof(key));
    }
}
