// The workbench: a description on the left, its drawing on the right, findings below. Everything is asked of the service; nothing is stored.
import { createEditor } from "./editor.js";
import { toFragment, fromFragment } from "./case.js";
import { layOut, partsOf, patched, withValue } from "./json.js";
import { Schema } from "./schema.js";
import { DrawnRack } from "./drawing.js";
import { findingCard, questionCard, button, link } from "./cards.js";
import { changeAt, titleOf, withChanges } from "./lines.js";
import { basketParts, kinds, proposalParts, verdictLine } from "./answers.js";

const { make } = window;
const root = new URL(document.documentElement.dataset.root, location.href);
const part = (name) => document.querySelector(`[data-bench="${name}"]`);
const bench = part("bench");
const schema = new Schema(new URL("openapi/v1.json", root));
const isBeside = matchMedia("(min-width: 60rem) and (min-height: 40rem)");
const undos = [];
let kind = "check";
let shown = null;
let turn = 0;

const editor = createEditor({
  parent: part("editor"),
  label: "Description, JSON",
  help: (pointer) => schema.help(kind, pointer),
  members: (pointer, isValue) => schema.members(kind, pointer, isValue),
  changed: () => { part("stale").hidden = shown === null; },
  run: () => check(),
  moved: showHelp,
});
const drawing = new DrawnRack(part("drawing"), {
  onFinding: (fingerprint) => { const card = document.getElementById("finding-" + fingerprint); card?.scrollIntoView({ block: "center" }); card?.focus(); },
  onItem: (id) => { const index = (shown?.racks[0]?.rack.items ?? []).findIndex((item) => item.id === id); if (index >= 0 && kind === "check") editor.light([`/items/${index}`], true); },
});

// Help for the member at the cursor, for those who do not point with a mouse.
let helped = null;
function showHelp(pointer) {
  if (helped === pointer) return;
  helped = pointer;
  schema.help(kind, pointer).then((words) => { if (helped === pointer) part("help").textContent = words; }, () => {});
}

// Lights what a finding or a question is about. Pointers of a basket or a proposal lead into a rack that was made, not into the request.
function light(entry, rack = shown?.racks[0]?.rack) {
  const pointers = entry?.pointers ?? [];
  if (kind === "check") editor.light(pointers, pointers.length > 0 && isBeside.matches);
  const items = pointers.map((pointer) => partsOf(pointer)).filter(([list]) => list === "items").map(([, index]) => rack?.items?.[index]?.id);
  drawing.light(entry?.fingerprint, items);
}

function reveal(finding, pointer) {
  light(finding);
  editor.light([pointer], true);
  part("editor").scrollIntoView({ block: "nearest" });
}

// Changes the description by a press of a button; it can be undone.
async function change(title, edit, toKind = kind) {
  let text;
  try {
    text = layOut(edit(JSON.parse(editor.text())));
  } catch (fault) {
    part("change").replaceChildren(make("p", {}, `This does not fit the description as it stands. Check it again. ${fault.message}`));
    part("change").scrollIntoView({ block: "nearest" });
    return;
  }
  undos.push({ title, text: editor.text(), kind });
  setCase(toKind, text);
  await check(title);
  toChange(part("undo"));
}

// What was pressed is gone: the focus goes where the difference is said.
function toChange(target) {
  target.focus({ preventScroll: true });
  part("verdict").scrollIntoView({ block: "start" });
}

async function apply(remedy) {
  await change(remedy.title, (document) => patched(document, remedy.patch));
  editor.light(remedy.patch.map((operation) => operation.path), true);
}

// In a basket lines are exchanged; a remedy of a rack that was made is applied to that rack, which goes on by itself.
function fixesOf(finding, rack) {
  if (kind === "check") return { fixes: finding.remedies.map((remedy) => ({ title: remedy.title, press: () => apply(remedy) })), places: finding.pointers };
  const { answer } = shown;
  const own = kind === "basket" ? answer.findingLines.find((entry) => entry.fingerprint === finding.fingerprint) : null;
  const changes = (own?.clearedBy ?? []).map((pointer) => changeAt(answer, pointer));
  const inRack = (remedy) => change(remedy.title, () => patched(rack, remedy.patch), "check");
  return {
    places: own?.lines ?? [],
    note: changes.length > 0 ? null : [own ? "The completed basket has it as well." : "", finding.remedies.length > 0 ? "A remedy applies to the rack by itself." : ""].join(" ").trim(),
    fixes: changes.length > 0 ? [{ title: changes.map(titleOf).join(", "), press: () => applyLines(changes.map(titleOf).join(", "), changes) }]
      : finding.remedies.map((remedy) => ({ title: remedy.title, press: () => inRack(remedy) })),
  };
}

const applyLines = (title, changes) => change(title, (basket) => withChanges(basket, changes));

