// What a check, a basket and a proposal are asked at, and how their answers are shown.
import { button } from "./cards.js";
import { titleOf } from "./lines.js";

const { make, sign } = window;

// The racks of an answer, each with its report: those of the first alternative of a proposal.
export const kinds = {
  check: { path: "v1/checks", racksOf: (answer, request) => [{ rack: request, report: answer }] },
  basket: { path: "v1/baskets/checks", racksOf: (answer) => answer.racks },
  proposal: { path: "v1/proposals", racksOf: ({ alternatives: [first] }) => (first?.rack ? [first] : first?.racks ?? []) },
};

const list = (entries) => make("ul", {}, ...entries.map((entry) => make("li", {}, entry)));
const group = (title, entries) => (entries.length === 0 ? [] : [make("h3", {}, title), list(entries)]);
const line = (entry) => `${entry.quantity} × ${entry.partNumber}${entry.name ? ", " + entry.name : ""}: ${entry.reason ?? entry.why}`;

const priceOf = ({ price, currency }) => (price === undefined ? "" : `, ${price.toFixed(2)} ${currency ?? ""}`.trimEnd());

export const verdictLine = (report) => make("p", { class: "verdict" }, sign(report.verdict), `product ${report.verdicts.product}, site ${report.verdicts.site}`);

export function basketParts(answer, { request, take, open, apply }) {
  const changes = (title, name) => group(title, answer[name].map((entry) => {
    const words = titleOf({ list: name, entry });
    return make("span", {}, button(words, () => apply(words, [{ list: name, entry }]), { class: "line" }), " ", entry.name ? `${entry.name}${priceOf(entry)}: ` : "", entry.reason);
  }));
  const meant = (own, at, partNumber) => {
    const words = "Use " + partNumber;
    return partNumber && own.partNumber ? [button(words, () => apply(words, [{ list: "replaceLines", entry: { line: at, partNumber, quantity: own.quantity } }]), { class: "line" })] : [];
  };
  const states = answer.lineStatus.filter(({ status }) => status !== "ok").map(({ line, status, message, didYouMean }) => make("span", {},
    `Line ${Number(line.split("/")[2]) + 1}, ${status.replace("-", " ")}: ${message ?? ""} `,
    ...meant(request.lines[Number(line.split("/")[2])], line, didYouMean)));
  const instead = answer.missingLines.flatMap(({ partNumber, alternatives }) => alternatives.map((entry) => {
    const words = titleOf({ list: "missingLines", entry });
    return make("span", {}, button(words, () => apply(words, [{ list: "missingLines", entry }]), { class: "line" }), ` ${entry.name}${priceOf(entry)}, instead of ${partNumber}`);
  }));
  return [
    ...group("Lines to look at", states),
    ...changes("Lines to add", "missingLines"), ...group("Alternatives", instead), ...changes("Lines to exchange", "replaceLines"), ...changes("Lines in excess", "excessLines"),
    ...group("Needs that stay open", answer.unmet.map((need) => `${need.what}: ${need.reason}`)),
    ...(answer.completedBasket ? [make("p", {}, button("Take the completed basket", () => take(answer.completedBasket)), ` Its verdict: ${answer.completedVerdict}.`)] : []),
    ...answer.racks.map((entry, index) => make("p", {}, button(`Check rack ${index + 1} by itself`, () => open(entry.rack)))),
  ];
}

export function proposalParts(answer, { open, light }) {
  const alternatives = answer.alternatives.flatMap((alternative, index) => {
    const racks = alternative.racks ?? [alternative];
    return [
      make("h3", {}, `Alternative ${index + 1}`),
      ...racks.map((entry) => make("div", {}, verdictLine(entry.report), button("Check this rack by itself", () => open(entry.rack)))),
      ...group("Gained", alternative.gained ?? []), ...group("Given up", alternative.givenUp ?? []), ...group("Parts added", (alternative.addedLines ?? []).map(line)),
    ];
  });
  const { conflict } = answer;
  return conflict ? [...alternatives, make("h3", {}, "Requirements in conflict"),
    list(conflict.requirements.map((entry) => make("span", {}, entry.message, " ", button("Show", () => light(entry.pointers), { class: "pointer", "aria-label": "Show in the description: " + entry.message })))),
    ...(conflict.relax ? [make("p", {}, conflict.relax)] : [])] : alternatives;
}
