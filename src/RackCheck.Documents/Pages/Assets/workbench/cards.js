// Findings and questions as cards.
import { typeOf } from "./schema.js";

// From the script that all pages share.
const { make, sign } = window;

const quantity = (value) => value && `${value.value} ${value.unit}`;
const link = (root, path, words) => make("a", { href: new URL(path, root).href }, words);

function button(words, press, attributes = {}) {
  const own = make("button", { type: "button", ...attributes }, words);
  own.addEventListener("click", press);
  return own;
}

// One finding. The parts that a program acts on: severity, arithmetic, sources, members, remedies. Places are pointers into the description, fixes are what a
// press of a button does.
export function findingCard(finding, { root, light, reveal, places, fixes, note, number = 1 }) {
  const facts = [
    ["Actual", quantity(finding.actual)], ["Limit", quantity(finding.limit)], ["Calculation", finding.calculation], ["Sources", finding.sources.join("; ")],
    ["No remedy", finding.remedies.length === 0 && fixes.length === 0 ? finding.noRemedy : null], ["Accepted", finding.accepted?.reason],
  ].filter(([, value]) => value);
  const card = make("li", { class: "card", id: "finding-" + finding.fingerprint + (number > 1 ? "-" + number : ""), tabindex: "-1" },
    make("h3", {}, sign(finding.severity), finding.subject),
    make("p", {}, finding.message),
    make("dl", { class: "facts" }, ...facts.flatMap(([name, value]) => [make("dt", {}, name), make("dd", {}, value)])),
    make("p", { class: "small" }, finding.safety ? "Safety rule " : "Rule ", link(root, "docs/rules/" + finding.rule, finding.rule)),
    make("p", {}, ...places.map((pointer) => button(pointer || "/", () => reveal(finding, pointer), { class: "pointer", "aria-label": `Show ${pointer} in the description` }))),
    ...(note ? [make("p", { class: "small" }, note)] : []),
    ...fixes.map(({ title, press }) => make("p", {}, button(title, press, { class: "remedy", "aria-label": "Apply remedy: " + title }))));
  for (const event of ["pointerenter", "focusin"]) card.addEventListener(event, () => light(finding));
  for (const event of ["pointerleave", "focusout"]) card.addEventListener(event, () => light(null));
  return card;
}

function field(schema, name) {
  const type = schema ? typeOf(schema) : "value";
  const choices = type === "boolean" ? [["true", "yes"], ["false", "no"]] : type === "choice" ? schema.enum.filter((value) => value !== null).map((value) => [JSON.stringify(value), value]) : null;
  if (choices) return make("select", { name }, make("option", { value: "" }, "not known"), ...choices.map(([value, words]) => make("option", { value }, words)));
  const isNumber = type === "number" || type === "integer";
  return make("input", isNumber
    ? { name, type: "number", step: "any", ...(schema.minimum === undefined ? {} : { min: schema.minimum }), ...(schema.maximum === undefined ? {} : { max: schema.maximum }) }
    : { name, type: "text", placeholder: type === "array" ? "[ ... ]" : type === "string" ? "text" : "JSON", "data-type": type });
}

// What a field says as JSON; undefined where it says nothing.
function valueOf(own) {
  if (own.value === "") return undefined;
  return own.dataset.type === "string" ? own.value : JSON.parse(own.value);
}

// One question with a field for each member that answers it.
export async function questionCard(question, { root, schemaAt, answer, light }) {
  const fault = make("p", { class: "error", role: "alert" });
  const fields = await Promise.all(question.pointers.map(async (pointer) => {
    const own = field(await schemaAt(pointer), pointer);
    return make("label", {}, make("code", {}, pointer), own);
  }));
  const form = make("form", {}, ...fields, make("button", {}, "Answer"), fault);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    fault.textContent = "";
    try {
      const values = [...form.elements].filter((own) => own.name).map((own) => [own.name, valueOf(own)]).filter(([, value]) => value !== undefined);
      if (values.length > 0) answer(question, values);
    } catch {
      fault.textContent = "An answer is not valid JSON.";
    }
  });
  const card = make("li", { class: "card" }, make("h3", {}, question.ask),
    make("p", { class: "small" }, `Decides the verdict on the ${question.decides}. Rules: `, ...question.rules.flatMap((rule, index) => [index > 0 ? ", " : "", link(root, "docs/rules/" + rule, rule)])), form);
  card.addEventListener("focusin", () => light(question));
  return card;
}

export { button, link };