// What the request itself has a member for: the site of a basket, and items of a proposal for one cabinet, which come first in its rack.
async function isOfRequest(pointer) {
  if (kind === "check") return true;
  const [list, index] = partsOf(pointer);
  const isOwn = list === "site" || list === "earthing" || (kind === "proposal" && list === "items" && shown.racks.length === 1 && Number(index) < shown.request.items.length);
  return isOwn && await schema.at(kind, pointer) !== null;
}

async function questionsToAnswer() {
  const all = shown.racks.flatMap(({ report }) => report.questions);
  const own = await Promise.all(all.map(async ({ pointers }) => (await Promise.all(pointers.map(isOfRequest))).every(Boolean)));
  return all.filter((question, index) => own[index] && all.findIndex((other) => other.ask === question.ask) === index);
}

async function undo() {
  const last = undos.pop();
  setCase(last.kind, last.text);
  await check("Undone: " + last.title);
  toChange(part(undos.length > 0 ? "undo" : "check"));
}

function setCase(newKind, text) {
  kind = newKind;
  part("kind").value = kind;
  editor.setText(text);
}

async function ask(path, body, accept) {
  const key = part("key").value;
  return fetch(new URL(path, root), {
    method: "POST", body,
    headers: { "Content-Type": "application/json", Accept: accept, ...(key ? { "X-API-Key": key } : {}) },
  });
}

// Checks the description as it stands. What was done before it is said with the difference that it made.
async function check(done = null) {
  const own = ++turn;
  const text = editor.text();
  const before = shown;
  bench.setAttribute("aria-busy", "true");
  history.replaceState(null, "", await toFragment(kind, text));
  try {
    const answer = await ask(kinds[kind].path, text, "application/json, application/problem+json");
    const body = await answer.json();
    if (own !== turn) return;
    if (!answer.ok) return refuse(body);
    const request = JSON.parse(text);
    shown = { kind, answer: body, request, racks: kinds[kind].racksOf(body, request) };
    part("undoing").hidden = undos.length === 0;
    part("stale").hidden = true;
    editor.showFaults([]);
    showChange(done, before, shown);
    await Promise.all([showAnswer(), draw(own)]);
  } catch (fault) {
    if (own === turn) part("verdict").replaceChildren(make("p", { class: "error" }, "The service did not answer: " + fault.message));
  } finally {
    if (own === turn) bench.removeAttribute("aria-busy");
  }
}

// A description that cannot be read: each fault stands at its line.
function refuse(problem) {
  shown = null;
  const faults = (problem.errors ?? []).map((error) => ({ pointer: error.pointer ?? "", message: error.detail }));
  editor.showFaults(faults);
  part("verdict").replaceChildren(
    make("p", {}, make("strong", {}, problem.title), ". ", problem.detail ?? "", " ", problem.type?.startsWith("/docs/") ? link(root, problem.type.slice(1), "What this problem means") : ""),
    make("ul", {}, ...faults.map((fault) => make("li", {}, button(fault.pointer || "/", () => editor.light([fault.pointer], true), { class: "pointer" }), " ", fault.message))));
  for (const name of ["change", "findings", "questions", "more"]) part(name).replaceChildren();
  drawing.clear("No drawing: the description is not valid.");
}

async function showAnswer() {
  const { answer, racks } = shown;
  const reports = racks.map(({ report }) => report);
  const findings = reports.flatMap((report) => report.findings);
  const own = turn;
  const questions = await questionsToAnswer();
  if (own !== turn) return;
  part("verdict").replaceChildren(...(answer.verdict ? [verdictLine(answer)] : []), make("p", {}, countOf(findings.length, reports.flatMap((report) => report.questions).length, questions.length)));
  part("findings").replaceChildren(...titled("Findings", racks.flatMap(({ rack, report }, index) => report.findings.map((finding) =>
    findingCard(finding, { root, reveal, number: index + 1, light: (lit) => light(lit, rack), ...fixesOf(finding, rack) })))));
  const open = (rack) => change("Check one rack by itself", () => rack, "check");
  part("more").replaceChildren(...(kind === "basket" ? basketParts(answer, { request: shown.request, open, apply: applyLines, take: (basket) => change("Take the completed basket", () => basket) })
    : kind === "proposal" ? proposalParts(answer, { open, light: (pointers) => editor.light(pointers, true) }) : []));
  const cautions = [...new Set([...(answer.cautions ?? []), ...reports.flatMap((report) => report.cautions)])];
  part("cautions").replaceChildren(...cautions.map((caution) => make("p", {}, caution)));
  part("questions").replaceChildren(...titled("Questions", await Promise.all(questions.map((question) => questionCard(question, {
    root, light, schemaAt: (pointer) => schema.at(kind, pointer),
    answer: (own, values) => change("Answer: " + own.ask, (document) => values.reduce((rack, [pointer, value]) => withValue(rack, pointer, value), document)),
  })))));
}

