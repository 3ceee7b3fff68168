using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>Reads baskets.</summary>
/// <param name="validator">Checks the relations between members.</param>
public sealed class BasketReader(IValidator<BasketRequest> validator)
    : RequestReader<BasketRequest>(ContractJson.Default.BasketRequest, ContractReader.BasketRequest, validator);
