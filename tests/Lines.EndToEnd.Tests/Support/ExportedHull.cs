namespace Lines.EndToEnd.Tests.Support;

/// <summary>The first template's hull exported once in every format, for all tests of a class that look at the files.</summary>
public sealed class ExportedHull : IDisposable
{
    /// <summary>Exports it.</summary>
    public ExportedHull()
    {
        Place.Write("mine.toml", Designs.Runner());
        Run = Command.Run(Place.Root, "export", "mine.toml");
    }

    /// <summary>Where the design and what was made of it are; to look at alone.</summary>
    public Workplace Place { get; } = new();

    /// <summary>What the command said.</summary>
    public CommandRun Run { get; }

    /// <summary>Removes the files.</summary>
    public void Dispose() => Place.Dispose();
}
