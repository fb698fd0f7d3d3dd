namespace Lines.Kernel.Units;

/// <summary>A length, kept in meters, read and shown in the notations of the workshop.</summary>
/// <remarks>
/// <para><b>Accuracy.</b> The inch is 0.0254 m and the foot 0.3048 m exactly; reading rounds once, to the nearest double.
/// <c>Parse(ToText(x))</c> is within half of <see cref="LengthNotations.Step"/> of x in every notation.</para>
/// </remarks>
/// <param name="Meters">The length [m]; negative is allowed where the place it is used allows it.</param>
public readonly record struct Length(double Meters)
{
    /// <summary>Meters in a foot, exact (international foot, 1959).</summary>
    public const double Foot = 0.3048;

    /// <summary>Meters in an inch, exact (international inch, 1959).</summary>
    public const double Inch = 0.0254;

    /// <summary>The length in millimeters.</summary>
    public double Millimeters => Meters * 1000;

    /// <summary>The length in inches.</summary>
    public double Inches => Meters / Inch;

    /// <summary>A length from millimeters.</summary>
    public static Length FromMillimeters(double millimeters) => new(millimeters / 1000);

    /// <summary>A length from inches.</summary>
    public static Length FromInches(double inches) => new(inches * Inch);

    /// <summary>Reads a length, or says what is wrong with the text.</summary>
    /// <remarks>
    /// Reads <c>5.20 m</c>, <c>74 cm</c>, <c>740 mm</c>, <c>29 1/8 in</c>, <c>17 ft 6 in</c>, <c>17' 6 1/2"</c> and feet-inches-eighths
    /// <c>2-3-5+</c>, where a last + or - is a sixteenth of an inch more or less. A leading minus makes the whole negative.
    /// The decimal mark is a point in every locale.
    /// </remarks>
    /// <param name="text">The text.</param>
    /// <param name="length">The length; zero where the text is not one.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a length.</returns>
    public static bool TryParse(string text, out Length length, out UnitFault? fault) => TryParse(text, out length, out _, out fault);

    /// <summary>Reads a length and the notation it is written in, so that an answer can be given in the same.</summary>
    /// <param name="text">The text; see the other overload.</param>
    /// <param name="length">The length; zero where the text is not one.</param>
    /// <param name="notation">The notation; meters and centimeters count as millimeters.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a length.</returns>
    public static bool TryParse(string text, out Length length, out LengthNotation notation, out UnitFault? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = LengthReader.Read(text, out length, out notation);
        return fault is null;
    }

    /// <summary>Reads a length.</summary>
    /// <param name="text">The text; see <see cref="TryParse(string, out Length, out UnitFault?)"/>.</param>
    /// <returns>The length.</returns>
    /// <exception cref="FormatException">The text is not a length; the message says what would be right.</exception>
    public static Length Parse(string text) =>
        TryParse(text, out var length, out var fault) ? length : throw new FormatException(fault!.ToString());

    /// <summary>The length with its unit, to the step of the notation: <c>366.7 mm</c>, <c>14 7/16 in</c>, <c>1' 2 7/16"</c>, <c>1-2-3+</c>.</summary>
    public string ToText(LengthNotation notation) => LengthWriter.Write(Meters, notation, withUnit: true);

    /// <summary>The length as <see cref="ToText"/> shows it, less the unit of <c>mm</c> and <c>in</c>: where the unit is named once.</summary>
    public string ToFigure(LengthNotation notation) => LengthWriter.Write(Meters, notation, withUnit: false);

    /// <summary>The length as <see cref="ToFigure"/>, but every millimeter with its tenth, so that in a column the points stand below each other: <c>740.0</c>.</summary>
    public string ToCell(LengthNotation notation) => LengthWriter.Write(Meters, notation, withUnit: false, everyTenth: true);

    /// <summary>The length as a size that stock or a drill is bought by: <c>1/4 in</c>, <c>0.236 in (6 mm)</c>, <c>6 mm</c>.</summary>
    /// <remarks><b>Accuracy.</b> Within 0.02 mm of the length: whole 32nds of an inch, tenths of a millimeter where they are, else thousandths
    /// and hundredths. No size is told in feet.</remarks>
    /// <param name="notation">The notation; millimeters or one of the inch.</param>
    public string ToSize(LengthNotation notation) => LengthWriter.Size(Meters, notation);

    /// <summary>The length in millimeters with its unit.</summary>
    public override string ToString() => ToText(LengthNotation.Millimeters);
}

/// <summary>What is wrong with a text that should be a length or an angle.</summary>
/// <param name="Problem">What is wrong, one clause.</param>
/// <param name="Remedy">What would be right, one clause.</param>
/// <param name="Bare">The number, where the fault is only that its unit is missing.</param>
public sealed record UnitFault(string Problem, string Remedy, double? Bare = null)
{
    /// <summary>Both clauses.</summary>
    public override string ToString() => $"{Problem}; {Remedy}";
}
