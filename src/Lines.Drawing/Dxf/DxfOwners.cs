namespace Lines.Drawing.Dxf;

/// <summary>Handles of the objects that others point to before they are written.</summary>
internal sealed class DxfOwners(DxfText dxf)
{
    /// <summary>Block record of the space that holds the drawing.</summary>
    public string ModelSpace { get; } = dxf.NextHandle();

    /// <summary>Block record of the space a print layout would hold; empty.</summary>
    public string PaperSpace { get; } = dxf.NextHandle();

    /// <summary>Layout of the model space.</summary>
    public string ModelLayout { get; } = dxf.NextHandle();

    /// <summary>Layout of the paper space.</summary>
    public string PaperLayout { get; } = dxf.NextHandle();

    /// <summary>The plot style every layer has.</summary>
    public string PlotStyle { get; } = dxf.NextHandle();
}
