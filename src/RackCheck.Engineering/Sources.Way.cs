namespace RackCheck.Engineering;

/// <content>Working at the rack, and its way in.</content>
public static partial class Sources
{
    /// <summary>Heights of keys and screens.</summary>
    public static Source ConsolePractice { get; } = new(
        "practice: console heights",
        "Keys are worked from 0.65 m, seated, to 1.1 m, standing; a screen is looked at with its middle from 1.1 m, seated, to 1.7 m, standing.",
        SourceStanding.CommonPractice);

    /// <summary>Aisle before the front.</summary>
    public static Source AislePractice { get; } = new(
        "practice: aisles",
        "The aisle before a rack takes its equipment pulled out fully; slides whose pull is not given come out as far as the body is deep.",
        SourceStanding.CommonPractice);

    /// <summary>Racks that nobody is near.</summary>
    public static Source RemotePractice { get; } = new(
        "practice: remote sites",
        "Where nobody is near, computers have a console that is reached from afar, and what may hang or stands by is on outlets that are switched from afar.",
        SourceStanding.CommonPractice);

    /// <summary>Racks that the public can reach.</summary>
    public static Source AccessPractice { get; } = new(
        "practice: public access",
        "Where the public can reach a rack, its doors and panels are all there and locked.",
        SourceStanding.CommonPractice);

    /// <summary>Arrangements for a delivery.</summary>
    public static Source ReceiptPractice { get; } = new(
        "practice: receipt",
        "A heavy delivery is agreed with somebody who takes receipt; over about 50 kg it comes with lifting equipment.",
        SourceStanding.CommonPractice);
}
