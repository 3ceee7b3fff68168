using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Reading;

/// <summary>Reads descriptions of racks.</summary>
/// <param name="validator">Checks the relations between members.</param>
public sealed class DescriptionReader(IValidator<RackDescription> validator)
    : RequestReader<RackDescription>(ContractJson.Default.RackDescription, ContractReader.RackDescription, validator)
{
    /// <summary>Faults of a description after its part numbers are resolved. Product data can contradict the description.</summary>
    /// <param name="rack">The rack; as posted it is valid.</param>
    /// <returns>The faults; none if no part number was resolved.</returns>
    public IReadOnlyList<Fault> FaultsOf(ResolvedRack rack)
    {
        if (rack.Filled.Count == 0)
        {
            return [];
        }

        var faults = new FaultList();
        AddRelations(rack.Description, faults);
        return faults.IsEmpty ? [] : faults.ToList();
    }
}
