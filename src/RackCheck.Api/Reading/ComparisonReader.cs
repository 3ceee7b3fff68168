using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>Reads comparison requests.</summary>
/// <param name="validator">Checks relations between members.</param>
public sealed class ComparisonReader(IValidator<ComparisonRequest> validator)
    : RequestReader<ComparisonRequest>(ContractJson.Default.ComparisonRequest, ContractReader.ComparisonRequest, validator);
