using System.Text.Json;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Figures;

public class HullFiguresTests
{
    private const double L = 5, B = 0.5, T = 0.3125;

    [Fact]
    public void Figures_of_the_parabolic_hull_are_its_closed_forms()
    {
        var hull = WigleyHull.Bicubic(L, B, T, 3);
        var figures = HullFigures.Of(hull, UprightHydrostatics.Below(hull, T, 1e-9)).SelectMany(g => g.Figures).ToDictionary(FigureJson.KeyOf, StringComparer.Ordinal);
        var volume = 4 / 9.0 * L * B * T;
        Near(L, "length_m");
        Near(B, "beam_m");
        Near(T, "draft_m");
        Near(L, "waterline_length_m");
        Near(volume, "volume_m3");
        Near(volume * 999.1026, "displacement_fresh_kg");
        Near(volume * 1026.021, "displacement_sea_kg");
        Near(2 / 3.0 * L * B * 999.1026, "immersion_fresh_kg_per_m");
        Near(0.5, "center_of_buoyancy_part");
        Near(2 / 3.0, "prismatic");
        Near(2 / 3.0, "entry_fullness");
        Near(2 / 3.0, "run_fullness");
        Near(2 / 3.0, "sheer_fullness_fore");
        Near(2 / 3.0, "sheer_fullness_aft");
        Near(0.5, "widest_part");
        Near(2 / 3.0 * B * T, "greatest_section_area_m2");
        Near(Math.Atan(2 * B / L), "entry_angle_rad"); // tan iE = 2B/L
        Near((5 / 8.0 * T) + (3 * B * B / (35 * T)), "metacenter_height_m");

        void Near(double expected, string key) => Assert.Equal(expected, figures[key].Value!.Value, 2e-9 * expected);
    }

    [Fact]
    public void Length_and_beam_are_measured_on_the_surface_not_copied_from_the_dials()
    {
        // A hull a tenth wider and longer than its dials say.
        var hull = SampleHulls.TransomBoat();
        var net = new Point3[hull.Side.U.Count, hull.Side.V.Count];
        for (var i = 0; i < hull.Side.U.Count; i++)
        {
            for (var j = 0; j < hull.Side.V.Count; j++)
                net[i, j] = hull.Side.PoleAt(i, j) is var p ? new Point3(1.1 * p.X, 1.1 * p.Y, p.Z) : default;
        }

        var wider = new HullSurface(new BSplineSurface(hull.Side.U, hull.Side.V, net), hull.Dials, hull.WidestU, hull.WaterlineV);
        var (one, other) = (Dimensions(hull), Dimensions(wider));
        Assert.Equal(1.1 * one["length_m"], other["length_m"], 1e-9);
        Assert.Equal(1.1 * one["beam_m"], other["beam_m"], 1e-9);
        Assert.Equal(hull.Dials.Length, one["length_m"], 1e-9);

        static Dictionary<string, double> Dimensions(HullSurface hull) =>
            HullFigures.Dimensions(hull, UprightHydrostatics.Below(hull, hull.Draft, 1e-6)).Figures.ToDictionary(FigureJson.KeyOf, f => f.Value!.Value, StringComparer.Ordinal);
    }

