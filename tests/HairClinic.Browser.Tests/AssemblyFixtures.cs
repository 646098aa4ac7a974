using HairClinic.Browser.Tests;

[assembly: AssemblyFixture(typeof(ChromiumBrowser))]
[assembly: AssemblyFixture(typeof(DemoFolder))]
// A browser and a database share two cores: one story at a time. Two at once take as long, and longer each.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
