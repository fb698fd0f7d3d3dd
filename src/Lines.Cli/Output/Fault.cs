namespace Lines.Cli.Output;

/// <summary>Says in one clause what kept a file from being read or written.</summary>
internal static class Fault
{
    private const int NoSpace = 28;

    private const int QuotaUsedUp = 122;

    private const int ReadOnlyDisk = 30;

    private const int DiskFullOnWindows = 0x70;

    /// <summary>The clause, without the path.</summary>
    /// <param name="fault">What the system threw.</param>
    public static string Of(Exception fault) => fault switch
    {
        UnauthorizedAccessException => "permission denied",
        DirectoryNotFoundException => "its folder does not exist",
        FileNotFoundException => "it does not exist",
        PathTooLongException => "its path is too long",
        IOException io => (io.HResult & 0xFFFF) switch
        {
            NoSpace or DiskFullOnWindows => "no space left on the disk",
            QuotaUsedUp => "the disk quota is used up",
            ReadOnlyDisk => "the disk is read-only",
            _ => io.Message.TrimEnd('.'),
        },
        _ => fault.Message,
    };
}
