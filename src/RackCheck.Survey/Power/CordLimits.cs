namespace RackCheck.Survey.Power;

/// <summary>The limits of a cord assignment, strictest first. They are relaxed in this order.</summary>
internal enum CordLimits
{
    /// <summary>The design share of every breaker and rating, and the full limit with any one supply lost.</summary>
    DesignShare,

    /// <summary>Every breaker and rating, also with any one supply lost.</summary>
    Failover,

    /// <summary>Every breaker and rating in normal use.</summary>
    Ratings,

    /// <summary>The breakers of outlet groups in normal use.</summary>
    Breakers,

    /// <summary>No current limit: the plug fits the socket, and the voltage suits the item.</summary>
    Sockets,
}
