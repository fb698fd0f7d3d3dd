using Lines.Drawing.Dxf;
using Lines.Tests.Support.Dxf;
using Xunit;

namespace Lines.Tests.Drawing.Dxf;

/// <summary>The strict checker finds every fault seeded into a sound file; readers in common use pass over most of them.</summary>
public class DxfCheckerTests
{
    private static readonly string Sound = DxfFile.Write(SampleSheets.Everything);

    [Fact]
    public void A_sound_file_has_no_faults() => Assert.Empty(DxfChecker.Faults(Sound));

    [Theory]
    [InlineData("AcDbPolyline\n 90\n4\n", "AcDbPolyline\n 90\n5\n", "counts 5 vertices")]
    [InlineData("AcDbPolyline\n 90\n4\n 70\n1\n", "AcDbPolyline\n 90\n4\n 70\n3\n", "flag 70 is 3")]
    [InlineData(" 10\n292\n 20\n5\n", " 10\n5\n 20\n5\n", "repeats the one before")]
    [InlineData(" 10\n5\n 20\n205\n", " 10\n5\n 20\n5\n", "repeats the one before")]
    [InlineData("AcDbEntity\n  8\noutline\n100\nAcDbPolyline", "AcDbEntity\n  8\nnowhere\n100\nAcDbPolyline", "not defined")]
    [InlineData("100\nAcDbEntity\n  8\noutline\n100\nAcDbPolyline", "100\nAcDbEntity\n  8\noutline", "subclass markers")]
    [InlineData("  2\nthin-1\n 70\n0\n 62\n8\n  6\nContinuous\n", "  2\nthin-1\n 70\n0\n 62\n8\n  6\nhidden2\n", "line type hidden2")]
    [InlineData("\n 62\n8\n", "\n 62\n0\n", "color 0")]
    [InlineData("\n370\n13\n", "\n370\n14\n", "line weight 14")]
    [InlineData("\n 49\n-2\n", "\n 49\n-3\n", "another length than its parts")]
    [InlineData("\n 73\n6\n", "\n 73\n5\n", "counts 5 lengths")]
    [InlineData("$ACADVER\n  1\nAC1015", "$ACADVER\n  1\nAC1009", "$ACADVER")]
    [InlineData("$INSUNITS\n 70\n4", "$INSUNITS\n 70\n0", "$INSUNITS")]
    [InlineData("$HANDSEED\n  5\n", "$HANDSEED\n  5\n1\n999\n", "$HANDSEED")]
    [InlineData("  0\nTABLE\n  2\nUCS\n", "  0\nTABLE\n  2\nUCX\n", "table UCS is missing")]
    [InlineData("ACAD_LAYOUT", "ACAD_LAYOUX", "lacks ACAD_LAYOUT")]
    [InlineData("  0\nLINE\n  5\n", "  0\nLINE\n  6\n", "no handle")]
    [InlineData("  2\nByLayer\n", "  2\nByLayer2\n", "lacks ByLayer")]
    [InlineData("  0\nEOF\n", "", "EOF")]
    [InlineData("  0\nEOF\n", "  0\n", "lacks its value")]
    [InlineData(" 21\n101.5\n", " 21\n101,5\n", "value \"101,5\"")]
    [InlineData("\n  2\n*Paper_Space\n", "\n  2\n*Paper_Spice\n", "two spaces")]
    [InlineData("AcDbBlockBegin", "AcDbBlockStart", "subclass markers")]
    public void A_seeded_fault_is_found(string sound, string faulty, string finding)
    {
        var at = Sound.IndexOf(sound, StringComparison.Ordinal);
        Assert.True(at >= 0, $"the sound file lacks {sound}");
        var faults = DxfChecker.Faults(string.Concat(Sound.AsSpan(0, at), faulty, Sound.AsSpan(at + sound.Length)));
        Assert.Contains(faults, f => f.Contains(finding, StringComparison.Ordinal));
    }

    [Fact]
    public void A_handle_used_twice_and_a_pointer_to_nowhere_are_found()
    {
        var dxf = DxfGroups.Read(Sound);
        var (first, second) = (dxf.Section("ENTITIES")[1].Handle, dxf.Section("ENTITIES")[2].Handle);
        Assert.Contains(DxfChecker.Faults(Sound.Replace($"\n  5\n{second}\n", $"\n  5\n{first}\n", StringComparison.Ordinal)), f => f.Contains("twice", StringComparison.Ordinal));
        var space = dxf.Table("BLOCK_RECORD")[1].Handle;
        var lost = Sound.Replace($"\n330\n{space}\n100\nAcDbEntity\n  8\n", "\n330\nFFFF\n100\nAcDbEntity\n  8\n", StringComparison.Ordinal);
        Assert.Contains(DxfChecker.Faults(lost), f => f.Contains("not there", StringComparison.Ordinal));
    }
}
