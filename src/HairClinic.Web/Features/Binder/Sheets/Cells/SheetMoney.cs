namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>An amount in the minor unit of its currency (pence, cents, fils, whole yen), and the currency's three letters.</summary>
public readonly record struct SheetMoney(long MinorUnits, string Currency);
