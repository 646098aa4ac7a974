namespace HairClinic.Web.Ui;

/// <summary>One tab: the key a page knows it by, and the word on it.</summary>
public sealed record TabOption(string Key, string Label);
