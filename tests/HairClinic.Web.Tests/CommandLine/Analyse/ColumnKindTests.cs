namespace HairClinic.Web.Tests.CommandLine.Analyse;

/// <summary>A column is a number unless it is said to name kinds: a typing error is refused where it stands, and makes no kinds.</summary>
public sealed class ColumnKindTests
{
    private const string Words = "--time t --event e --flat-priors";

    // Edmunson et al. 1979, Cancer Treatment Reports 63:241, as R's package survival has it: futime, fustat, age, rx.
    private const string Ovarian = """
        t,e,age,rx
        59,1,72.3315,1
        115,1,74.4932,1
        156,1,66.4658,1
        421,0,53.3644,2
        431,1,50.3397,1
        448,0,56.4301,1
        464,1,56.937,2
        475,1,59.8548,2
        477,0,64.1753,1
        563,1,55.1781,2
        638,1,56.7562,1
        744,0,50.1096,2
        769,0,59.6301,2
        770,0,57.0521,2
        803,0,39.2712,1
        855,0,43.1233,1
        1040,0,38.8932,1
        1106,0,44.6,1
        1129,0,53.9068,2
        1206,0,44.2055,2
        1227,0,59.589,2
        268,1,74.5041,1
        329,1,43.137,1
        353,1,63.2192,2
        365,1,64.4247,2
        377,0,58.3096,2
        """;

    [Theory]
    [InlineData("4O", "Line 57: \"4O\" in age is no number. If age names kinds, say --factor age.")]
    [InlineData("NaN", "Line 57: \"NaN\" in age is no number. If age names kinds, say --factor age.")]
    [InlineData("Infinity", "Line 57: \"Infinity\" in age is no number. If age names kinds, say --factor age.")]
    [InlineData("-∞", "Line 57: \"-∞\" in age is no number. If age names kinds, say --factor age.")]
    [InlineData("\"3,5\"", "Line 57: \"3,5\" in age is no number. If age names kinds, say --factor age.")]
    [InlineData("\"4\n5\"", "Line 57: \"4 5\" in age is no number. If age names kinds, say --factor age.")]
    [InlineData("", "Line 57: age has no value.")]
    [InlineData("NA", "Line 57: \"NA\" in age stands for no value.")]
    [InlineData("1e400", "Line 57: \"1e400\" in age is too large a number.")]
    [InlineData("1e-400", "Line 57: \"1e-400\" in age is too small a number.")]
    [InlineData("-1e300", "Line 57: \"-1e300\" in age is too large a number: 1E+250 is the most.")]
    [InlineData("1e-300", "Line 57: \"1e-300\" in age is too small a number: 1E-250 is the least.")]
    public void A_cell_that_is_no_number_is_refused_where_it_stands(string cell, string sentence) =>
        AssertRefused(sentence, Ages(60, 55, cell), Words + " --covariates age");

    [Theory]
    [InlineData(0, 2)]
    [InlineData(59, 61)]
    [InlineData(199, 201)]
    public void It_does_not_matter_how_many_numbers_stand_before_or_after_it(int row, int line) =>
        AssertRefused(
            $"Line {line}: \"old\" in age is no number. If age names kinds, say --factor age.",
            Ages(200, row, "old"),
            Words + " --covariates age"
        );

    [Fact]
    public void A_column_of_words_alone_is_refused_too_until_it_is_said_to_name_kinds()
    {
        const string Csv = "t,e,base\n5,1,lace\n9,0,thin\n7,1,thin\n6,1,lace\n";

        AssertRefused("Line 2: \"lace\" in base is no number. If base names kinds, say --factor base.", Csv, Words + " --covariates base");
        Assert.Equal(["(Intercept)", "basethin"], Names(Csv, Words + " --covariates base --factor base"));
    }

    [Fact]
    public void In_a_factor_every_word_is_a_kind_whatever_it_looks_like()
    {
        var csv = Kinds("10", "2", "NaN", "Infinity", "4O", "2.0");

        Assert.Equal(
            ["(Intercept)", "k2.0", "k10", "k4O", "kInfinity", "kNaN"],
            Names(csv, Words + " --covariates k --factor k").Select(name => name)
        );
    }

