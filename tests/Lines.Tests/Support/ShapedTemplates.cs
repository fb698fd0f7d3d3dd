using System.Collections.Concurrent;
using Lines.Construction.Molds;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Xunit;

namespace Lines.Tests.Support;

/// <summary>The designs to start from, each shaped once for all tests that draw or cut something of it.</summary>
internal static class ShapedTemplates
{
    private static readonly ConcurrentDictionary<string, Lazy<ShapedTemplate>> s_shaped = new(StringComparer.Ordinal);

    /// <summary>Their names, in order.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.EnumerateFiles(Repository.PathOf("templates"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    /// <summary>The names as rows of a theory.</summary>
    public static TheoryData<string> All => [.. Names];

    /// <summary>One of them.</summary>
    public static ShapedTemplate Of(string name) => s_shaped.GetOrAdd(name, n => new(() => Shape(n))).Value;

    private static ShapedTemplate Shape(string name)
    {
        var file = Repository.PathOf("templates", name + ".toml");
        var design = DesignFile.Read(File.ReadAllBytes(file), file).Design!;
        return ShapedTemplate.Of(design);
    }
}

/// <summary>A design with its hull, lines and molds.</summary>
internal sealed record ShapedTemplate(VesselDesign Design, HullSurface Hull, HullLines Lines, MoldPlan Molds)
{
    private readonly Lazy<IReadOnlyList<ShapedTemplate>> _outriggers = new(() => [.. Design.Outriggers.Select(Of)]);

    /// <summary>Its main hull, then one of each outrigger.</summary>
    public IEnumerable<ShapedTemplate> Hulls => [this, .. _outriggers.Value];

    /// <summary>Shapes the main hull of a design.</summary>
    public static ShapedTemplate Of(VesselDesign design)
    {
        var hull = HullShape.Solve(design.Vessel.MainHull).Surface!;
        return new ShapedTemplate(design, hull, HullLines.Of(hull), MoldPlan.Of(hull, design.Build));
    }
}
