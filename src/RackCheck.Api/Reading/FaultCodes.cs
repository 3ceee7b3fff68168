namespace RackCheck.Api.Reading;

/// <summary>Codes of faults in a request. Part of the contract: added to, never renamed.</summary>
public static class FaultCodes
{
    /// <summary>The text is no JSON.</summary>
    public const string NotJson = "not-json";

    /// <summary>Nested deeper than the service reads.</summary>
    public const string TooDeep = "too-deep";

    /// <summary>A member that the contract does not know.</summary>
    public const string UnknownMember = "unknown-member";

    /// <summary>A member that stands twice.</summary>
    public const string DuplicateMember = "duplicate-member";

    /// <summary>A needed member is absent.</summary>
    public const string MissingMember = "missing-member";

    /// <summary>A value of another type.</summary>
    public const string WrongType = "wrong-type";

    /// <summary>A null where a value is needed.</summary>
    public const string NullValue = "null-value";

    /// <summary>A word that is not one of those allowed.</summary>
    public const string UnknownValue = "unknown-value";

    /// <summary>A number outside its range.</summary>
    public const string OutOfRange = "out-of-range";

    /// <summary>A text too short or too long.</summary>
    public const string WrongLength = "wrong-length";

    /// <summary>A text not of the form asked for.</summary>
    public const string WrongForm = "wrong-form";

    /// <summary>A list with too few or too many elements.</summary>
    public const string WrongCount = "wrong-count";

    /// <summary>An id that is used twice.</summary>
    public const string DuplicateId = "duplicate-id";

    /// <summary>An id that points nowhere.</summary>
    public const string UnknownId = "unknown-id";

    /// <summary>A rule that does not exist.</summary>
    public const string UnknownRule = "unknown-rule";

    /// <summary>A limit that the rule does not have.</summary>
    public const string UnknownLimit = "unknown-limit";

    /// <summary>A safety rule made weaker, switched off or accepted.</summary>
    public const string SafetyWeakened = "safety-weakened";

    /// <summary>Two members that contradict each other.</summary>
    public const string Inconsistent = "inconsistent";

    /// <summary>A member that this endpoint does not take.</summary>
    public const string NotHere = "not-here";

    /// <summary>There are more faults than are listed.</summary>
    public const string More = "more-faults";
}
