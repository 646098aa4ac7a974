using System.Collections;

namespace HairClinic.Web.Shell.Edits;

/// <summary>
/// Puts what somebody typed onto what another saved meanwhile. A field only the other changed takes the other's value; a field
/// both changed keeps what was typed and is named as a clash: nothing is lost and nothing undone unseen.
/// </summary>
/// <remarks>
/// It looks at every property of the form that can be written: those with a <see cref="FieldAttribute"/> are compared, lists row by row
/// or choice by choice; those with a <see cref="FromDatabaseAttribute"/> are read from the book again; those of the form alone stay.
/// </remarks>
public static class EditMerge
{
    private static readonly FieldAttribute Order = new("Order");

    /// <summary>The form as it stands, to be compared with later.</summary>
    public static T Snapshot<T>(T form)
        where T : class => (T)FormProperty.DeepCopy(form)!;

    /// <param name="opened">What the form opened with.</param>
    /// <param name="saved">What is in the book now.</param>
    /// <param name="typed">What stands in the form; it is changed.</param>
    /// <returns>What the other changed.</returns>
    public static IReadOnlyList<FieldChange> MergeChanges<T>(T opened, T saved, T typed)
        where T : class
    {
        var changes = new List<FieldChange>();
        Compare(opened, saved, typed, of: null, changes);
        return changes;
    }

    private static void Compare(object opened, object saved, object typed, object? of, List<FieldChange> changes)
    {
        foreach (var part in FormProperty.AllOf(saved.GetType()))
        {
            if (part.FromBook)
                part.Set(typed, part.Get(saved));
            if (part.Field is null)
                continue;
            if (part.Row is not null)
                CompareRows(part, part.List(opened), part.List(saved), part.List(typed), of, changes);
            else if (part.IsList)
                CompareChoices(part, part.List(opened), part.List(saved), part.List(typed), changes);
            else
                CompareValues(part, opened, saved, typed, of, changes);
        }
    }

    private static void CompareValues(FormProperty part, object opened, object saved, object typed, object? of, List<FieldChange> changes)
    {
        var (before, theirs, yours) = (part.Get(opened), part.Get(saved), part.Get(typed));
        if (FormProperty.SameValue(before, theirs))
            return;
        var clashes = !FormProperty.SameValue(yours, before) && !FormProperty.SameValue(yours, theirs);
        void Take() => part.Set(typed, theirs);
        changes.Add(
            new FieldChange(part.Field!, of, part.DisplayValue(opened), part.DisplayValue(saved), part.DisplayValue(typed), clashes, Take)
        );
        if (!clashes)
            Take();
    }

    // A choice is there or not: who changed it made it what the other may only have left as it was, so choices never clash.
    private static void CompareChoices(FormProperty part, IList opened, IList saved, IList typed, List<FieldChange> changes)
    {
        foreach (var choice in opened.Cast<object>().Union(saved.Cast<object>()).ToList())
        {
            var (before, theirs, yours) = (opened.Contains(choice), saved.Contains(choice), typed.Contains(choice));
            if (before == theirs)
                continue;
            if (theirs && !yours)
                typed.Add(choice);
            else if (!theirs && yours)
                typed.Remove(choice);
            changes.Add(new FieldChange(part.Field!, choice, before, theirs, yours, Clashes: false, () => { }));
        }
    }

    private static void CompareRows(FormProperty part, IList opened, IList saved, IList typed, object? of, List<FieldChange> changes)
    {
        var nested = FormProperty.AllOf(part.Row!).Any(p => p.Row is not null);
        var orders = (Opened: part.Keys(opened), Saved: part.Keys(saved), Typed: part.Keys(typed));
        foreach (var key in orders.Saved.Union(orders.Opened).ToList())
        {
            var (before, theirs, yours) = (part.FindRow(opened, key), part.FindRow(saved, key), part.FindRow(typed, key));
            if (nested && theirs is not null)
            {
                if (yours is null)
                    typed.Add(yours = part.CopyWithListsCleared(theirs));
                Compare(before ?? part.CopyWithListsCleared(theirs), theirs, yours, key, changes);
            }
            else if (!nested)
                CompareRow(part, typed, key, of, (before, theirs, yours), changes);
        }
        if (part.Field!.Ordered)
            CompareOrder(part, opened, saved, typed, orders, changes);
    }

    private static void CompareRow(
        FormProperty part,
        IList typed,
        object key,
        object? of,
        (object? Before, object? Theirs, object? Yours) row,
        List<FieldChange> changes
    )
    {
        if (row is { Theirs: { } now, Yours: { } own })
            foreach (var kept in FormProperty.AllOf(part.Row!).Where(p => p.FromBook))
                kept.Set(own, kept.Get(now));
        if (FormProperty.SameValue(row.Before, row.Theirs))
            return;
        var clashes = !FormProperty.SameValue(row.Yours, row.Before) && !FormProperty.SameValue(row.Yours, row.Theirs);
        void Take() => part.PutOrRemoveRow(typed, key, row.Theirs);
        changes.Add(
            new FieldChange(part.Field!, of, FormProperty.DeepCopy(row.Before), row.Theirs, FormProperty.DeepCopy(row.Yours), clashes, Take)
        );
        if (!clashes)
            Take();
    }

    private static void CompareOrder(
        FormProperty part,
        IList opened,
        IList saved,
        IList typed,
        (List<object> Opened, List<object> Saved, List<object> Typed) keys,
        List<FieldChange> changes
    )
    {
        var all = keys.Opened.Intersect(keys.Saved).Intersect(keys.Typed).ToHashSet();
        var (before, theirs, yours) = (keys.Opened.Where(all.Contains), keys.Saved.Where(all.Contains), keys.Typed.Where(all.Contains));
        if (before.SequenceEqual(theirs))
            return;
        var clashes = !yours.SequenceEqual(before) && !yours.SequenceEqual(theirs);
        void Take() => part.SortByKeys(typed, keys.Saved);
        changes.Add(
            new FieldChange(Order, null, part.DeepCopyRows(opened), part.DeepCopyRows(saved), part.DeepCopyRows(typed), clashes, Take)
        );
        if (!clashes)
            Take();
    }
}
