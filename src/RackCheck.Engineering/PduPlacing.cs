namespace RackCheck.Engineering;

/// <summary>Places of vertical PDUs beside the rear uprights.</summary>
/// <remarks>A place is as long as the uprights. Common practice, no source.</remarks>
public static class PduPlacing
{
    /// <summary>Places that vertical PDUs need: each goes into the first place with enough length left, longest first.</summary>
    /// <param name="lengthsMm">Length of each PDU, mm, above 0; null where not known, which takes a whole place, as does one longer than the uprights.</param>
    /// <param name="uprightMm">Length of the uprights, mm, above 0.</param>
    /// <returns>Number of places. Example: uprights of 1866.9 hold two of 900 in one place, but not two of 950.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length of 0 or less, or not a finite number.</exception>
    public static int PlacesFor(IEnumerable<double?> lengthsMm, double uprightMm)
    {
        Require.Positive(uprightMm);
        var free = new List<double>();
        foreach (var length in lengthsMm.Select(l => l ?? uprightMm).OrderDescending())
        {
            Require.Positive(length);
            var place = free.FindIndex(left => !Comparison.IsOver(length, left));
            if (place >= 0)
            {
                free[place] -= length;
            }
            else
            {
                free.Add(uprightMm - length);
            }
        }

        return free.Count;
    }
}
