namespace Lines.Tests.Support;

/// <summary>A file of its own in the temporary folder, gone when the test ends.</summary>
internal sealed class ScratchFile(string extension) : IDisposable
{
    /// <summary>Where it is.</summary>
    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "lines-" + Guid.NewGuid().ToString("N") + extension);

    /// <summary>A file with these bytes.</summary>
    public static ScratchFile With(string extension, byte[] bytes)
    {
        var file = new ScratchFile(extension);
        File.WriteAllBytes(file.Path, bytes);
        return file;
    }

    /// <inheritdoc/>
    public void Dispose() => File.Delete(Path);
}
