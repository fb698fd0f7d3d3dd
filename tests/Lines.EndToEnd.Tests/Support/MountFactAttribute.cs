using Xunit;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>A test that mounts a disk of its own; skipped by name where the user may not.</summary>
public sealed class MountFactAttribute : FactAttribute
{
    /// <summary>Tries whether a disk can be mounted.</summary>
    public MountFactAttribute()
    {
        using var place = new Workplace();
        Directory.CreateDirectory(place.PathOf("disk"));
        if (Command.Shell(place.Root, "mount -t tmpfs -o size=4k tmpfs disk && umount disk").Code != 0)
            Skip = "mounting a small disk takes root; another test fills up a limit in its place";
    }
}
