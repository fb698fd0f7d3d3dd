using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>A template as the command builds it.</summary>
/// <param name="Place">Where its folder is, named for the template; nothing else is there.</param>
/// <param name="Run">What the command said.</param>
public sealed record BuiltTemplate(Workplace Place, CommandRun Run);

/// <summary>The templates, each built once for all tests that look at what a build writes.</summary>
[CollectionDefinition(nameof(BuiltTemplates))]
public sealed class BuiltTemplates : ICollectionFixture<BuiltTemplates>, IDisposable
{
    private readonly Dictionary<string, BuiltTemplate> _built = new(StringComparer.Ordinal);

    /// <summary>One of them, built in the checkout's own folder.</summary>
    public BuiltTemplate Of(string template)
    {
        if (!_built.TryGetValue(template, out var built))
        {
            var place = new Workplace();
            _built[template] = built = new BuiltTemplate(place, Command.Run(Repository.Root, "build", $"templates/{template}.toml", "-o", place.PathOf(template)));
        }

        return built;
    }

    /// <summary>Removes what was built.</summary>
    public void Dispose()
    {
        foreach (var built in _built.Values)
            built.Place.Dispose();
    }
}