    // Treatment contrasts by hand: the model does not know how a column came about.
    [Fact]
    public void A_factor_of_numbers_is_a_column_for_each_but_the_first()
    {
        var csv = string.Concat(
            "t,e,k,two,three\n",
            string.Concat(
                Enumerable.Range(1, 30).Select(i => $"{20 + i * 7 % 31},{(i % 4 > 0 ? 1 : 0)},{i % 3 + 1},{Of(i, 2)},{Of(i, 3)}\n")
            )
        );
        var (factor, byHand) = (
            Analysis.Of(csv, Words + " --covariates k --factor k"),
            Analysis.Of(csv, Words + " --covariates two,three")
        );

        Assert.Equal(byHand.Number("logLikelihood"), factor.Number("logLikelihood"), 1e-10);
        Assert.Equal(byHand.Number("coefficients", "two"), factor.Number("coefficients", "k2"), 1e-10);
        Assert.Equal(byHand.Number("coefficients", "three"), factor.Number("coefficients", "k3"), 1e-10);

        static int Of(int i, int kind) => i % 3 + 1 == kind ? 1 : 0;
    }

    // R 4.2.2, survival 3.5-3: survreg(Surv(futime, fustat) ~ age + rx). Of two kinds 1 and 2 a step is one, so only the intercept moves.
    [Fact]
    public void Numbers_stay_numbers_and_named_as_kinds_they_are_kinds()
    {
        var numbers = Analysis.Of(Ovarian, Words + " --covariates age,rx");
        var kinds = Analysis.Of(Ovarian, Words + " --covariates age,rx --factor rx");

        Assert.Equal(10.46261528, numbers.Number("coefficients", "(Intercept)"), 1e-7);
        Assert.Equal(0.5672755579, numbers.Number("coefficients", "rx"), 1e-8);
        Assert.Equal(10.46261528 + 0.5672755579, kinds.Number("coefficients", "(Intercept)"), 1e-7);
        Assert.Equal(0.5672755579, kinds.Number("coefficients", "rx2"), 1e-8);
        Assert.Equal(-0.07909536954, kinds.Number("coefficients", "age"), 1e-9);
        Assert.Equal(-88.76171010, kinds.Number("logLikelihood"), 1e-6);
    }

    [Fact]
    public void A_group_of_words_is_kinds_and_one_of_numbers_a_number_unless_it_is_said_to_name_kinds()
    {
        Assert.Equal(["(Intercept)", "rx"], Names(Ovarian, Words + " --group rx"));
        Assert.Equal(["(Intercept)", "rx2"], Names(Ovarian, Words + " --group rx --factor rx"));
        Assert.Equal(["(Intercept)", "kthin"], Names(Kinds("lace", "thin"), Words + " --group k"));
        Assert.Equal(["(Intercept)", "kNaN"], Names(Kinds("NaN", "Infinity"), Words + " --group k --covariates k"));
    }

    [Theory]
    [InlineData("4O")]
    [InlineData("NaN")]
    public void A_group_of_numbers_and_words_is_not_decided_by_us(string word)
    {
        AssertRefused(
            $"Line 3: \"{word}\" in k is no number. If k names kinds, say --factor k.",
            Kinds("40", word, "41"),
            Words + " --group k"
        );
        Assert.Equal(
            ["40", "41", word],
            Analysis
                .Of(Kinds("40", word, "41"), Words + " --group k --factor k")
                .Json.GetProperty("logRank")
                .GetProperty("groups")
                .EnumerateArray()
                .Select(g => g.GetProperty("group").GetString())
        );
    }

    [Fact]
    public void The_curves_of_groups_of_numbers_take_7_and_7_with_a_nought_for_one()
    {
        var curves = Analysis.Of(Kinds("7", "7.0", "8"), Words + " --group k").Json.GetProperty("logRank").GetProperty("groups");

        Assert.Equal(["7", "8"], curves.EnumerateArray().Select(g => g.GetProperty("group").GetString()));
    }

    [Theory]
    [InlineData("--covariates age --factor salon", "There is no column \"salon\"; the header has t, e, age, rx.")]
    [InlineData("--covariates age --factor rx", "--factor rx changes nothing: rx is neither the --group nor among the --covariates.")]
    [InlineData("--covariates age --factor t", "--factor t changes nothing: t is neither the --group nor among the --covariates.")]
    [InlineData("--covariates age, --factor age", "--covariates \"age,\" leaves a name empty.")]
    [InlineData("--window-low 20", "A window says what is assumed before anything was seen: it does not go with --flat-priors.")]
    public void What_would_be_ignored_is_refused(string more, string sentence) => AssertRefused(sentence, Ovarian, $"{Words} {more}");

