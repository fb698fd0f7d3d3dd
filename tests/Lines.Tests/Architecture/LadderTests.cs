using System.Reflection;
using System.Xml.Linq;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Architecture;

public class LadderTests
{
    /// <summary>What each project may see: those to its left.</summary>
    private static readonly Dictionary<string, string[]> Ladder = new(StringComparer.Ordinal)
    {
        ["Lines.Kernel"] = [],
        ["Lines.Hull"] = ["Lines.Kernel"],
        ["Lines.Construction"] = ["Lines.Kernel", "Lines.Hull"],
        ["Lines.Design"] = ["Lines.Kernel", "Lines.Hull", "Lines.Construction"],
        ["Lines.Drawing"] = ["Lines.Kernel"],
        ["Lines.Plans"] = ["Lines.Kernel", "Lines.Hull", "Lines.Construction", "Lines.Design", "Lines.Drawing"],
        ["Lines.Cli"] = ["Lines.Kernel", "Lines.Hull", "Lines.Construction", "Lines.Design", "Lines.Drawing", "Lines.Plans"],
    };

    /// <summary>Words that name a namespace; a type of the same name would hide it.</summary>
    private static readonly string[] NamespaceWords = ["Hull", "Design", "Drawing", "Loft"];

    public static TheoryData<string> Projects => [.. Directory.GetFiles(Repository.PathOf("src"), "*.csproj", SearchOption.AllDirectories)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_sees_only_those_to_its_left(string project)
    {
        var name = Path.GetFileNameWithoutExtension(project);
        Assert.True(Ladder.ContainsKey(name), $"{name} has no place on the ladder; give it one here and in DEVELOPERS.md");
        var seen = XDocument.Load(project).Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(((string?)r.Attribute("Include") ?? "").Replace('\\', '/')));
        Assert.Empty(seen.Except(Ladder[name], StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Compiled_code_sees_only_the_projects_to_its_left(string project)
    {
        var name = Path.GetFileNameWithoutExtension(project);
        var seen = Load(name).GetReferencedAssemblies().Select(a => a.Name ?? "").Where(n => n.StartsWith("Lines.", StringComparison.Ordinal));
        Assert.Empty(seen.Except(Ladder[name], StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Types_live_in_their_projects_namespace_and_do_not_hide_one(string project)
    {
        var name = Path.GetFileNameWithoutExtension(project);
        var types = Load(name).GetTypes().Where(t => !t.IsNested && t.Namespace is not null && t.Namespace.StartsWith("Lines", StringComparison.Ordinal)).ToList();
        Assert.All(types, t => Assert.True(
            string.Equals(t.Namespace, name, StringComparison.Ordinal) || t.Namespace!.StartsWith(name + ".", StringComparison.Ordinal),
            $"{t.FullName} is in {name}"));
        Assert.DoesNotContain(types, t => NamespaceWords.Contains(t.Name, StringComparer.Ordinal));
    }

    [Fact]
    public void Drawing_never_says_mold()
    {
        var files = Directory.GetFiles(Repository.PathOf("src", "Lines.Drawing"), "*.cs", SearchOption.AllDirectories);
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.DoesNotContain("mold", File.ReadAllText(f), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The command's assembly is named as the command is.</summary>
    private static Assembly Load(string project) =>
        Assembly.Load(string.Equals(project, "Lines.Cli", StringComparison.Ordinal) ? "lines" : project);
}
