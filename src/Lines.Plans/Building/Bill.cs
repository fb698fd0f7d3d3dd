using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Construction.Planking;
using Lines.Kernel.Numerics;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Molds;

namespace Lines.Plans.Building;

/// <summary>One line of the bill of materials.</summary>
/// <param name="Item">What.</param>
/// <param name="Pieces">How many; empty where it is bought by measure.</param>
/// <param name="Size">Of what size; empty where it has none.</param>
/// <param name="Amount">How much of it, with its unit; empty where the pieces say it.</param>
/// <param name="Price">Its price in the design's currency, in whole hundredths; null where the file gives none.</param>
/// <param name="Note">What to know of it.</param>
public sealed record BillLine(string Item, string Pieces, string Size, string Amount, double? Price, string Note)
{
    /// <summary>Wood in it [board feet].</summary>
    public double BoardFeet { get; init; }

    /// <summary>Cloth in it [m²].</summary>
    public double Cloth { get; init; }

    /// <summary>Resin in it [m³].</summary>
    public double Resin { get; init; }

    /// <summary>Whether it is for setting up and serves every hull of a shape: molds, cleats, strongback.</summary>
    public bool IsForSettingUp { get; init; }
}

/// <summary>What all hulls of a shape take together.</summary>
/// <param name="Hulls">How many are built.</param>
/// <param name="Mass">Weight of them all as planked and sheathed [kg].</param>
/// <param name="BoardFeet">Wood [board feet].</param>
/// <param name="Cloth">Cloth [m²].</param>
/// <param name="Resin">Resin with hardener [m³].</param>
/// <param name="Price">Sum of the prices that are known; null where none is.</param>
public readonly record struct BillSum(int Hulls, double Mass, double BoardFeet, double Cloth, double Resin, double? Price)
{
    /// <summary>Two sums as one.</summary>
    public static BillSum operator +(BillSum a, BillSum b) =>
        new(a.Hulls + b.Hulls, a.Mass + b.Mass, a.BoardFeet + b.BoardFeet, a.Cloth + b.Cloth, a.Resin + b.Resin, a.Price is null && b.Price is null ? null : (a.Price ?? 0) + (b.Price ?? 0));
}

/// <summary>What is bought and cut for a hull.</summary>
/// <remarks>Fastenings, thwarts, decks and fittings are left to the builder.</remarks>
public static class Bill
{
    /// <summary>Longer than the part by so much: ends to trim [m].</summary>
    private const double Trim = 0.10;

    private const int PiecesOfSheerRail = 2;

    /// <summary>The lines of the bill.</summary>
    /// <param name="book">The design as it is built.</param>
    public static IReadOnlyList<BillLine> Of(BuildingBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        return [.. Wood(book), .. Sheets(book), .. Cloth(book), .. LeftToTheBuilder()];
    }

    /// <summary>The sum of the prices that are known; null where none is.</summary>
    public static double? Sum(IReadOnlyList<BillLine> lines) => lines.Any(l => l.Price is not null) ? lines.Sum(l => l.Price ?? 0) : null;

    /// <summary>What the hulls of a shape take together, both of a pair.</summary>
    /// <param name="book">The design as it is built.</param>
    public static BillSum SumOf(BuildingBook book)
    {
        var lines = Of(book);
        var hulls = book.IsOneOfPair ? 2 : 1;
        return new BillSum(
            hulls, hulls * book.Weight.Mass, hulls * lines.Sum(l => l.BoardFeet), hulls * lines.Sum(l => l.Cloth), hulls * lines.Sum(l => l.Resin),
            Sum(lines) is null ? null : lines.Sum(l => (l.IsForSettingUp ? 1 : hulls) * (l.Price ?? 0)));
    }

