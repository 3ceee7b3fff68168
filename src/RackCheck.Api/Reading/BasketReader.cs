using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>Reads baskets.</summary>
/// <param name="validator">What members have to do with each other.</param>
public sealed class BasketReader(IValidator<BasketRequest> validator) : RequestReader<BasketRequest>(ContractJson.Default.BasketRequest, validator);
