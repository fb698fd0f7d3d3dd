using System.Globalization;
using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Construction.Pieces;
using Lines.Construction.Planking;
using Lines.Kernel.Units;
using Lines.Plans.Building;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Building;

public class BuildingBookTests
{
    private static readonly BuildDials Build = new() { Planking = 0.006, Gunwale = 0.019, Material = new() { BottomCloth = 0.2, Prices = new("USD", 10, 8, 25, 40, 60, 110) } };

    [Fact]
    public void The_planking_table_has_every_mold_with_its_strips_and_every_strip_with_its_length()
    {
        var book = Book(LengthNotation.Millimeters);
        var records = Records(BuildingCsv.Planking(book));
        var molds = book.Molds.Molds.Where(m => m.Kind == MoldKind.Station).ToList();
        Assert.All(records, r => Assert.Equal(6, r.Length));
        foreach (var (mold, row) in molds.Zip(records.Skip(3)))
        {
            Assert.Equal(mold.Name, row[0]);
            Assert.Equal(1000 * mold.X, Number(row[1]), 0.051);
            // Common practice: as many strips as their width goes into the girth, rounded up.
            Assert.Equal(Math.Ceiling(Number(row[2]) / 19), Number(row[3]));
        }

        var strips = records.Skip(4 + molds.Count).Take(book.Strips.Strips.Count).ToList();
        Assert.Equal(book.Strips.Length, 2 * strips.Sum(r => Number(r[1]) + (r[2].Length > 0 ? Number(r[2]) : 0)) / 1000, 0.01);
        Assert.Equal(book.Bends, records.TakeLast(book.Bends.Count).Select(r => r[0].Trim('"')));
    }

    [Theory]
    [InlineData(LengthNotation.Millimeters)]
    [InlineData(LengthNotation.FeetInchesEighths)]
    public void The_bill_names_what_is_bought_and_its_prices_add_up(LengthNotation notation)
    {
        var book = Book(notation);
        var lines = Bill.Of(book);
        string[] wanted = ["Strips, western redcedar", "Inner stem, bow", "Outer stem, bow", "Inner stem, stern", "Outer stem, stern", "Inwales and outwales", "Sheets for molds", "Cloth outside", "Second cloth below the waterline", "Cloth inside", "Resin with hardener"];
        Assert.All(wanted, w => Assert.Contains(lines, l => l.Item == w));
        Assert.Equal(Math.Round(10 * book.Stock.BoardFeet, 2, MidpointRounding.AwayFromZero), lines[0].Price!.Value, 1e-9);
        // 60 oz of cloth to a US gallon of 231 cubic inches; epoxy of 1150 kg/m3.
        var resin = lines.Single(l => l.Item == "Resin with hardener");
        Assert.Equal(Math.Round(25 * book.Weight.Cloth / (60 * 0.028349523125) * 0.003785411784 * 1150, 2, MidpointRounding.AwayFromZero), resin.Price!.Value, 1e-9);
        Assert.Equal(lines.Sum(l => l.Price ?? 0), Bill.Sum(lines)!.Value, 1e-9);
        var records = Records(BuildingCsv.Materials(book));
        Assert.Contains(records, r => r[0] == "Sum of the prices given" && r[4] == Bill.Sum(lines)!.Value.ToString("F2", CultureInfo.InvariantCulture));
    }

    [Fact]
    public void All_hulls_together_take_each_of_a_pair_twice_and_what_they_are_set_up_with_once()
    {
        var pair = Book(LengthNotation.Millimeters) with { IsOneOfPair = true };
        var boat = Book(LengthNotation.Millimeters) with { Outriggers = [("outrigger 1", pair)] };
        var lines = Bill.Of(pair);
        var sheets = lines.Where(l => l.Item is "Sheets for molds" or "Sheets for profile molds").Sum(l => l.Price!.Value);
        var (one, two) = (Bill.SumOf(boat), Bill.SumOf(pair));
        Assert.Equal((2, 2 * one.Mass, 2 * one.BoardFeet, 2 * one.Cloth, 2 * one.Resin), (two.Hulls, two.Mass, two.BoardFeet, two.Cloth, two.Resin));
        Assert.Equal((2 * one.Price) - sheets, two.Price);
        var all = boat.AllHulls!;
        Assert.Equal(["main hull", "outrigger 1", "all"], all.Rows.Select(r => r[0]));
        Assert.Equal((3 * one.Price!.Value) - sheets, Number(all.Rows[2][^1]), 0.005);
        Assert.Equal(3 * lines.Sum(l => l.Cloth), Number(all.Rows[2][4].Split(' ')[0]), 0.001);
        var records = Records(BuildingCsv.Materials(boat));
        Assert.All(records, r => Assert.Equal(all.Columns.Count, r.Length));
        Assert.Contains(records, r => r[0] == "all" && r[1] == "3");
        Assert.Null(pair.AllHulls);
    }

