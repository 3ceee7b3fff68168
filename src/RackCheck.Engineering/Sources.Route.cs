namespace RackCheck.Engineering;

/// <content>Ergonomics and delivery route.</content>
public static partial class Sources
{
    /// <summary>Heights of keyboards and screens.</summary>
    public static Source ConsolePractice { get; } = new(
        "practice: console heights",
        "Keyboard height from 0.65 m (seated) to 1.1 m (standing). Height of the screen centre from 1.1 m (seated) to 1.7 m (standing).",
        SourceStanding.CommonPractice);

    /// <summary>Aisle in front of the rack.</summary>
    public static Source AislePractice { get; } = new(
        "practice: aisles",
        "The aisle in front of a rack is wide enough to extend its equipment fully. Slide rails without a stated extension extend by the depth of the body.",
        SourceStanding.CommonPractice);

    /// <summary>Unattended sites.</summary>
    public static Source RemotePractice { get; } = new(
        "practice: remote sites",
        "At an unattended site, computers have remote console access. Computers that may need a reset and standby spares are on remotely switched outlets.",
        SourceStanding.CommonPractice);

    /// <summary>Racks with public access.</summary>
    public static Source AccessPractice { get; } = new(
        "practice: public access",
        "A rack with public access has all doors and panels fitted and locked.",
        SourceStanding.CommonPractice);

    /// <summary>Delivery arrangements.</summary>
    public static Source ReceiptPractice { get; } = new(
        "practice: receipt",
        "A heavy delivery is agreed with a named recipient. Above about 50 kg, lifting equipment is provided.",
        SourceStanding.CommonPractice);
}
