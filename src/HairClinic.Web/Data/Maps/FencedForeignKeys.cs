using System.Linq.Expressions;

namespace HairClinic.Web.Data.Maps;

/// <summary>References between fenced tables always carry the practice: foreign keys are checked outside row security.</summary>
public static class FencedForeignKeys
{
    /// <summary>A reference to another row of the same practice, which then cannot be deleted.</summary>
    public static void AddReference<T, TOther>(this EntityTypeBuilder<T> builder, Expression<Func<T, object?>> key)
        where T : PracticeOwned
        where TOther : PracticeOwned =>
        builder.HasOne<TOther>().WithMany().HasForeignKey("PracticeId", NameOf(key)).OnDelete(DeleteBehavior.NoAction);

    /// <summary>Rows that live and die with their parent.</summary>
    public static void AddChildren<T, TPart>(
        this EntityTypeBuilder<T> builder,
        Expression<Func<T, IEnumerable<TPart>?>> parts,
        Expression<Func<TPart, object?>> key
    )
        where T : PracticeOwned
        where TPart : PracticeOwned
    {
        builder.HasMany(parts).WithOne().HasForeignKey("PracticeId", NameOf(key)).OnDelete(DeleteBehavior.Cascade);
        builder.Navigation(parts!).UsePropertyAccessMode(PropertyAccessMode.Field);
    }

    private static string NameOf(LambdaExpression key) =>
        key.Body switch
        {
            MemberExpression member => member.Member.Name,
            UnaryExpression { Operand: MemberExpression member } => member.Member.Name,
            _ => throw new ArgumentException("Name one property.", nameof(key)),
        };
}
