using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("Lines.Tests")]
