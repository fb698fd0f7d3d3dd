using System.Reflection;
using System.Text;
using Lines.Cli.Terminal;
using Lines.Plans.Figures;

namespace Lines.Cli.Output;

/// <summary>Results on standard output.</summary>
internal static class Printed
{
    /// <summary>Version of the program, as <c>--version</c> gives it.</summary>
    public static string Version { get; } =
        typeof(Printed).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <summary>Results for programs.</summary>
    public static void Json(Results results) => Streams.Out.Write(Encoding.UTF8.GetString(FigureJson.Write(results, Version)));

    /// <summary>Runs a verb that was asked for JSON: the faults of its file are results too.</summary>
    public static int WithFaults(bool json, string file, Func<int> verb)
    {
        try
        {
            return verb();
        }
        catch (CommandFailure failure) when (json && failure.Diagnostics.Count > 0)
        {
            Json(new Results(file) { Diagnostics = failure.Diagnostics });
            Streams.Flush();
            throw;
        }
    }
}
