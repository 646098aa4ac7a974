using HairClinic.Browser.Tests;

[assembly: AssemblyFixture(typeof(ChromiumBrowser))]
// Two browsers and a database share two cores: one story at a time.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
