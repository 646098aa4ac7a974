namespace HairClinic.Benchmarks.Worlds;

/// <summary>One practice in a world, from its clients' first days to the end, under one policy.</summary>
internal sealed class PracticeDays(Setup setup, World world, Policy policy, int number)
{
    public const int PlanEvery = 7;
    public const int AskEvery = 90;

    public Policy Policy => policy;

    public PracticeTruth Truth { get; } = new(world, new Streams(setup.Seed, number));

    public Advice Advice { get; } = new(setup.Spares, world);

    public Grader Grader { get; } = new(setup.Grades);

    public Measures Measures { get; } = new();

    public PracticeDays Play()
    {
        var clients = Enumerable.Range(0, setup.Clients).Select(client => new ClientDays(Truth.Client(client), this)).ToList();
        var books = clients.ConvertAll(client => client.Book);
        for (var day = -PracticeRows.Before; day < 365 * setup.Years; day++)
        {
            if (day >= 0 && policy.IsAdvice)
            {
                Advice.Answer(day);
                if (day % world.RefitEvery == 0)
                    Advice.Refit(day, books);
            }
            foreach (var client in clients)
                client.Live(day);
        }
        return this;
    }
}

/// <summary>What is the same for every world.</summary>
internal sealed record Setup(int Practices, int Clients, int Seed, int Years, int Threads, GradeMode Grades, Spares Spares);
