namespace HairClinic.Web.Features.Settings;

/// <summary>Something the practice cannot work well without, in a sentence, and where to put it right.</summary>
public sealed record MissingSetupItem(string Sentence, string Where, params IReadOnlyList<object> Arguments)
{
    public static IEnumerable<MissingSetupItem> Find(Overview.Screen screen)
    {
        if (screen.Salons == 0)
            yield return new("There is no salon yet.", "/practice/add-salon");
        foreach (var salon in screen.SalonsWithoutHours)
            yield return new(
                "{0} has no opening hours, so nothing can be booked and no due date can be worked out there.",
                "/practice/salons",
                salon
            );
        foreach (var salon in screen.SalonsWithoutChairs)
            yield return new("{0} has no chair, so nothing can be booked there.", "/practice/salons", salon);
        if (screen.PeopleWithSkills == 0)
            yield return new("Nobody is said to do any service, so nothing can be booked.", "/practice/people");
        if (screen.RebondServices == 0)
            yield return new("No service is a rebond, so nobody who is due can be booked.", "/practice/services");
        if (!screen.FitsAnything)
            yield return new("No hold window stands for every base: some bonds would have no due date.", "/practice/hold-windows");
        if (screen.Adhesives == 0)
            yield return new("There is no adhesive or tape, so a rebond cannot say what was used.", "/practice/products");
        if (screen.UnitKinds == 0)
            yield return new("There is no kind of unit yet; bringing your binder makes them too.", "/practice/unit-kinds");
        if (screen.PeopleWithoutAccount > 0)
            yield return new("People who cannot sign in yet: {0}.", "/practice/people", screen.PeopleWithoutAccount);
        if (screen.Clients == 0)
            yield return new("There are no clients yet. Bring your binder, or add them one by one.", "/practice/binder/import");
    }
}
