Console.WriteLine("Name a benchmark.");
