// What a check, a basket and a proposal are asked at, and how their answers are shown.
import { button } from "./cards.js";

const { make, sign } = window;

export const kinds = {
  check: { path: "v1/checks", rackOf: (answer, request) => request, reportsOf: (answer) => [answer] },
  basket: { path: "v1/baskets/checks", rackOf: (answer) => answer.rack, reportsOf: (answer) => answer.racks.map((entry) => entry.report) },
  proposal: { path: "v1/proposals", rackOf: (answer) => first(answer)?.rack, reportsOf: (answer) => (first(answer) ? [first(answer).report] : []) },
};

// A proposal of several cabinets lists them under racks.
const first = (answer) => { const alternative = answer.alternatives[0]; return alternative?.rack ? alternative : alternative?.racks?.[0]; };

const list = (entries) => make("ul", {}, ...entries.map((entry) => make("li", {}, entry)));
const group = (title, entries) => (entries.length === 0 ? [] : [make("h3", {}, title), list(entries)]);
const line = (entry) => `${entry.quantity} × ${entry.partNumber}${entry.name ? ", " + entry.name : ""}: ${entry.reason ?? entry.why}`;

export const verdictLine = (report) => make("p", { class: "verdict" }, sign(report.verdict), `product ${report.verdicts.product}, site ${report.verdicts.site}`);

export function basketParts(answer, { take, open }) {
  return [
    ...group("Lines to add", answer.missingLines.map(line)),
    ...group("Lines to exchange", answer.replaceLines.map(line)),
    ...group("Surplus lines", answer.excessLines.map(line)),
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