    [Fact]
    public void Keel_ends_and_widest_section_read_back_what_was_asked()
    {
        // The dials themselves are the outside here: the figures are measured on the skin.
        var pointed = FormDials.DoubleEnder with { KeelLow = 0.47, Bow = FormDials.DoubleEnder.Bow with { Vee = 9 * FormDials.Degree } };
        var full = FormDials.DoubleEnder with { Widest = 0.49, Bow = FormDials.DoubleEnder.Bow with { SheerFullness = 0.67 }, Stern = (PointedStern)FormDials.DoubleEnder.Stern with { SheerFullness = 0.66 } };
        foreach (var d in (HullDials[])[pointed, full, FormDials.TransomBoat])
        {
            var hull = HullAttempt.AtOnce(d).Surface!;
            var figures = HullFigures.Of(hull, UprightHydrostatics.Below(hull, hull.Draft, 1e-6)).SelectMany(g => g.Figures).ToDictionary(f => f.Key, f => f.Value!.Value, StringComparer.Ordinal);
            List<(string Key, double Asked)> asked =
            [
                ("forefoot_rise", d.Bow.Rocker), ("forefoot_aft", d.Bow.Forefoot), ("keel_lowest", 0),
                ("deadrise", d.Midship.Deadrise), ("flare", d.Midship.Flare),
            ];
            if (d.KeelLow is double low)
                asked.AddRange([("keel_lowest_aft", low * d.Length), ("keel_lowest_part", low)]);
            if (d.Widest is double widest)
                asked.Add(("widest_part", widest));
            if (d.Bow.SheerFullness is double fore)
                asked.Add(("sheer_fullness_fore", fore));
            if (d.Stern.SheerFullness is double aft)
                asked.Add(("sheer_fullness_aft", aft));
            if (d.Bow.Vee is double vee)
                asked.Add(("forefoot_vee", vee));
            if (d.Stern is TransomStern t)
                asked.AddRange([("transom_foot", t.Foot), ("transom_breadth", t.Breadth), ("transom_rake", t.Rake)]);
            else if (d.Stern is PointedStern p)
                asked.AddRange([("heel_rise", p.Rocker), ("heel_ahead", p.Heel)]);
            Assert.All(asked, a => Assert.Equal(a.Asked, figures[a.Key], 1e-5));
        }
    }

    [Fact]
    public void A_crown_on_a_raked_transom_reaches_as_far_past_the_sheer_as_the_rake_takes_it()
    {
        var hull = CrownedHulls.With(SampleHulls.TransomBoat(), 0.05);
        var deck = HullFigures.Of(hull, UprightHydrostatics.Below(hull, hull.Draft, 1e-6)).Single(g => g.Key == "deck").Figures.Single(f => f.Key == "length_over_deck").Value!.Value;

        // On the transom the crown is lower as the sheer is narrower there; in its plane, the tangent of the rake aft for each meter up.
        var rake = ((TransomStern)hull.Dials.Stern).Rake;
        var broadest = Enumerable.Range(0, 2001).Max(k => hull.Side.PointAt(k / 2000.0, 1).Y);
        Assert.Equal(hull.Dials.Length + (0.05 * Math.Tan(rake) * hull.Side.PointAt(1, 1).Y / broadest), deck, 2e-5);
    }

    [Fact]
    public void Densities_are_those_of_the_equation_of_state_of_seawater()
    {
        // UNESCO Technical Papers in Marine Science 44 (1983), EOS-80, at 15 °C; the coefficients from memory, their values at 15 °C
        // checked against the published 999.1016 and 1025.9728 kg/m³. Lines takes ITTC 7.5-02-01-03: 999.1026 and 1026.021.
        const double C = 15, S = 35;
        var pure = 999.842594 + (6.793952e-2 * C) - (9.095290e-3 * C * C) + (1.001685e-4 * Math.Pow(C, 3)) - (1.120083e-6 * Math.Pow(C, 4)) + (6.536332e-9 * Math.Pow(C, 5));
        var a = 0.824493 - (4.0899e-3 * C) + (7.6438e-5 * C * C) - (8.2467e-7 * Math.Pow(C, 3)) + (5.3875e-9 * Math.Pow(C, 4));
        var b = -5.72466e-3 + (1.0227e-4 * C) - (1.6546e-6 * C * C);
        var sea = pure + (a * S) + (b * Math.Pow(S, 1.5)) + (4.8314e-4 * S * S);
        Assert.Equal(999.1016, pure, 1e-4);
        Assert.Equal(1025.9728, sea, 1e-4);
        Assert.Equal(pure, Water.Fresh.Density, 0.01);
        Assert.Equal(sea, Water.Sea.Density, 0.1);
    }

    [Fact]
    public void Keys_are_unique_in_their_group_and_every_figure_of_a_boat_is_known()
    {
        var hull = SampleHulls.TransomBoat();
        foreach (var group in HullFigures.Of(hull, UprightHydrostatics.Below(hull, hull.Draft, 1e-6)))
        {
            Assert.Equal(group.Figures.Count, group.Figures.Select(FigureJson.KeyOf).Distinct(StringComparer.Ordinal).Count());
            Assert.All(group.Figures, f => Assert.Matches("^[a-z][a-z0-9_]*$", FigureJson.KeyOf(f)));
            Assert.All(group.Figures, f => Assert.True(f.Value is { } v && double.IsFinite(v), f.Key));
        }
    }

