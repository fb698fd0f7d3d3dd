namespace Lines.EndToEnd.Tests.Support;

/// <summary>Designs for the journeys.</summary>
public static class Designs
{
    /// <summary>A hull that builds and is not fair: a steep vee on a fine entry, with hollow lines allowed, turns the first buttock hard.</summary>
    public const string Unfair = """
        title = "Gauge Tender"

        [hull]
        length = "5.20 m"
        beam   = "740 mm"
        depth  = "360 mm"
        draft  = "115 mm"
        widest = 0.50
        hollow = true

        [hull.bow]
        entry_fullness = 0.62
        sheer_fullness = 0.68
        rocker   = "50 mm"
        sheer    = "520 mm"
        forefoot = "250 mm"
        vee      = "45 deg"
        entry_angle = "12 deg"

        [hull.stern]
        kind = "pointed"
        run_fullness = 0.60
        rocker = "40 mm"
        sheer = "480 mm"
        heel = "220 mm"

        [hull.midship]
        deadrise = "6 deg"
        fullness = 0.80
        flare    = "6 deg"

        [build]
        planking = "6 mm"
        sheathing = "0.4 mm"
        mold_spacing = "300 mm"
        mold_stock = "12 mm"
        strip_width = "19 mm"
        stem_siding = "19 mm"
        joints = ["1.30 m", "3.90 m"]
        """;

    /// <summary>The text of the first template.</summary>
    public static string Runner() => File.ReadAllText(Lines.Tests.Support.Repository.PathOf("templates", "gauge-runner.toml"));
}
