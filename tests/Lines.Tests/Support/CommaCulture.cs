using System.Globalization;
using System.Runtime.CompilerServices;

namespace Lines.Tests.Support;

/// <summary>Runs the whole test assembly under a culture with a decimal comma and a minus sign that is no hyphen.</summary>
/// <remarks>
/// Made by hand, so that it is there on machines without culture data too. The signs are those of Swedish; a number
/// that leaves the product in the user's culture then shows at once.
/// </remarks>
internal static class CommaCulture
{
    [ModuleInitializer]
    [System.Diagnostics.CodeAnalysis.SuppressMessage("Usage", "CA2255", Justification = "The culture must stand before the first test of the assembly runs.")]
    internal static void Set()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "\u2212";
        culture.DateTimeFormat.ShortDatePattern = "d.M.yyyy";
        CultureInfo.DefaultThreadCurrentCulture = culture;
        CultureInfo.DefaultThreadCurrentUICulture = culture;
        CultureInfo.CurrentCulture = culture;
        CultureInfo.CurrentUICulture = culture;
    }
}