    private static IEnumerable<BillLine> Wood(BuildingBook book)
    {
        var (build, stock, notation) = (book.Build, book.Stock, book.Notation);
        var wood = build.Material.Wood.Name;
        var price = Price(build, p => p.BoardFoot);
        yield return new BillLine(
            $"Strips, {wood}", "", $"{Size(build.StripWidth, notation)} x {Size(build.Planking, notation)}", Invariant($"{Running(stock.ToBuy, notation)}, {stock.BoardFeet:F1} board feet"), Cents(price * stock.BoardFeet),
            Invariant($"{Running(stock.Net, notation)} on the hull; {stock.Scarfs} scarfs in boards of {new Length(build.BoardLength).ToText(notation)}, {100 * build.Waste:0.#} % waste"))
        { BoardFeet = stock.BoardFeet };
        foreach (var (name, bow) in ((string, bool)[])[("bow", true), ("stern", false)])
        {
            if (HullWeight.StemLength(book.Hull, bow) is not (> 0 and var length))
                continue;
            var depth = book.Molds.Molds.FirstOrDefault(m => m.Kind == (bow ? MoldKind.Stem : MoldKind.Stern))?.InnerStemDepth;
            yield return Rail($"Inner stem, {name}", 1, length, build.StemSiding, Math.Max(build.StemMolding, Math.Ceiling(1000 * (depth ?? 0)) / 1000), StemNote(depth > build.StemMolding, depth is not null));
            yield return Rail($"Outer stem, {name}", 1, length, build.StemSiding, build.StemMolding, "laminate or saw; it covers the ends of the planking");
        }

        foreach (var piece in build.Gunwale > 0 ? book.Pieces : [])
        {
            var (named, ends) = book.Pieces.Count > 1 ? (Invariant($", piece {piece.Number}"), "; they end at the joints") : ("", "");
            yield return Rail($"Inwales and outwales{named}", 2 * PiecesOfSheerRail, HullWeight.SheerLength(book.Hull, piece.Fore, piece.Aft), build.Gunwale, build.Gunwale, $"scarf where boards are shorter{ends}");
        }

        BillLine Rail(string name, int pieces, double length, double across, double deep, string note)
        {
            var feet = pieces * (length + Trim) * (across + build.SawKerf) * (deep + build.SawKerf) / StripStock.BoardFoot;
            return new BillLine(
                name, Invariant($"{pieces}"), $"{new Length(length + Trim).ToText(notation)} x {Size(across, notation)} x {Size(deep, notation)}", Invariant($"{feet:F1} board feet"), Cents(price * feet), note)
            { BoardFeet = feet };
        }
    }

    private static string StemNote(bool deeper, bool told) =>
        "laminate or saw to the profile mold; bevel it to the line APEX" + (deeper ? ", which is as far off the mold's edge as this at the finest bevel" : told ? "" : "; no APEX is drawn, so measure its depth on the molds first");

    private static IEnumerable<BillLine> Sheets(BuildingBook book)
    {
        var (build, notation) = (book.Build, book.Notation);
        foreach (var stock in book.Cutting.Stocks)
        {
            var (sheets, count) = (stock.Sheets.Count, stock.Molds.Count());
            var (key, price) = stock.StaysInBoat ? ("plywood_sheet", Price(build, p => p.PlywoodSheet))
                : stock.Thickness == build.MoldStock ? ("sheet", Price(build, p => p.Sheet)) : ("profile_sheet", Price(build, p => p.ProfileSheet));
            var unpriced = build.Material.Prices is not null && price is null ? $"; not priced: the file gives no {key} in [price]" : "";
            yield return new BillLine(
                $"Sheets for {stock.Parts}{(stock.StaysInBoat ? ", boatbuilding plywood" : "")}", Invariant($"{sheets}"),
                $"{new Length(build.SheetLength).ToText(notation)} x {new Length(build.SheetWidth).ToText(notation)} x {Size(stock.Thickness, notation)}", "", Cents(price * sheets),
                Invariant($"{count} {(count == 1 ? "part" : "parts")}, {new Length(stock.Sheets[^1].UsedLength).ToText(notation)} of the last sheet used; cutting-list.pdf shows them{(stock.Molds.Any(m => m.IsHalf) ? "; halves are patterns to turn over, whole molds take about twice the stock" : "")}{unpriced}"))
            { IsForSettingUp = !stock.StaysInBoat };
        }

        if (book.Molds.Bulkheads.SelectMany(b => b.Holes).Count(h => h.Kind == MoldHoleKind.Bolt) / 2 is > 0 and var bolts)
            yield return new BillLine("Bolts of the joints, with nuts and two large washers each", Invariant($"{bolts}"), Size(build.JointBolt, notation), "", null, "stainless; long enough for both bulkheads, washers and nut");
        var s = book.Molds.Strongback;
        yield return new BillLine("Strongback", "1", $"{new Length(s.Length).ToText(notation)} x {new Length(s.Width).ToText(notation)} over the top", "", null, "straight, level, screwed to the floor or heavily loaded") { IsForSettingUp = true };
        if (book.Molds.Molds.Where(m => m.Kind == MoldKind.Station).ToList() is [var first, ..] stations)
        {
            var cleat = new Length(FootDetail.Cleat(first)).ToText(notation);
            yield return new BillLine("Cleats of the molds", Invariant($"{stations.Count}"), $"{new Length(s.Width).ToText(notation)} x {cleat} x {cleat}", "", null, "setting-up.pdf shows where they stand") { IsForSettingUp = true };
        }
    }

