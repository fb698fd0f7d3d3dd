using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>A hull near one already shaped: as good a picture as the hull itself, and never more than that.</summary>
public class PreviewTests
{
    /// <summary>A line of a lines plan at a tenth of full size is 2 mm of the boat wide.</summary>
    private const double Seen = 0.002;

    private static readonly HullDials s_transom = FormDials.TransomBoat with { Widest = 0.5 };

    public static TheoryData<string, bool> Moves
    {
        get
        {
            var moves = new TheoryData<string, bool>();
            foreach (var transom in (bool[])[false, true])
            {
                foreach (var dial in (string[])["entry", "run", "beam", "length", "draft", "rocker", "midship", "deadrise", "flare"])
                    moves.Add(dial, transom);
            }

            return moves;
        }
    }

    [Theory]
    [MemberData(nameof(Moves))]
    public void A_hull_with_one_dial_moved_is_seen_where_it_will_be(string dial, bool transom)
    {
        var d = transom ? s_transom : FormDials.DoubleEnder;
        var moved = Moved(d, dial);
        var asked = HullShape.Solve(moved).Surface!;
        var seen = HullShape.Preview(moved, HullShape.Solve(d).Surface!);
        for (var i = 0; i <= 40; i++)
        {
            for (var j = 0; j <= 20; j++)
                Assert.InRange(asked.Side.PointAt(i / 40.0, j / 20.0).DistanceTo(seen.Side.PointAt(i / 40.0, j / 20.0)), 0, Seen);
        }

        double volume = Volume(asked);
        Assert.InRange(Math.Abs(Volume(seen) - volume) / volume, 0, 1e-3);
    }

    [Fact]
    public void A_hull_near_itself_is_that_hull()
    {
        var hull = HullShape.Solve(FormDials.DoubleEnder).Surface!;
        var again = HullShape.Preview(FormDials.DoubleEnder, hull);
        Assert.InRange(Math.Abs(Volume(again) - Volume(hull)) / Volume(hull), 0, 1e-5);
    }

    private static double Volume(HullSurface hull) => UprightHydrostatics.Below(hull, hull.Draft, 1e-8).Volume;

    private static HullDials Moved(HullDials d, string dial) => dial switch
    {
        "entry" => DialAccess.With(d, Dial.EntryFullness, d.Bow.EntryFullness + 0.005),
        "run" => DialAccess.With(d, Dial.RunFullness, d.Stern.RunFullness + 0.005),
        "beam" => DialAccess.With(d, Dial.Beam, 1.01 * d.Beam),
        "length" => DialAccess.With(d, Dial.Length, 1.01 * d.Length),
        "draft" => DialAccess.With(d, Dial.Draft, 1.02 * d.Draft),
        "rocker" => DialAccess.With(d, Dial.BowRocker, d.Bow.Rocker + 0.003),
        "midship" => DialAccess.With(d, Dial.MidshipFullness, d.Midship.Fullness - 0.005),
        "deadrise" => DialAccess.With(d, Dial.Deadrise, d.Midship.Deadrise + (0.5 * FormDials.Degree)),
        _ => DialAccess.With(d, Dial.Flare, d.Midship.Flare + (0.5 * FormDials.Degree)),
    };
}
