using System.Collections;
using System.Globalization;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Language;
using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Tests.Layout;
using Microsoft.Extensions.Localization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using NodaTime;

namespace HairClinic.Web.Tests.Shell.Edits;

/// <summary>Every form that edits a row of the book takes part, with every property that can be written: a new field cannot be forgotten.</summary>
public sealed class EveryFormTests
{
    private static readonly Type[] Forms =
    [
        .. typeof(IEditInput)
            .Assembly.GetTypes()
            .Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IEditInput))),
        typeof(Web.Features.Clients.EditClient.Input),
        typeof(Web.Features.Settings.EditAftercare.Input),
    ];

    private static readonly StringLocalizer<Words> Words = new(
        new ResourceManagerStringLocalizerFactory(Options.Create(new LocalizationOptions()), NullLoggerFactory.Instance)
    );

    public static TheoryData<string> Names => [.. Forms.Select(f => f.FullName!)];

    public static TheoryData<string, string> Fields =>
        [.. Forms.SelectMany(f => FormProperty.AllOf(f).Where(p => p.Field is not null).Select(p => (f.FullName!, p.Name)))];

    [Fact]
    public void All_forms_are_found() => Assert.InRange(Forms.Length, 13, 40);

    [Theory, MemberData(nameof(Names))]
    public void Each_property_is_a_field_or_says_why_it_is_none(string form) =>
        Assert.Empty(FormProperty.AllOf(FormOf(form)).Where(p => !(p.Field is not null ^ p.FromBook ^ p.OfTheForm)).Select(p => p.Name));

    // The label has its home in the form; what the attribute says must be the very words.
    [Theory, MemberData(nameof(Names))]
    public void Each_field_is_called_what_the_form_calls_it(string form)
    {
        var type = FormOf(form);
        var slice = type.DeclaringType!.Name;
        var folder = SourceTree.Slices().Single(s => s.Slice == slice).Path;
        var said = string.Concat(Directory.GetFiles(folder, "*.razor").Select(File.ReadAllText));

        Assert.Empty(
            FormProperty
                .AllOf(type)
                .Where(p => p.Field is not null && !said.Contains($"L[\"{p.Field.Label}\"", StringComparison.Ordinal))
                .Select(p => p.Name)
        );
    }

    [Theory, MemberData(nameof(Fields))]
    public void What_the_other_changed_is_named_and_stands_in_the_form(string form, string field)
    {
        var (opened, saved, typed, part) = Three(form, field);
        Alter(part, saved);

        var changes = EditMerge.MergeChanges(opened, saved, typed);

        Assert.All(changes, c => Assert.False(c.Clashes));
        Assert.All(changes, c => Assert.NotEqual(Said(c.Before, c, "the old one"), Said(c.Theirs, c, "the new one")));
        Assert.Single(changes.Select(c => c.Field).Distinct());
        Assert.True(FormProperty.SameValue(part.Get(saved), part.Get(typed)));
    }

    [Theory, MemberData(nameof(Fields))]
    public void What_was_typed_stays(string form, string field)
    {
        var (opened, saved, typed, part) = Three(form, field);
        Alter(part, typed);
        var before = FormProperty.DeepCopy(part.Get(typed));

        Assert.Empty(EditMerge.MergeChanges(opened, saved, typed));
        Assert.True(FormProperty.SameValue(before, part.Get(typed)));
    }

    [Theory, MemberData(nameof(Fields))]
    public void What_both_changed_is_a_clash_and_stays_as_typed_until_theirs_is_taken(string form, string field)
    {
        var (opened, saved, typed, part) = Three(form, field);
        Alter(part, saved);
        Alter(part, typed, times: 2);
        var mine = FormProperty.DeepCopy(part.Get(typed));

        var changes = EditMerge.MergeChanges(opened, saved, typed);

        // Of a choice each of the two can only have put in or taken out.
        if (part.IsList && part.Row is null || part.Type == typeof(bool))
        {
            Assert.All(changes, c => Assert.False(c.Clashes));
            return;
        }
        var clash = Assert.Single(changes);
        Assert.True(clash.Clashes);
        Assert.True(FormProperty.SameValue(mine, part.Get(typed)));
        clash.TakeTheirs();
        Assert.True(FormProperty.SameValue(part.Get(saved), part.Get(typed)));
    }

    // Rows are compared with all they hold.
    [Theory, MemberData(nameof(Fields))]
    public void Each_part_of_a_row_is_looked_at(string form, string field)
    {
        var (opened, _, _, part) = Three(form, field);
        if (part.Row is null)
            return;
        foreach (var inner in FormProperty.AllOf(part.Row).Where(p => !p.FromBook && p.Row is null))
        {
            var (saved, typed) = (Copied(opened), Copied(opened));
            var row = part.List(saved)[0]!;
            var key = ((IFormRow)row).Key;
            inner.Set(row, Other(inner.Type, inner.Get(row), 1));
            // Another key is another row.
            if (!Equals(key, ((IFormRow)row).Key))
                continue;

            Assert.NotEmpty(EditMerge.MergeChanges(opened, saved, typed));
            Assert.True(FormProperty.SameValue(part.Get(saved), part.Get(typed)), inner.Name);
        }
    }

    private static string Said(object? value, FieldChange change, string name) =>
        new FieldFormatter(Words, value is null ? new Dictionary<object, string>() : new() { [value] = name }).Format(value, change.Field);

    private static Type FormOf(string name) => Forms.Single(f => f.FullName == name);

    private static (object Opened, object Saved, object Typed, FormProperty Part) Three(string form, string field)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
        var opened = Filled(FormOf(form));
        return (opened, Copied(opened), Copied(opened), FormProperty.AllOf(opened.GetType()).Single(p => p.Name == field));
    }

    private static object Copied(object form) => FormProperty.DeepCopy(form)!;

    // A form with something in each field, one row in each list.
    private static object Filled(Type type)
    {
        var form = Activator.CreateInstance(type)!;
        foreach (var part in FormProperty.AllOf(type))
            if (!part.IsList)
                part.Set(form, Other(part.Type, part.Get(form), 1));
            else if (part.List(form) is { Count: 0 } list)
                list.Add(part.Row is { } row ? Filled(row) : Guid.CreateVersion7());
        return form;
    }

    private static void Alter(FormProperty part, object form, int times = 1)
    {
        if (!part.IsList)
            part.Set(form, Other(part.Type, part.Get(form), times));
        else if (part.Row is null)
            part.List(form).Add(Guid.CreateVersion7());
        else
        {
            var row = part.List(form)[0]!;
            var inner = FormProperty.AllOf(part.Row).FirstOrDefault(p => p.IsList) is { } nested
                ? (nested.List(row)[0]!, FormProperty.AllOf(nested.Row!))
                : (row, FormProperty.AllOf(part.Row));
            // Not what the row is known by.
            var said = inner.Item2.Last(p => !p.FromBook && p.Type != typeof(bool));
            said.Set(inner.Item1, Other(said.Type, said.Get(inner.Item1), times));
        }
    }

    private static object? Other(Type type, object? value, int times)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string))
            return $"{value}{new string('x', times)}";
        if (type == typeof(int))
            return ((int?)value ?? 0) + times;
        if (type == typeof(long))
            return ((long?)value ?? 0) + times;
        if (type == typeof(uint))
            return ((uint?)value ?? 0) + (uint)times;
        if (type == typeof(bool))
            return !(bool)value!;
        if (type == typeof(Guid))
            return Guid.CreateVersion7();
        if (type == typeof(LocalDate))
            return ((LocalDate?)value ?? new LocalDate(2027, 1, 1)).PlusDays(times);
        if (type == typeof(LocalTime))
            return ((LocalTime?)value ?? new LocalTime(9, 0)).PlusMinutes(times);
        if (type == typeof(WeekdaySet))
            return WeekdaySet.Of((IsoDayOfWeek)(((WeekdaySet)value!).IsEmpty ? 1 : 1 + times));
        if (type == typeof(EditPractice.PreparationSeen))
            return new EditPractice.PreparationSeen(10 + times, 20 + times, 12);
        var values = Enum.GetValues(type).Cast<object>().ToList();
        return values[(values.IndexOf(value ?? values[0]) + times) % values.Count];
    }
}
