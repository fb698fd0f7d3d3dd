using Lines.Kernel.Geometry;

namespace Lines.Drawing.Text;

/// <summary>Letters with accents, each a letter of the alphabet with a mark over or under it.</summary>
/// <remarks>
/// <para><b>Method.</b> A table of our own instead of Unicode's decomposition, which the runtime leaves out when it runs
/// without culture data: the lettering must not depend on how the program was started.</para>
/// </remarks>
internal static class Accents
{
    /// <summary>The accented letter, the letter it stands on and its marks.</summary>
    public static IEnumerable<(char Letter, char Base, char Mark)> Letters =>
        Table.Split(' ').Select(t => (t[0], t[1], t[2]));

    private const string Table =
        "ÀA` ÁA' ÂA^ ÃA~ ÄA: ÅAo ÇC, ÈE` ÉE' ÊE^ ËE: ÌI` ÍI' ÎI^ ÏI: ÑN~ ÒO` ÓO' ÔO^ ÕO~ ÖO: ÙU` ÚU' ÛU^ ÜU: ÝY' " +
        "àa` áa' âa^ ãa~ äa: åao çc, èe` ée' êe^ ëe: ìı` íı' îı^ ïı: ñn~ òo` óo' ôo^ õo~ öo: ùu` úu' ûu^ üu: ýy' ÿy: " +
        "ĆC' ćc' ČCv čcv ĎDv ĚEv ěev ŁL/ łl/ ŃN' ńn' ŇNv ňnv ŘRv řrv ŚS' śs' ŠSv šsv ŹZ' źz' ŻZ. żz. ŽZv žzv ŐO\" őo\" ŰU\" űu\" ŮUo ůuo " +
        "ĀA- āa- ĒE- ēe- ĪI- īı- ŌO- ōo- ŪU- ūu- ŞS, şs, ŢT, ţt, İI.";

    /// <summary>Strokes of a mark about x = 0, to be raised to the top of its letter (or set at the base line for those below).</summary>
    public static string Strokes(char mark) => mark switch
    {
        '`' => "-1,3.4 0.6,1.4",
        '\'' => "1,3.4 -0.6,1.4",
        '^' => "-1.8,1.4 0,3.4 1.8,1.4",
        'v' => "-1.8,3.4 0,1.4 1.8,3.4",
        '~' => "-2,2 @-90 0,2 @90 2,2",
        ':' => "-1.6,1.8 -1.6,2.7 | 1.6,1.8 1.6,2.7",
        'o' => "-1.2,2.4 @180 1.2,2.4 @180 z",
        '.' => "0,1.8 0,2.7",
        '-' => "-2,2 2,2",
        '"' => "-0.4,3.4 -1.6,1.4 | 1.8,3.4 0.6,1.4",
        '/' => "-1.6,-6.6 1.8,-4.6",
        ',' => "0,0 0,-1 @-180 0,-3 -0.8,-3",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "no such mark"),
    };

    /// <summary>Where a mark stands on a letter: over its middle, under its middle, or across its first stem.</summary>
    public static Vector2 PlaceOn(Glyph letter, double top, char mark) => mark switch
    {
        ',' => new Vector2(letter.Width / 2, 0),
        '/' => new Vector2(0, top),
        _ => new Vector2(letter.Width / 2, top),
    };
}