    [Fact]
    public void Of_a_hull_that_comes_apart_rails_are_listed_piece_by_piece_and_fitted_so()
    {
        var book = Book(LengthNotation.Millimeters, Build with { Joints = [1.7, 3.4] });
        var rails = Bill.Of(book).Where(l => l.Item.StartsWith("Inwales and outwales", StringComparison.Ordinal)).ToList();
        Assert.Equal(["Inwales and outwales, piece 1", "Inwales and outwales, piece 2", "Inwales and outwales, piece 3"], rails.Select(l => l.Item));
        Assert.All(rails, l => Assert.EndsWith("they end at the joints", l.Note, StringComparison.Ordinal));

        // The sheer in chords, and 100 mm of each length to trim.
        var sheer = Enumerable.Range(0, 20001).Select(k => book.Hull.Side.PointAt(k / 20000.0, 1)).ToList();
        foreach (var (rail, (fore, aft)) in rails.Zip([(0, 1.698), (1.702, 3.398), (3.402, 9.0)]))
        {
            var along = sheer.Where(p => p.X >= fore && p.X <= aft).ToList();
            Assert.Equal(along.Zip(along.Skip(1)).Sum(c => c.First.DistanceTo(c.Second)) + 0.1, Number(rail.Size.Split(' ')[0]) / 1000, 0.001);
        }

        Assert.Contains(OrderOfWork.Of(book), s => s.What.Contains("cut at every joint", StringComparison.Ordinal));
        Assert.DoesNotContain(OrderOfWork.Of(Book(LengthNotation.Millimeters)), s => s.What.Contains("joint", StringComparison.Ordinal));
    }

    [Fact]
    public void Cloth_is_reckoned_by_the_greatest_girth_wherever_along_the_hull_it_is()
    {
        var book = Book(LengthNotation.Millimeters);
        var side = book.Hull.Side;
        var greatest = Enumerable.Range(1, 399).Max(k =>
        {
            var section = SkinStation.Of(side, book.Hull.Dials.Length * k / 400)!;
            var points = Enumerable.Range(0, 2001).Select(j => section.JetAt(section.Low + ((section.High - section.Low) * j / 2000)).Point).ToList();
            return 2 * points.Zip(points.Skip(1)).Sum(c => c.First.DistanceTo(c.Second));
        });
        var note = Bill.Of(book).Single(l => l.Item == "Cloth outside").Note;
        Assert.StartsWith("length times greatest girth, ", note, StringComparison.Ordinal);
        Assert.Equal(1000 * greatest, Number(note.Split(' ')[4]), 0.11);
    }

