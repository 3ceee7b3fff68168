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
        "The aisles of a rack are wide enough to open its doors and to extend its equipment fully. A door leaf is as wide as the cabinet, with two leaves " +
            "half as wide. Slide rails without a stated extension extend by the depth of the body.",
        SourceStanding.CommonPractice);

    /// <summary>Unattended sites.</summary>
    public static Source RemotePractice { get; } = new(
        "practice: remote sites",
        "An unattended site has remote console access or remotely switched outlets. Computers that may need a reset and standby spares are on remotely " +
            "switched outlets. A local KVM switch is not remote access.",
        SourceStanding.CommonPractice);

    /// <summary>Racks that are transported with their equipment.</summary>
    public static Source TransportPractice { get; } = new(
        "practice: loaded transport",
        "The transport load rating of a cabinet, with its equipment mounted, is between half and all of its static rating. On a ramp the rack leans by the " +
            "slope.",
        SourceStanding.CommonPractice);

    /// <summary>Places of vertical PDUs.</summary>
    public static Source PduPlacePractice { get; } = new(
        "practice: PDU places",
        "Two vertical PDUs are mounted on each side, behind the rear uprights, and are no longer than these. A vertical PDU with its bracket is about 56 mm " +
            "wide. Cables are soft and give way to it.",
        SourceStanding.CommonPractice);

    /// <summary>Anchorage of racks.</summary>
    public static Source AnchoragePractice { get; } = new(
        "practice: anchorage",
        "A wall-hung cabinet carries no more than its rating for the wall, its own mass included. In a seismic zone, racks are bolted to the building.",
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
