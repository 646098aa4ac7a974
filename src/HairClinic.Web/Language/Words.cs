namespace HairClinic.Web.Language;

/// <summary>Marks the one set of translations: every English text is its own key.</summary>
public sealed class Words;
