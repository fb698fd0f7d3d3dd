using Lines.Design.Schema;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed class SchemaDocumentGolden
{
    [Fact]
    public void The_page_of_keys_says_what_the_reader_takes()
    {
        var path = Repository.PathOf("templates", "README.md");
        if (Repository.Regenerate)
            File.WriteAllText(path, SchemaDocument.Markdown());

        Assert.Equal(SchemaDocument.Markdown(), File.ReadAllText(path));
    }
}
