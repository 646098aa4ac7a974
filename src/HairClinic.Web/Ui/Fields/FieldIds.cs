namespace HairClinic.Web.Ui.Fields;

/// <summary>Element ids from property names, so that an error summary can point at the field it is about.</summary>
public static class FieldIds
{
    public static string For(string name) => "f-" + name.Replace('.', '-').Replace('[', '-').Replace(']', '-');
}
