namespace HairClinic.Web.Demo;

/// <summary>Names put together by chance; nobody is meant.</summary>
public static class DemoNames
{
    private static readonly string[] First =
    [
        "Ada",
        "Alma",
        "Anouk",
        "Arlo",
        "Beatriz",
        "Bram",
        "Carys",
        "Cato",
        "Dilys",
        "Dorian",
        "Edda",
        "Elias",
        "Esther",
        "Faye",
        "Felix",
        "Gwen",
        "Hale",
        "Hana",
        "Idris",
        "Ines",
        "Ivo",
        "Jago",
        "Joan",
        "Kester",
        "Lena",
        "Lorcan",
        "Mabel",
        "Mina",
        "Nadia",
        "Niall",
        "Odile",
        "Oscar",
        "Pilar",
        "Quentin",
        "Rhea",
        "Rosalind",
        "Ruben",
        "Sabine",
        "Silas",
        "Tamsin",
        "Theo",
        "Una",
        "Vera",
        "Wim",
        "Xanthe",
        "Zelda",
    ];

    private static readonly string[] Last =
    [
        "Achterberg",
        "Ambleford",
        "Ávalos-Quist",
        "Birchwater",
        "Bramhallow",
        "Cressingham-Roe",
        "Dunmarrow",
        "Elderscombe",
        "Fallowgate",
        "Fenwickson",
        "Garrowby-Lund",
        "Hallorand",
        "Ingleberry",
        "Jessamyne",
        "Kettlewick",
        "Larkmoor",
        "Lindqvale",
        "Merrowdene",
        "Nettleship-Ba",
        "O'Tarrow",
        "Pellingforth",
        "Quarrington-Ode",
        "Rooksby-Yen",
        "Saltmarsh-Ito",
        "Thistlewell",
        "Umberleigh-Nox",
        "Vantongeren",
        "Wetherdown",
        "Yarrowford",
        "Zellenby",
    ];

    public static string NameOf(int number) =>
        $"{First[number * 7 % First.Length]} {Last[(number * 11 + number / First.Length) % Last.Length]}";

    /// <summary>Numbers kept free for fiction, in Britain and in North America (from memory).</summary>
    public static string PhoneOf(int number, string zone) =>
        zone.StartsWith("America/", StringComparison.Ordinal) ? $"+1518555{100 + number % 100:0000}" : $"+441632960{number % 1000:000}";
}