    [Fact]
    public void Two_columns_of_the_model_have_two_names() =>
        AssertRefused(
            "Two columns of the model would be called \"ab2\".",
            "t,e,a,ab2\n5,1,b1,3\n6,1,b2,4\n9,1,b1,5\n7,1,b2,9\n",
            Words + " --covariates a,ab2 --factor a"
        );

    [Theory]
    [InlineData("t,e\n3,1\n1e13,1\n", "--time t --event e", "Line 3: \"1e13\" in t is too large a number: 1000000000000 is the most.")]
    [InlineData("t,e\n3,1\n1e-10,1\n", "--time t --event e", "Line 3: \"1e-10\" in t is too small a number: 1E-09 is the least.")]
    [InlineData("t,e\n3,1\nInfinity,0\n", "--time t --event e", "Line 3: \"Infinity\" in t is no number.")]
    [InlineData("t,e\n3,1\n4,NaN\n", "--time t --event e", "Line 3: \"NaN\" in e is neither 1 (it ended) nor 0 (it went on).")]
    [InlineData("l,u\n3,4\n4,Infinity\n", "--lower l --upper u", "Line 3: \"Infinity\" in u is no number.")]
    [InlineData("l,u\n3,4\nNaN,9\n", "--lower l --upper u", "Line 3: \"NaN\" in l is no number.")]
    [InlineData(
        "t,e,w\n3,1,1\n4,1,1e10\n",
        "--time t --event e --weight w",
        "Line 3: \"1e10\" in w is too large a number: 1000000000 is the most."
    )]
    [InlineData("t,e,w\n3,1,1\n4,1,NaN\n", "--time t --event e --weight w", "Line 3: \"NaN\" in w is no number.")]
    [InlineData("t,e,w\n3,1,1\n4,1,\n", "--time t --event e --weight w", "Line 3: w has no value.")]
    public void Times_and_weights_of_no_use_are_refused_where_they_stand(string csv, string words, string sentence) =>
        AssertRefused(sentence, csv, words);

    [Theory]
    [InlineData("--window-low 0", "--window-low is 0: it must lie between 1E-06 and 1000000000.")]
    [InlineData("--window-high 1e300", "--window-high is 1e300: it must lie between 1E-06 and 1000000000.")]
    [InlineData("--window-low NaN", "--window-low is \"NaN\", which is no number.")]
    [InlineData("--window-low 60", "A window's --window-high must be 1.001 to 1000000 times its --window-low: they are 56 and 60.")]
    [InlineData("--window-high 28.01", "A window's --window-high must be 1.001 to 1000000 times its --window-low: they are 28.01 and 28.")]
    public void A_window_that_is_none_is_refused(string words, string sentence) =>
        AssertRefused(sentence, Ovarian, "--time t --event e " + words);

    // Every client's name is a name: 007 is not 7.
    [Fact]
    public void Clients_are_told_apart_by_their_names_as_they_are_written()
    {
        string Csv(string other) => $"t,e,c\n30,1,7\n31,1,7\n60,1,{other}\n58,1,{other}\n";
        double Likelihood(string other) => Analysis.Of(Csv(other), "--time t --event e --client c").Number("logLikelihood");

        Assert.Equal(Likelihood("Ann"), Likelihood("007"), 1e-12);
        Assert.NotEqual(Likelihood("7"), Likelihood("007"), 1e-3);
    }

    private static string Ages(int rows, int at, string cell) =>
        "t,e,age\n"
        + string.Concat(Enumerable.Range(0, rows).Select(i => $"{20 + i % 37},1,{(i == at ? cell : (20 + i % 50).ToString())}\n"));

    private static string Kinds(params string[] kinds) =>
        "t,e,k\n" + string.Concat(Enumerable.Range(0, 6 * kinds.Length).Select(i => $"{20 + i * 11 % 37},1,{kinds[i % kinds.Length]}\n"));

    private static IEnumerable<string> Names(string csv, string words) =>
        Analysis.Of(csv, words).Json.GetProperty("coefficients").EnumerateObject().Select(p => p.Name);

    private static void AssertRefused(string sentence, string csv, string words)
    {
        var analysis = Analysis.Of(csv, words);

        Assert.Equal((2, "", sentence), (analysis.Code, analysis.Output, analysis.Errors.TrimEnd()));
    }
}
