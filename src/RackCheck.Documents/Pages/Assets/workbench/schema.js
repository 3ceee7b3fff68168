// Help on members, from the contract: the same text as in the reference.
import { partsOf } from "./json.js";

const roots = { check: "RackDescription", basket: "BasketRequest", proposal: "ProposalRequest" };

export class Schema {
  constructor(contract) {
    this.contract = contract;
  }

  // The contract is read when help is first wanted.
  async #schemas() {
    this.read ??= fetch(this.contract).then((answer) => answer.json()).then((contract) => contract.components.schemas);
    return this.read;
  }

  #resolve(schemas, schema) {
    const own = schema?.$ref ?? (schema?.oneOf ?? schema?.anyOf)?.find((choice) => choice.$ref)?.$ref;
    const target = own ? schemas[own.split("/").at(-1)] : null;
    return target ? { ...target, name: own.split("/").at(-1), note: schema.description } : schema ?? {};
  }

  // The schema of the value at a pointer; its note is the description of the member.
  async at(kind, pointer) {
    const schemas = await this.#schemas();
    let at = { ...schemas[roots[kind]], name: roots[kind] };
    for (const part of partsOf(pointer)) {
      const next = at.properties?.[part] ?? (at.items && /^\d+$/.test(part) ? at.items : typeof at.additionalProperties === "object" ? at.additionalProperties : null);
      if (!next) return null;
      at = this.#resolve(schemas, next);
    }
    return at;
  }

  async help(kind, pointer) {
    const schema = pointer ? await this.at(kind, pointer) : null;
    if (!schema) return "";
    const bounds = schema.minimum !== undefined && schema.maximum !== undefined ? ` ${schema.minimum} to ${schema.maximum}.` : "";
    const values = schema.enum ? ` One of: ${schema.enum.filter((value) => value !== null).join(", ")}.` : "";
    return `${partsOf(pointer).filter((part) => !/^\d+$/.test(part)).at(-1)}: ${typeOf(schema)}. ${schema.note ?? schema.description ?? ""}${bounds}${values}`;
  }

  // Names that can stand in an object, or values that a member can have.
  async members(kind, pointer, isValue) {
    const schema = await this.at(kind, pointer);
    if (!schema) return [];
    if (isValue) {
      const values = schema.enum?.filter((value) => value !== null) ?? (typeOf(schema) === "boolean" ? [true, false] : []);
      return values.map((name) => ({ name, isText: typeof name === "string" }));
    }
    const schemas = await this.#schemas();
    return Object.entries(schema.properties ?? {}).map(([name, member]) => ({ name, type: typeOf(this.#resolve(schemas, member)), description: member.description }));
  }
}

// The type without null, which every optional member allows.
export function typeOf(schema) {
  const types = [schema.type ?? []].flat().filter((type) => type !== "null");
  return schema.enum ? "choice" : types[0] ?? schema.name ?? "value";
}
