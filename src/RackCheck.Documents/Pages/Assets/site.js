// The pages work without this script. It adds filters, the search, copy buttons and the check on the start page.
"use strict";

const root = new URL(document.documentElement.dataset.root, location.href);

// Shapes of severities and verdicts, as on the drawings.
const shapes = {
  error: "M5 0h6l5 5v6l-5 5H5l-5-5V5z", hold: "M5 0h6l5 5v6l-5 5H5l-5-5V5z",
  warning: "M8 1l8 14H0z", review: "M8 1l8 14H0z",
  advice: "M1 8a7 7 0 1 0 14 0a7 7 0 1 0-14 0z", release: "M0 8l6 6L16 4l-2-2-8 8-4-4z",
};

// Makes an element with attributes and children; a child is an element or a text.
function make(name, attributes, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes ?? {})) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

function sign(word) {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("viewBox", "0 0 16 16");
  svg.setAttribute("aria-hidden", "true");
  const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  path.setAttribute("d", shapes[word]);
  svg.append(path);
  return make("span", { class: "sign " + word }, svg, word);
}

// Samples name the service that served the page.
for (const sample of document.querySelectorAll("[data-base] > code")) {
  sample.textContent = sample.textContent.replaceAll(sample.parentElement.dataset.base, root.href);
}

// A button that copies a listing.
if (navigator.clipboard) {
  for (const listing of document.querySelectorAll("pre[data-copy]")) {
    const button = make("button", { type: "button", class: "copy" }, "Copy");
    button.addEventListener("click", async () => {
      await navigator.clipboard.writeText(listing.querySelector("code").textContent);
      button.textContent = "Copied";
      setTimeout(() => { button.textContent = "Copy"; }, 2000);
    });
    listing.prepend(button);
  }
}

// Filters of the list of rules. They are kept in the fragment, so that a filtered list has an address.
const filters = document.querySelector("[data-filters]");
if (filters) {
  const rules = [...document.querySelectorAll("li[data-theme]")].map((entry) => ({ entry, text: entry.textContent.toLowerCase() }));
  const groups = [...document.querySelectorAll("[data-group]")];
  const apply = () => {
    const wanted = Object.fromEntries(new FormData(filters));
    const words = wanted.text.toLowerCase().split(/\s+/).filter(Boolean);
    let shown = 0;
    for (const { entry, text } of rules) {
      const fits = words.every((word) => text.includes(word))
        && ["theme", "severity", "concern", "safety"].every((name) => !wanted[name] || entry.dataset[name].split(" ").includes(wanted[name]));
      entry.hidden = !fits;
      shown += fits ? 1 : 0;
    }
    for (const group of groups) group.hidden = !group.querySelector("li:not([hidden])");
    filters.querySelector("output").textContent = shown + " of " + rules.length + " rules";
    const set = Object.entries(wanted).filter(([, value]) => value);
    if (set.length > 0 || location.hash.startsWith("#?")) {
      history.replaceState(null, "", set.length > 0 ? "#?" + new URLSearchParams(set) : location.pathname);
    }
  };
  filters.hidden = false;
  if (location.hash.startsWith("#?")) {
    for (const [name, value] of new URLSearchParams(location.hash.slice(2))) {
      if (filters.elements[name]) filters.elements[name].value = value;
    }
  }
  filters.addEventListener("input", apply);
  filters.addEventListener("submit", (event) => event.preventDefault());
  apply();
}

// The search: all words have to be in an entry; those in the title count most.
const search = document.querySelector("[data-search]");
if (search) {
  const query = new URLSearchParams(location.search).get("q") ?? "";
  const field = document.getElementById("find");
  const [status, list] = [search.querySelector("[role=status]"), search.querySelector("ol")];
  field.value = query;
  let entries;
  const find = async () => {
    const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    search.hidden = words.length === 0;
    document.querySelector("[data-without-search]").hidden = words.length > 0;
    if (words.length === 0) return;
    entries ??= await (await fetch(search.dataset.search)).json();
    const hits = [];
    for (const [kind, title, path, text] of entries) {
      const [head, body] = [title.toLowerCase(), text.toLowerCase()];
      if (words.every((word) => head.includes(word) || body.includes(word) || kind === word)) {
        const score = words.reduce((sum, word) => sum + (head === word ? 8 : head.startsWith(word) ? 4 : head.includes(word) ? 2 : 1), 0);
        hits.push({ kind, title, path, text, score: score - (kind === "member" || kind === "type" ? 1 : 0) });
      }
    }
    hits.sort((a, b) => b.score - a.score);
    status.textContent = hits.length === 0 ? "Nothing found." : hits.length === 1 ? "1 entry" : hits.length + " entries" + (hits.length > 60 ? ", the first 60 shown" : "");
    list.replaceChildren(...hits.slice(0, 60).map((hit) => make("li", {},
      make("a", { href: new URL(hit.path, root).href }, hit.title), " ", make("span", { class: "small" }, hit.kind), make("p", { class: "small" }, hit.text))));
  };
  field.addEventListener("input", find);
  field.form.addEventListener("submit", (event) => { event.preventDefault(); find(); });
  find();
}

// The check on the start page.
const trial = document.querySelector("[data-try]");
if (trial) {
  const answer = document.querySelector("[data-answer]");
  trial.hidden = false;
  trial.querySelector("button").addEventListener("click", async () => {
    answer.replaceChildren(make("p", {}, "Checking ..."));
    try {
      const rack = await (await fetch(new URL(trial.dataset.body, root))).text();
      const response = await fetch(new URL(trial.dataset.try, root), { method: "POST", headers: { "Content-Type": "application/json" }, body: rack });
      const report = await response.json();
      answer.replaceChildren(...(response.ok ? shown(report) : [make("p", {}, report.title + ". " + (report.detail ?? ""))]));
    } catch (fault) {
      answer.replaceChildren(make("p", {}, "The service did not answer: " + fault.message));
    }
  });
}

function shown(report) {
  const rows = report.findings.map((finding) => make("li", {},
    make("p", {}, sign(finding.severity), finding.message),
    make("p", { class: "small" }, finding.calculation ? finding.calculation + " · " : "",
      make("a", { href: new URL("docs/rules/" + finding.rule, root).href }, finding.rule),
      finding.remedies.length > 0 ? " · Remedy: " + finding.remedies[0].title : "")));
  return [
    make("p", {}, sign(report.verdict), "product " + report.verdicts.product + ", site " + report.verdicts.site + ". " + report.findings.length + " findings, "
      + report.questions.length + " questions."),
    make("ol", { class: "hits" }, ...rows),
    make("p", { class: "small" }, report.cautions[0]),
  ];
}
