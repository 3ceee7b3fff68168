using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Reading;

/// <summary>Reads descriptions of racks.</summary>
/// <param name="validator">What members have to do with each other.</param>
public sealed class DescriptionReader(IValidator<RackDescription> validator) : RequestReader<RackDescription>(ContractJson.Default.RackDescription, validator)
{
    /// <summary>What is wrong with a description once its part numbers are filled in: what a product tells can be at odds with what is given.</summary>
    /// <param name="rack">The rack; as posted it is sound.</param>
    /// <returns>The faults; none where nothing was filled in.</returns>
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