    [Fact]
    public void Each_kind_of_sheet_has_a_price_of_its_own_and_one_without_says_so()
    {
        var build = Build with { Joints = [1.7] };
        double? Price(BuildingBook book, string item) => Bill.Of(book).Single(l => l.Item == item).Price;
        var book = Book(LengthNotation.Millimeters, build);
        foreach (var (item, price) in ((string, double)[])[("Sheets for molds", 40), ("Sheets for profile molds", 60), ("Sheets for bulkheads, boatbuilding plywood", 110)])
            Assert.Equal(price * int.Parse(Bill.Of(book).Single(l => l.Item == item).Pieces, CultureInfo.InvariantCulture), Price(book, item));
        var unpriced = Bill.Of(Book(LengthNotation.Millimeters, build with { Material = build.Material with { Prices = build.Material.Prices! with { PlywoodSheet = 0 } } }));
        Assert.Null(unpriced.Single(l => l.Item == "Sheets for bulkheads, boatbuilding plywood").Price);
        Assert.Single(unpriced, l => l.Note.EndsWith("; not priced: the file gives no plywood_sheet in [price]", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_prices_nothing_is_summed()
    {
        var book = Book(LengthNotation.Millimeters, Build with { Material = new() });
        Assert.Null(Bill.Sum(Bill.Of(book)));
        Assert.DoesNotContain("Price", BuildingCsv.Materials(book), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_danger_is_told_at_the_step_where_it_waits()
    {
        var steps = OrderOfWork.Of(Book(LengthNotation.Millimeters, Build with { Joints = [1.7] }));
        string Caution(string start) => steps.First(s => s.What.StartsWith(start, StringComparison.Ordinal)).Caution;
        Assert.Contains("asthma", Caution("Saw the strips"), StringComparison.Ordinal);
        Assert.Contains("gloves", Caution("Wet out the cloth outside"), StringComparison.Ordinal);
        Assert.Contains("cut air first", Caution("Cut the molds"), StringComparison.Ordinal);
        Assert.Contains("Screw the strongback down", Caution("Build the strongback"), StringComparison.Ordinal);
        Assert.Contains("Two people lift", Caution("Lift the hull"), StringComparison.Ordinal);
        Assert.Contains("carbon dust", Caution("Saw the hull apart"), StringComparison.Ordinal);
        Assert.Contains("calibration page", Caution("Print the patterns"), StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_say_they_are_estimates_and_what_is_not_in_them()
    {
        var groups = Book(LengthNotation.Millimeters).Figures;
        var mass = groups.SelectMany(g => g.Figures).Single(f => f.Key == "hull_mass");
        Assert.True(mass.IsEstimate);
        Assert.Contains("thwarts", mass.Note, StringComparison.Ordinal);
        Assert.All(groups[0].Figures.Where(f => f.Quantity == Quantity.Mass), f => Assert.True(f.IsEstimate));
    }

    [Fact]
    public void A_place_where_strips_are_bent_too_far_is_told_with_what_would_do()
    {
        var bend = new StripBend(StripBendKind.Twist, Math.PI / 2, Math.PI / 4, 7, 0.5, 0.06, 0.4, 0.6, 0.003);
        Assert.Equal(
            "Twist: strip 7 from the sheer, 500 mm from the bow and 60 mm up, worst of the stretch from 400 mm to 600 mm, turns 90 deg in a meter, and strips this thick take 45 deg cold; steam it, or laminate two of 3 mm.",
            BendText.Of(bend, Build, LengthNotation.Millimeters));
        Assert.Contains("turns 27 deg in a foot, and strips this thick take 14 deg cold", BendText.Of(bend, Build, LengthNotation.Inches), StringComparison.Ordinal);
        Assert.Contains("leaves 0.059 in (1.5 mm) to plane off 0.236 in (6 mm);", BendText.Of(bend with { Kind = StripBendKind.Facet, Value = 0.00149 }, Build, LengthNotation.Inches), StringComparison.Ordinal);
    }

    private static BuildingBook Book(LengthNotation notation, BuildDials? build = null)
    {
        var hull = SampleHulls.DoubleEnder();
        var dials = build ?? Build;
        var molds = MoldPlan.Of(hull, dials);
        return new BuildingBook("Gauge Tender", hull, dials, molds, CuttingPlan.Of(molds, dials, 1), HullWeight.Of(hull, dials), Piece.Of(hull, dials, molds), notation);
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    // RFC 4180, section 2; no field of these has a quote in it.
    private static List<string[]> Records(string text)
    {
        return [.. text.TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Select(Fields)];

        static string[] Fields(string record)
        {
            List<string> fields = [""];
            var isQuoted = false;
            foreach (var c in record)
            {
                if (c == '"')
                    isQuoted = !isQuoted;
                else if (c == ',' && !isQuoted)
                    fields.Add("");
                else
                    fields[^1] += c;
            }

            return [.. fields];
        }
    }
}