// Questions about what the service chose by itself have no member here that takes the answer.
const countOf = (findings, questions, own) => `${findings} findings, ${questions} questions${own < questions ? `, ${own} of which can be answered here` : ""}.`;

const titled = (title, cards) => (cards.length === 0 ? [] : [make("h2", {}, title), make("ul", { class: "deck" }, ...cards)]);

// What a change did: verdict, findings gone and new, members changed.
function showChange(done, before, now) {
  if (!done) return part("change").replaceChildren();
  const parts = [make("p", {}, make("strong", {}, done + "."))];
  if (before?.kind === now.kind && now.racks.length > 0 && before.racks.length > 0) {
    const [old, current] = [before, now].map((own) => new Map(own.racks.flatMap(({ report }) => report.findings).map((finding) => [finding.fingerprint, finding])));
    const gone = [...old.values()].filter((finding) => !current.has(finding.fingerprint));
    const added = [...current.values()].filter((finding) => !old.has(finding.fingerprint));
    const verdicts = [before, now].map((own) => (own.answer.verdict ?? own.racks[0].report.verdict));
    parts.push(make("p", {}, verdicts[0] === verdicts[1] ? `The verdict stays ${verdicts[1]}.` : `The verdict was ${verdicts[0]} and is ${verdicts[1]}.`));
    for (const [title, list] of [["Findings gone", gone], ["New findings", added]]) {
      if (list.length > 0) parts.push(make("h3", {}, title), make("ul", {}, ...list.map((finding) => make("li", {}, finding.message))));
    }
    const members = differences(before.request, now.request);
    if (members.length > 0) parts.push(make("h3", {}, "Members changed"), make("ul", {}, ...members.map(({ pointer, from, to }) => make("li", {}, make("code", {}, pointer), `: ${words(from)} → ${words(to)}`))));
  }
  part("change").replaceChildren(...parts);
}

const words = (value) => (value === undefined ? "absent" : JSON.stringify(value).slice(0, 120));

function differences(from, to, pointer = "") {
  if (JSON.stringify(from) === JSON.stringify(to)) return [];
  // An object that is new or gone is told by its members; an entry of a list is told as a whole.
  const isEntry = /\/\d+$/.test(pointer);
  const [old, now] = [from, to].map((value) => (value === undefined && !isEntry ? {} : value));
  const isWhole = [old, now].some((value) => value === null || typeof value !== "object") || Array.isArray(old) !== Array.isArray(now);
  if (isWhole) return [{ pointer: pointer || "/", from, to }];
  return [...new Set([...Object.keys(old), ...Object.keys(now)])]
    .flatMap((name) => differences(old[name], now[name], pointer + "/" + name.replaceAll("~", "~0").replaceAll("/", "~1")));
}

async function draw(own) {
  const racks = shown.racks.map(({ rack }) => rack);
  if (racks.length === 0) return drawing.clear("There is no rack to draw.");
  const answer = await ask("v1/elevations?view=" + part("view").value, JSON.stringify(racks.length === 1 ? racks[0] : { racks }), "image/svg+xml");
  const text = await answer.text();
  if (own === turn) answer.ok ? drawing.show(text) : drawing.clear("This rack cannot be drawn.");
}

async function openExample() {
  const [name, path] = part("example").value.split(" ");
  if (!path) return;
  undos.push({ title: "Open an example", text: editor.text(), kind });
  setCase(name, layOut(await (await fetch(new URL(path, root))).json()));
  part("example").value = "";
  shown = null;
  await check();
}

async function share() {
  history.replaceState(null, "", await toFragment(kind, editor.text()));
  await navigator.clipboard?.writeText(location.href).catch(() => {});
  part("share").textContent = "Link copied";
  setTimeout(() => { part("share").textContent = "Copy link"; }, 2000);
}

async function openFragment() {
  const own = await fromFragment(location.hash);
  if (own) setCase(own.kind, own.text);
  else if (editor.text() === "") return openDefault();
  return own ? check() : null;
}

async function openDefault() {
  setCase("check", layOut(await (await fetch(new URL(bench.dataset.first, root))).json()));
  return check();
}

part("check").addEventListener("click", () => check());
part("undo").addEventListener("click", undo);
part("share").addEventListener("click", share);
part("kind").addEventListener("change", () => { kind = part("kind").value; shown = null; });
part("example").addEventListener("change", openExample);
part("view").addEventListener("change", () => { if (shown) draw(turn); });
window.addEventListener("hashchange", openFragment);
if (matchMedia("(max-width: 60rem)").matches) part("view").value = "front";
bench.hidden = false;
openFragment();
