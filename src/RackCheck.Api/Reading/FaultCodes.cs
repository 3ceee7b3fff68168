using System.Reflection;
using RackCheck.Planning.Baskets;

namespace RackCheck.Api.Reading;

/// <summary>Codes of faults in a request. They are part of the contract: new codes may be added, none is renamed.</summary>
public static class FaultCodes
{
    /// <summary>The request body is not valid JSON.</summary>
    public const string NotJson = "not-json";

    /// <summary>Nesting deeper than the limit.</summary>
    public const string TooDeep = "too-deep";

    /// <summary>A member that the contract does not define.</summary>
    public const string UnknownMember = "unknown-member";

    /// <summary>A duplicate member.</summary>
    public const string DuplicateMember = "duplicate-member";

    /// <summary>A required member is missing.</summary>
    public const string MissingMember = "missing-member";

    /// <summary>A value of the wrong type.</summary>
    public const string WrongType = "wrong-type";

    /// <summary>A null where a value is required.</summary>
    public const string NullValue = "null-value";

    /// <summary>A string that is not one of the allowed values.</summary>
    public const string UnknownValue = "unknown-value";

    /// <summary>A number outside its range.</summary>
    public const string OutOfRange = "out-of-range";

    /// <summary>A string that is too short or too long.</summary>
    public const string WrongLength = "wrong-length";

    /// <summary>A string in the wrong format.</summary>
    public const string WrongForm = "wrong-form";

    /// <summary>A list with too few or too many elements.</summary>
    public const string WrongCount = "wrong-count";

    /// <summary>A basket without a cabinet, and none is on offer, or the catalogue does not have the existing one.</summary>
    public const string NoCabinet = BasketPlanner.NoCabinet;

    /// <summary>A basket with more items to mount than a rack can have.</summary>
    public const string TooManyItems = BasketPlanner.TooManyItems;

    /// <summary>A duplicate id.</summary>
    public const string DuplicateId = "duplicate-id";

    /// <summary>A reference to an id that does not exist.</summary>
    public const string UnknownId = "unknown-id";

    /// <summary>A rule that does not exist.</summary>
    public const string UnknownRule = "unknown-rule";

    /// <summary>A limit that the rule does not have.</summary>
    public const string UnknownLimit = "unknown-limit";

    /// <summary>A safety rule that is weakened, switched off or accepted.</summary>
    public const string SafetyWeakened = "safety-weakened";

    /// <summary>Two members that contradict each other.</summary>
    public const string Inconsistent = "inconsistent";

    /// <summary>A member that this endpoint does not accept.</summary>
    public const string NotHere = "not-here";

    /// <summary>There are more faults than are listed.</summary>
    public const string More = "more-faults";

    /// <summary>All codes with the names of their constants.</summary>
    public static IReadOnlyList<(string Name, string Code)> All { get; } =
    [
        .. typeof(FaultCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Where(f => f.IsLiteral)
            .Select(f => (f.Name, (string)f.GetRawConstantValue()!)),
    ];
}
