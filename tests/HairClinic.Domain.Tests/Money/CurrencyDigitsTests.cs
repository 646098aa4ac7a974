using HairClinic.Domain.Money;
using HairClinic.Domain.Tests.Reference;

namespace HairClinic.Domain.Tests.Money;

// Against iso_4217.csv (its first line names the source). The thirteen codes without any (metals, bonds, tests) are left out: nobody pays in them.
public sealed class CurrencyDigitsTests
{
    private static readonly Table Published = Table.Read("iso_4217.csv");

    [Fact]
    public void Every_currency_has_the_minor_units_of_the_published_list()
    {
        var listed = Published.Rows.Where(row => Published.Text(row, "digits") != "").ToList();

        Assert.Equal(166, listed.Count);
        Assert.Empty(
            listed
                .Where(row => CurrencyDigits.For(Published.Text(row, "code")) != (int)Published.Number(row, "digits"))
                .Select(row => Published.Text(row, "code"))
        );
    }

    // Added to the list by an amendment of 2025, with hundredths (from memory).
    [Fact]
    public void A_currency_that_is_new_has_hundredths() => Assert.Equal(2, CurrencyDigits.For("XCG"));
}
