namespace HairClinic.Domain.Replacement;

/// <summary>What there is to do about a client's next unit.</summary>
public enum OrderVerdict
{
    /// <summary>Nothing on the head and nothing in house that could go on it: the only client of whom "without hair" is true.</summary>
    WithoutHair,

    /// <summary>The first order in flight may come after the hair in house is worn out; a new order lowers nothing.</summary>
    OrderMayComeTooLate,

    /// <summary>The last day to order has passed.</summary>
    OrderNow,

    /// <summary>The last day to order is near: it is something to do.</summary>
    OrderSoon,

    /// <summary>There is time.</summary>
    Wait,
}
