namespace HairClinic.Web.Demo.Scenes;

/// <summary>A scene to show somebody: whom to look up, and what there is to see.</summary>
public sealed record Tour(string ClientCode, string Title, string See);
