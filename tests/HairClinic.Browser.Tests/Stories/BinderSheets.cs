using System.Text;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// A small binder as a spreadsheet saves it on the continent: semicolons, day before month, Windows-1252.
/// Invented for this test; the demo has its own.
/// </summary>
internal static class BinderSheets
{
    public static readonly FilePayload Clients = Sheet(
        "clients",
        """
        code;name;called;home salon;phone;email;preferred days
        K-01;Zoé Marchbank;Zoé;Linden Yard;01632 960101;zoe@client.example;Thursday
        K-02;Bram Oatley;;Linden Yard;01632 960102;;
        K-03;Cora Dunmere;;Linden Yard;01632 960103;;
        """
    );

    public static readonly FilePayload Units = Sheet(
        "units",
        """
        serial;client code;workshop;base;unit kind;state;ordered on;promised for;arrived on;first bonded on
        S-101;K-01;Workshop East;French lace;Everyday lace;bonded;03/08/2026;28/09/2026 | 12/10/2026;14/10/2026;20/10/2026
        S-102;K-01;Workshop East;French lace;Everyday lace;ordered;11/01/2027;15/03/2027;;
        S-201;K-02;Workshop East;French lace;Everyday lace;bonded;03/08/2026;28/09/2026;30/09/2026;15/10/2026
        """
    );

    public static readonly FilePayload Bonds = Sheet(
        "bonds",
        """
        serial;client code;applied on;adhesive;lot;coats;attachment;waits kept;removed on;removed because
        S-101;K-01;20/10/2026;Adhesive Plum;P-1;3;liquid;yes;17/11/2026;scheduled
        S-101;K-01;17/11/2026;Adhesive Plum;P-1;3;liquid;yes;15/12/2026;scheduled
        S-101;K-01;29/12/2026;Adhesive Plum;P-2;3;liquid;yes;;
        S-201;K-02;19/01/2027;Adhesive Plum;P-2;3;liquid;no;;
        """
    );

    public static readonly FilePayload Visits = Sheet(
        "visits",
        """
        client code;salon;date;start;minutes;service;state
        K-01;Linden Yard;17/11/2026;10:00;90;Rebond;done
        K-01;Linden Yard;15/12/2026;10:00;90;Rebond;done
        """
    );

    private static FilePayload Sheet(string name, string text)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var bytes = Encoding.GetEncoding(1252).GetBytes(text.ReplaceLineEndings("\r\n") + "\r\n\r\n");
        return new FilePayload
        {
            Name = name + ".csv",
            MimeType = "text/csv",
            Buffer = bytes,
        };
    }
}
