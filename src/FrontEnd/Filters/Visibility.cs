using System.Runtime.CompilerServices;

// The elliptic functions and the Bessel polynomials have tests of their own.
[assembly: InternalsVisibleTo("FrontEnd.Tests")]
