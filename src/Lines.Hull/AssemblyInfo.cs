using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("Lines.Tests")]
[assembly: InternalsVisibleTo("Lab")]
