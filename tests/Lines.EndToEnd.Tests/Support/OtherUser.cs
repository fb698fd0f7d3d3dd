namespace Lines.EndToEnd.Tests.Support;

/// <summary>Runs the command as a user whom permissions bind, also where the tests run as root.</summary>
public static class OtherUser
{
    private const string Nobody = "65534";

    /// <summary>Prepares a folder and runs the command in it.</summary>
    /// <param name="place">The folder.</param>
    /// <param name="prepare">A line of the shell run first, as the user of the tests.</param>
    /// <param name="arguments">The command's arguments, as in a shell.</param>
    public static CommandRun Run(Workplace place, string prepare, string arguments)
    {
        ArgumentNullException.ThrowIfNull(place);
        if (!Environment.IsPrivilegedProcess)
            return Command.Shell(place.Root, $"{prepare} && exec $LINES {arguments}");

        // The command goes to a place where anybody may read it, for the checkout may be in a folder of root's own.
        using var program = new Workplace();
        var line = $"""
            cp -r "{Path.GetDirectoryName(Command.Dll)}"/. "{program.Root}" && chmod -R a+rX "{program.Root}" && chmod a+rx "{place.Root}" && {prepare} &&
            exec setpriv --reuid={Nobody} --regid={Nobody} --clear-groups env HOME=/nonexistent DOTNET_EnableDiagnostics=0 {Command.Dotnet} "{program.Root}/lines.dll" {arguments}
            """;
        return Command.Shell(place.Root, line);
    }
}
