using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>Reads proposal requests.</summary>
/// <param name="validator">Checks relations between members.</param>
public sealed class ProposalReader(IValidator<ProposalRequest> validator)
    : RequestReader<ProposalRequest>(ContractJson.Default.ProposalRequest, ContractReader.ProposalRequest, validator);
