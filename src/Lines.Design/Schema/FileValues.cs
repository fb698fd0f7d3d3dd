namespace Lines.Design.Schema;

/// <summary>The checked values of a whole file: its own, and those of every table that stands in it several times.</summary>
/// <param name="Main">The values of the file's own tables.</param>
/// <param name="Repeated">Those of each table in double brackets, in the order of the file.</param>
internal sealed record FileValues(DesignValues Main, IReadOnlyList<DesignValues> Repeated)
{
    /// <summary>All of them.</summary>
    public IEnumerable<DesignValues> All => Repeated.Prepend(Main);

    /// <summary>Those of one form, in the order of the file.</summary>
    public IEnumerable<DesignValues> Of(SchemaForm form) => Repeated.Where(v => v.Form == form);
}