    private static IEnumerable<BillLine> Cloth(BuildingBook book)
    {
        var (build, weight, notation) = (book.Build, book.Weight, book.Notation);
        var with = build.Material;
        var (girth, bottom) = Girths(book);
        foreach (var (name, cloth, across, skin) in ((string, double, double, double)[])
        [
            ("Cloth outside", with.OutsideCloth, girth, weight.Layer.Outside), ("Second cloth below the waterline", with.BottomCloth, bottom, weight.Bottom), ("Cloth inside", with.InsideCloth, girth, weight.Layer.Inside),
        ])
        {
            if (cloth <= 0)
                continue;
            var area = LayupRules.ClothToBuy(book.Hull.Dials.Length, across);
            yield return new BillLine(
                name, "", new ArealMass(cloth).ToText(notation != LengthNotation.Millimeters), Area(area, notation), Cents(Price(build, p => p.Cloth) * area),
                $"length times greatest girth, {new Length(across).ToText(notation)}; {Area(skin, notation)} of skin")
            { Cloth = area };
        }

        if (weight.Cloth > 0)
        {
            var volume = LayupRules.ResinToBuy(weight.Cloth);
            yield return new BillLine(
                "Resin with hardener", "", "", Resin(volume, notation),
                Cents(Price(build, p => p.Resin) * volume * LayupRules.EpoxyDensity), "a US gallon to 60 oz of cloth, all coats, losses in the pot (suppliers' worksheets); glue and fillets besides")
            { Resin = volume };
        }
    }

    // Around the outside, both sides, where each is greatest along the hull: the whole, and what lies below the design waterline.
    private static (double Whole, double Bottom) Girths(BuildingBook book)
    {
        const double tolerance = 1e-6;
        const int places = 16;
        var hull = book.Hull;
        return (Greatest(1), Greatest(hull.WaterlineV));

        double Greatest(double top) => 2 * Peak.Over(
            x => SkinStation.Of(hull.Side, x) is { } s ? s.Girth(s.Low, Math.Min(s.High, top), tolerance) : 0, [.. Enumerable.Range(0, places + 1).Select(k => hull.Dials.Length * k / places)]).Value;
    }

    private static IEnumerable<BillLine> LeftToTheBuilder() =>
        [new("Fastenings, thwarts, seats, decks, fittings, varnish or paint", "", "", "", null, "left to the builder")];

    /// <summary>Resin by volume and by weight.</summary>
    internal static string Resin(double volume, LengthNotation notation)
    {
        var mass = volume * LayupRules.EpoxyDensity;
        return notation == LengthNotation.Millimeters ? Invariant($"{1000 * volume:F1} L, {mass:F1} kg") : Invariant($"{volume / LayupRules.Gallon:F2} US gal, {mass / Mass.Pound:F1} lb");
    }

    // Rounded line by line, so that the lines add up to the sum.
    private static double? Cents(double? price) => price is { } p ? Math.Round(p, 2, MidpointRounding.AwayFromZero) : null;

    private static double? Price(BuildDials build, Func<Prices, double> of) => build.Material.Prices is { } prices && of(prices) > 0 ? of(prices) : null;

    private static string Size(double meters, LengthNotation notation) => new Length(meters).ToSize(notation);

    private static string Running(double meters, LengthNotation notation) =>
        notation == LengthNotation.Millimeters ? Invariant($"{meters:F0} m") : Invariant($"{meters / Length.Foot:F0} ft");

    internal static string Area(double squareMeters, LengthNotation notation) => FigureText.Show(new Figure("", "", squareMeters, Quantity.Area), notation);
}
