using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Construction.Molds;
using Lines.Drawing.Dxf;
using Lines.Kernel.Units;

namespace Lines.Cli.Verbs;

/// <summary><c>lines molds FILE</c>: the molds for a router and the sheet to set them up by.</summary>
internal static class MoldsVerb
{
    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.ForceFolder("molds (mold-NN, stem, stern, transom) and sheets"));
        var output = Common.OutputTo("the folder to write, made with any folders on the way to it (left out: named after FILE)");
        var hull = Common.Hull();
        var router = new RouterOptions();
        var verb = new Command("molds", "Writes every mold, and the sheets they are cut from, as DXF for a router, cutting list and setting-up sheet as PDF and CSV, planking and materials as CSV; exit code 1 if a mold asked for cannot be made, bulkheads or openings clash, or a piece does not go into the storage given.") { file, hull, output, units, force };
        foreach (var option in router.All)
            verb.Add(option);
        verb.SetAction(parsed => Molds(
            parsed.GetValue(file)!, parsed.GetValue(hull), parsed.GetValue(output), router.Dxf(parsed), router.Cuts(parsed), parsed.GetValue(units), parsed.GetValue(force)));
        return verb.WithExamples(
            "lines molds tender.toml", "lines molds tender.toml -o cnc --units in --force", "lines molds tender.toml -o cnc --dxf r12 --dxf-units in --no-arcs --tool \"1/4 in\"");
    }

    private static int Molds(string path, string? hull, string? output, DxfSettings dxf, CutSettings cuts, LengthNotation? units, bool force)
    {
        var target = output ?? Common.NamedAfter(path, "-molds", hull);
        OutputFolder.Check(target, force);
        var shaped = Shaped.From(path, hull);
        var products = new Products(shaped, shaped.Units(units), cuts);
        using var folder = new OutputFolder(target, force);
        foreach (var (name, content) in products.Molds(dxf))
            folder.Add(name, content);
        foreach (var (name, content) in products.Sheets(dxf))
            folder.Add(name, content);
        folder.Add("setting-up.pdf", products.SettingUp());
        folder.Add("setting-up.csv", products.SettingUpTable());
        foreach (var (name, content) in products.Lists())
            folder.Add(name, content);
        folder.Finish(EarlierRun.Molds(target, ""));
        var warned = shaped.Warned();
        TellTight(shaped.Molds, cuts, products.Units);
        Streams.Error.WriteLine(Invariant($"wrote {folder.Names.Count} files into {target}; open setting-up.pdf first"));
        shaped.TellMissing(products.Units);
        return warned;
    }

    // Corners that stay sharp in the file come out round in the wood.
    private static void TellTight(MoldPlan plan, CutSettings cuts, LengthNotation units)
    {
        foreach (var mold in plan.Parts)
        {
            cuts.Of(mold, out var tight);
            if (tight.Count > 0)
                Streams.Say(Invariant($"{mold.Name}: a tool of {new Length(cuts.Tool!.Value).ToSize(units)} does not reach into {tight.Count} inside {(tight.Count == 1 ? "corner" : "corners")}; take a smaller one, or square them by hand"));
        }
    }
}
