// JSON as it is written in listings, JSON pointers (RFC 6901) and JSON patches (RFC 6902).

// Breaks into short lines, by the same rule as the listings of the documentation.
const shortLine = 44;

const oneLine = (value) => {
  if (Array.isArray(value)) return "[" + value.map(oneLine).join(", ") + "]";
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  const members = Object.entries(value).map(([name, own]) => JSON.stringify(name) + ": " + oneLine(own));
  return members.length === 0 ? "{}" : "{ " + members.join(", ") + " }";
};

export function layOut(value, indent = "", used = 0) {
  const whole = oneLine(value);
  if (value === null || typeof value !== "object" || (indent !== "" && used + whole.length <= shortLine)) return whole;
  const inner = indent + "  ";
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  const children = Object.entries(value).map(([name, own]) => {
    const head = Array.isArray(value) ? "" : JSON.stringify(name) + ": ";
    return "\n" + inner + head + layOut(own, inner, inner.length + head.length);
  });
  return children.length === 0 ? whole : open + children.join(",") + "\n" + indent + close;
}

export const partsOf = (pointer) => pointer.split("/").slice(1).map((part) => part.replaceAll("~1", "/").replaceAll("~0", "~"));

// Sets a value; objects on the way to it that are absent are made.
export function withValue(document, pointer, value) {
  const copy = structuredClone(document);
  const parts = partsOf(pointer);
  let at = copy;
  for (const part of parts.slice(0, -1)) at = at[part] ??= {};
  at[parts.at(-1)] = value;
  return copy;
}

// Applies the operations of a patch. A patch that does not apply throws, and the document stays as it was.
export function patched(document, operations) {
  const holder = { "": structuredClone(document) };
  for (const { op, path, from, value } of operations) {
    const at = (pointer) => {
      const parts = ["", ...partsOf(pointer)];
      const parent = parts.slice(0, -1).reduce((own, part) => own?.[part], holder);
      if (parent === null || typeof parent !== "object") throw new Error(`There is nothing at ${pointer}.`);
      return [parent, parts.at(-1)];
    };
    const add = (pointer, added) => {
      const [parent, name] = at(pointer);
      if (Array.isArray(parent)) parent.splice(name === "-" ? parent.length : Number(name), 0, added);
      else parent[name] = added;
    };
    const take = (pointer) => {
      const [parent, name] = at(pointer);
      if (!Object.hasOwn(parent, name)) throw new Error(`There is nothing at ${pointer}.`);
      const taken = parent[name];
      if (Array.isArray(parent)) parent.splice(Number(name), 1);
      else delete parent[name];
      return taken;
    };
    // In place, so that a member keeps its line.
    const put = (pointer, own) => {
      const [parent, name] = at(pointer);
      if (!Object.hasOwn(parent, name)) throw new Error(`There is nothing at ${pointer}.`);
      parent[name] = structuredClone(own);
    };
    const read = (pointer) => { const [parent, name] = at(pointer); return parent[name]; };
    if (op === "add") add(path, structuredClone(value));
    else if (op === "remove") take(path);
    else if (op === "replace") put(path, value);
    else if (op === "move") add(path, take(from));
    else if (op === "copy") add(path, structuredClone(read(from)));
    else if (op === "test" && JSON.stringify(read(path)) === JSON.stringify(value)) continue;
    else throw new Error(`The operation ${op} at ${path} does not hold.`);
  }
  return holder[""];
}
