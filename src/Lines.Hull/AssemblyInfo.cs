using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("Lines.Tests")]
[assembly: InternalsVisibleTo("Lines.Benchmarks")]
