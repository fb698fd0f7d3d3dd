using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Report;

namespace Lines.Plans.Molds;

/// <summary>The second page of the setting-up sheet: the molds in plan, foot and cleat with their sizes, and the angles of the planking at every mold.</summary>
public static class FootSheet
{
    private const double UnderTitle = 2;
    private const double DetailWidth = 88;
    private const double DetailHeight = 58;
    private const double Between = 6;

    /// <summary>The page; more where the table needs them.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="hull">The hull.</param>
    /// <param name="plan">Its molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="isFair">Whether the hull is fair; one that is not is marked so.</param>
    public static IReadOnlyList<Sheet> Of(string title, HullSurface hull, MoldPlan plan, LengthNotation notation, bool isFair = true)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(plan);

        // A smaller plan may leave room for the tables, and for those of stem and stern each whole.
        var pages = new[] { true, false }.SelectMany(whole => SettingUpView.Within(hull, plan, notation, SettingUpPage.Room.Width).Select(v => Pages(title, hull, plan, notation, isFair, v.Scale, whole)));
        return pages.FirstOrDefault(p => p.Count == 1) ?? pages.First();
    }

    private static List<Sheet> Pages(string title, HullSurface hull, MoldPlan plan, LengthNotation notation, bool isFair, int scale, bool endsWhole)
    {
        var notes = Notes(plan, notation).ToList();
        var stations = plan.Molds.Where(m => m.Kind == MoldKind.Station).ToList();
        var pages = new List<Sheet>();
        var ends = EndTable.Rows(plan, notation);
        for (var next = 0; next < stations.Count || ends.Count > 0;)
        {
            var page = new SettingUpPage(Cautions.Marked("Setting up: plan, feet and bevels", isFair), title);
            var marks = page.Marks;
            var room = SettingUpPage.Room with { Top = SettingUpPage.Room.Top - SettingUpPage.TitleBand - UnderTitle };
            var left = room with { Right = room.Left + DetailWidth };
            if (pages.Count == 0)
            {
                room = room with { Top = PlanView.Draw(marks, hull, plan, notation, room, scale) - Between, Bottom = room.Bottom + SettingUpPage.HeightOf(notes) + 2 };
                page.Note(notes);
                left = room with { Right = left.Right };
                left = left with { Top = FootDetail.Draw(marks, plan, stations, notation, left with { Bottom = Math.Max(left.Bottom, left.Top - DetailHeight) }) - Between };
            }

            room = room with { Left = left.Right + Between };
            var atLeft = Fit(left.Height, 0);
            var rows = Math.Min(stations.Count - next, PageTable.Rows(room.Height));
            var below = next + rows == stations.Count ? Fit(room.Height - PageTable.HeightOf(rows) - Between, atLeft) : 0;
            double rowAtLeft = RowOf(left.Height, atLeft, 1), row = RowOf(room.Height - (below > 0 ? Between : 0), rows + below, below > 0 ? 2 : 1);
            if (atLeft > 0)
                EndTable.Table(notation).Draw(marks, left, ends.Take(atLeft), rowAtLeft);
            if (rows > 0)
                AngleTable.Table(notation).Draw(marks, room, stations.Skip(next).Take(rows).Select(m => AngleTable.Cells(m, plan.Strongback, notation)), row);
            if (below > 0)
                EndTable.Table(notation).Draw(marks, new Box2(room.Left, room.Bottom, room.Left + DetailWidth, room.Top - PageTable.HeightOf(rows, row) - Between), ends.Skip(atLeft).Take(below), row);
            next += rows;
            ends = [.. ends.Skip(atLeft + below)];

            // How many rows of the ends go into a height; those that find no room here go over to the next page.
            int Fit(double height, int from)
            {
                var fit = Math.Min(ends.Count - from, PageTable.Rows(height));
                var whole = endsWhole ? Enumerable.Range(0, fit + 1).Last(n => n == 0 || from + n == ends.Count || !string.Equals(ends[from + n][0], ends[from + n - 1][0], StringComparison.Ordinal)) : 0;
                return endsWhole && (whole > 0 || pages.Count == 0) ? whole : fit;
            }

            pages.Add(page.ToSheet($"{title}: setting up, feet and bevels"));
        }

        return pages;
    }

    // The height of a row where so many, in so many tables, stand in a column.
    private static double RowOf(double height, int rows, int tables) => Math.Clamp((height - (tables * PageTable.Head)) / Math.Max(rows, 1), PageTable.LeastRow, SettingUpTable.GreatestRow);

    private static IEnumerable<string> Notes(MoldPlan plan, LengthNotation notation)
    {
        var stations = plan.Molds.Where(m => m.Kind == MoldKind.Station).ToList();
        var across = new Length(FootDetail.Cleat(stations[0])).ToText(notation);
        yield return Invariant($"{stations.Count} cleats, {new Length(plan.Strongback.Width).ToText(notation)} long, {across} square, one to each mold on its midship side: screw them down one stock from the line, square across, then the molds to them, the nick in the foot on the centerline.");
        if (plan.Molds.SelectMany(m => m.Holes).FirstOrDefault(h => h.Kind == MoldHoleKind.Sight) is { } sight)
        {
            yield return $"Sighting holes, {new Length(sight.At.Y).ToText(notation)} above the strongback top and {new Length(Math.Abs(sight.At.X)).ToText(notation)} to each side: "
                + "stretch a string, or look at a lamp, through each row; it stands in the middle of every hole when the molds stand true.";
        }

        yield return "Bevel: the planking's angle to a square edge. Molds cut to the labeled face need none planed; plane back a mold cut to its far face by these. Bilge: where the section runs at 45 degrees.";
        if (plan.Molds.Any(m => m.Kind is MoldKind.Stem or MoldKind.Stern))
            yield return "Bevel of stem and stern: planking to the side of the inner stem, square to its edge; plane from the corners of the mold's edge out to the line APEX, which this makes. FOOT: where stem and keel meet.";
        if (plan.Molds.Any(m => m.Kind is MoldKind.Transom))
            yield return "Bevel of the transom: from square, plus where the fore face is the larger.";
        yield return "Plain inset: by how much a mold would be too big that is made by drawing the planking's thickness inside the hull's outline. These molds have it square to the skin and are not.";
        yield return $"{Cautions.Strongback} {Cautions.Lift}";
    }
}