    [Fact]
    public void Numbers_follow_the_units_that_are_asked()
    {
        // 100 kg is 220.46 lb, a square meter 10.764 ft², a cubic meter 35.315 ft³: exact factors 0.45359237 and 0.3048.
        Assert.Equal("220.5 lb", Show(100, Quantity.Mass, LengthNotation.Inches));
        Assert.Equal("10.76 ft²", Show(1, Quantity.Area, LengthNotation.FeetInches));
        Assert.Equal("35.315 ft³", Show(1, Quantity.Volume, LengthNotation.FeetInches));
        Assert.Equal("56.0 lb/in", Show(1000, Quantity.MassPerLength, LengthNotation.FeetInchesEighths));
        Assert.Equal("10.00 kg/cm", Show(1000, Quantity.MassPerLength, LengthNotation.Millimeters));
        Assert.Equal("4.00 kg m/cm", Show(4, Quantity.TrimMoment, LengthNotation.Millimeters));

        // 4 kg m to a centimeter is 28.932 ft lb, and 2.54 times that to an inch.
        Assert.Equal("73.5 ft lb/in", Show(4, Quantity.TrimMoment, LengthNotation.Inches));
        Assert.Equal("1-2-3+", Show(0.3667125, Quantity.Length, LengthNotation.FeetInchesEighths));
        Assert.Equal("0.615", Show(0.6149, Quantity.Ratio, LengthNotation.Inches));
        Assert.Equal("51.2 %", Show(0.5123, Quantity.Fraction, LengthNotation.Millimeters));

        static string Show(double value, Quantity quantity, LengthNotation notation) => FigureText.Show(new Figure("k", "n", value, quantity), notation);
    }

    [Fact]
    public void Every_number_in_the_file_is_the_figure_to_nine_digits_and_unknowns_say_why()
    {
        var hull = SampleHulls.DoubleEnder();
        foreach (var height in new[] { hull.Draft, -1 })
        {
            var groups = HullFigures.Of(hull, UprightHydrostatics.Below(hull, height, 1e-7));
            var results = new Results("høy/gauge \"x\".toml") { Figures = groups, Molds = [new("molds/mold-01.dxf", 0.3, "bow")] };
            var bytes = FigureJson.Write(results, "0.1.0");
            Assert.Equal(bytes, FigureJson.Write(results, "0.1.0"));
            using var json = JsonDocument.Parse(bytes);
            Assert.Equal("høy/gauge \"x\".toml", json.RootElement.GetProperty("file").GetString());
            Assert.Equal(["version", "file", "figures", "fairness", "molds", "diagnostics"], json.RootElement.EnumerateObject().Select(p => p.Name), StringComparer.Ordinal);
            foreach (var (group, figure) in groups.SelectMany(g => g.Figures.Select(f => (g.Key, f))))
            {
                var (place, key) = (json.RootElement.GetProperty("figures").GetProperty(group), FigureJson.KeyOf(figure));
                if (figure.Value is { } expected)
                    Assert.Equal(expected, place.GetProperty(key).GetDouble(), 5e-9 * Math.Abs(expected));
                else
                    Assert.Equal((JsonValueKind.Null, "nothing is immersed"), (place.GetProperty(key).ValueKind, place.GetProperty(key + "_why").GetString()));
            }

            Assert.Equal(0.3, json.RootElement.GetProperty("molds")[0].GetProperty("x_m").GetDouble());
        }
    }

    [Fact]
    public void A_value_that_is_not_a_number_becomes_null_beside_its_reason()
    {
        FigureGroup group = new("g", "G", [new("x", "X", double.NaN, Quantity.Length)]);
        var text = System.Text.Encoding.UTF8.GetString(FigureJson.Write(new Results("f") { Figures = [group] }, "0"));
        Assert.Contains("\"x_m\": null,\n      \"x_m_why\": \"it came out as NaN\"", text, StringComparison.Ordinal);
    }
}
