// The JSON editor of the workbench: CodeMirror with marks for JSON pointers (RFC 6901), faults at their lines and help on members.
import { autocompletion, closeBrackets, closeBracketsKeymap, completionKeymap } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { json, jsonLanguage, jsonParseLinter } from "@codemirror/lang-json";
import { HighlightStyle, bracketMatching, codeFolding, foldGutter, foldKeymap, syntaxHighlighting, syntaxTree, unfoldAll } from "@codemirror/language";
import { forceLinting, lintGutter, lintKeymap, linter } from "@codemirror/lint";
import { EditorState, StateEffect, StateField } from "@codemirror/state";
import { Decoration, EditorView, drawSelection, highlightActiveLine, highlightActiveLineGutter, hoverTooltip, keymap, lineNumbers } from "@codemirror/view";
import { tags } from "@lezer/highlight";

// Colours are those of the page, which turn with the viewer's preference.
const look = EditorView.theme({
  "&": { backgroundColor: "var(--paper)", color: "var(--ink)", height: "100%", fontSize: ".875rem" },
  ".cm-scroller": { fontFamily: "var(--mono)", lineHeight: "1.5" },
  ".cm-content": { caretColor: "var(--ink)" },
  "&.cm-focused": { outline: "3px solid var(--link)", outlineOffset: "-3px" },
  ".cm-cursor": { borderLeftColor: "var(--ink)" },
  "&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "var(--line)" },
  ".cm-gutters": { backgroundColor: "var(--soft)", color: "var(--faint)", borderRight: "1px solid var(--line)" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "color-mix(in srgb, var(--line) 25%, transparent)" },
  ".cm-lit": { backgroundColor: "var(--marked)", boxShadow: "inset 4px 0 var(--warning)" },
  ".cm-tooltip": { backgroundColor: "var(--soft)", color: "var(--ink)", border: "1px solid var(--faint)", maxWidth: "30rem" },
  ".cm-help": { padding: ".4rem .6rem", font: ".875rem/1.4 system-ui, sans-serif" },
  ".cm-tooltip-autocomplete ul li[aria-selected]": { backgroundColor: "var(--link)", color: "var(--paper)" },
  ".cm-foldPlaceholder": { backgroundColor: "var(--soft)", color: "var(--ink)", borderColor: "var(--faint)" },
  ".cm-matchingBracket": { backgroundColor: "var(--line) !important" },
});
const colours = HighlightStyle.define([
  { tag: tags.propertyName, color: "var(--link)" },
  { tag: tags.string, color: "var(--release)" },
  { tag: [tags.number, tags.bool, tags.null], color: "var(--warning)" },
]);

const faultsSet = StateEffect.define();
const setLit = StateEffect.define();
const lit = StateField.define({
  create: () => Decoration.none,
  update(marks, transaction) {
    const set = transaction.effects.find((effect) => effect.is(setLit));
    return set ? set.value : transaction.docChanged ? Decoration.none : marks;
  },
  provide: (field) => EditorView.decorations.from(field),
});

const values = new Set(["Object", "Array", "String", "Number", "True", "False", "Null"]);
const childrenOf = (node, wanted) => {
  const found = [];
  for (let child = node.firstChild; child; child = child.nextSibling) if (wanted(child.name)) found.push(child);
  return found;
};
const nameOf = (property, text) => {
  const name = property.getChild("PropertyName");
  try { return name ? JSON.parse(text.slice(name.from, name.to)) : null; } catch { return null; }
};

// The node of a member or an entry, with its name; where it is absent, the nearest one that is there.
function nodeAt(text, pointer) {
  let node = childrenOf(jsonLanguage.parser.parse(text).topNode, (name) => values.has(name))[0];
  let whole = node;
  for (const part of pointer.split("/").slice(1).map((p) => p.replaceAll("~1", "/").replaceAll("~0", "~"))) {
    if (node?.name === "Array") {
      const entry = childrenOf(node, (name) => values.has(name))[Number(part)];
      if (!entry) break;
      node = whole = entry;
    } else {
      const property = node?.name === "Object" && childrenOf(node, (name) => name === "Property").find((p) => nameOf(p, text) === part);
      if (!property) break;
      whole = property;
      node = childrenOf(property, (name) => values.has(name))[0];
    }
  }
  return whole ?? null;
}

// The pointer of a node, and the node of the object around it.
function pointerOf(node, text) {
  const parts = [];
  for (let at = node; at; at = at.parent) {
    if (at.name === "Property") parts.unshift(nameOf(at, text) ?? "");
    else if (at.parent?.name === "Array" && values.has(at.name)) {
      let index = 0;
      for (let before = at.prevSibling; before; before = before.prevSibling) index += values.has(before.name) ? 1 : 0;
      parts.unshift(index);
    }
  }
  return parts.map((part) => "/" + String(part).replaceAll("~", "~0").replaceAll("/", "~1")).join("");
}

// Makes an editor in a shadow root: there its style sheets are objects, which the policy of the page allows.
export function createEditor({ parent, label, help, members, changed, run, moved }) {
  const root = parent.attachShadow({ mode: "open" });
  let faults = [];
  const parseFaults = jsonParseLinter();
  const pointerAt = (state, position) => pointerOf(syntaxTree(state).resolveInner(position, 0), state.doc.toString());
  const complete = async (context) => {
    const word = context.matchBefore(/"?[\w-]*$/);
    const text = context.state.doc.toString();
    const before = text.slice(0, word.from).trimEnd();
    if (!word || (word.from === word.to && !context.explicit)) return null;
    const node = syntaxTree(context.state).resolveInner(word.from, -1);
    const isValue = before.endsWith(":");
    let at = syntaxTree(context.state).resolveInner(word.to, -1);
    while (at && at.name !== (isValue ? "Property" : "Object")) at = at.parent;
    const path = pointerOf(isValue ? at : at ?? node, text);
    const options = (await members(path, isValue)).map(({ name, type, description, isText }) => ({
      label: isValue && isText ? JSON.stringify(name) : isValue ? String(name) : JSON.stringify(name),
      detail: type, info: description,
      // Typing may have gone on since names were asked for: what is replaced, the closing quote included, is read now.
      apply: (view, completion, from, to) => {
        const rest = view.state.sliceDoc(to);
        const end = rest.startsWith('"') ? to + 1 : to;
        const colon = isValue || /^"?\s*:/.test(rest) ? "" : ": ";
        view.dispatch({ changes: { from, to: end, insert: completion.label + colon }, selection: { anchor: from + completion.label.length + (isValue ? 0 : 2) } });
      },
    }));
    return options.length > 0 ? { from: word.from, options, validFor: /^"?[\w-]*$/ } : null;
  };
  const view = new EditorView({
    parent: root,
    root,
    state: EditorState.create({
      extensions: [
        lineNumbers(), foldGutter(), codeFolding(), history(), drawSelection(), bracketMatching(), closeBrackets(), highlightActiveLine(), highlightActiveLineGutter(),
        json(), syntaxHighlighting(colours), look, lit, lintGutter(), EditorView.lineWrapping,
        EditorView.contentAttributes.of({ "aria-label": label, tabindex: "0" }),
        linter((own) => [...(own.state.doc.length > 0 ? parseFaults(own) : []), ...faults.map(({ pointer, message }) => {
          const node = nodeAt(own.state.doc.toString(), pointer);
          return { from: node?.from ?? 0, to: node ? Math.min(node.to, own.state.doc.lineAt(node.from).to) : 0, severity: "error", message };
        })], { needsRefresh: (update) => update.transactions.some((transaction) => transaction.effects.some((effect) => effect.is(faultsSet))) }),
        autocompletion({ override: [complete] }),
        hoverTooltip(async (own, position) => {
          const node = syntaxTree(own.state).resolveInner(position, 1);
          const words = node.name === "PropertyName" && (await help(pointerOf(node, own.state.doc.toString())));
          if (!words) return null;
          const dom = document.createElement("div");
          dom.className = "cm-help";
          dom.textContent = words;
          return { pos: node.from, end: node.to, create: () => ({ dom }) };
        }),
        keymap.of([{ key: "Mod-Enter", run: () => { run(); return true; } }, ...closeBracketsKeymap, ...completionKeymap, ...lintKeymap, ...foldKeymap, ...historyKeymap, ...defaultKeymap]),
        EditorView.updateListener.of((update) => {
          if (update.docChanged) { faults = []; changed(); }
          if (update.docChanged || update.selectionSet) moved(pointerAt(update.state, update.state.selection.main.head));
        }),
      ],
    }),
  });
  return {
    focus: () => view.focus(),
    text: () => view.state.doc.toString(),
    setText: (text) => view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: text }, selection: { anchor: 0 } }),
    showFaults(list) { faults = list; view.dispatch({ effects: faultsSet.of(null) }); forceLinting(view); },
    // Lights the lines of members; goes to the first of them if asked to.
    light(pointers, isGoingThere = false) {
      const text = view.state.doc.toString();
      const lines = new Set();
      const nodes = pointers.map((pointer) => nodeAt(text, pointer)).filter(Boolean);
      for (const node of nodes) {
        const last = view.state.doc.lineAt(node.to).number;
        for (let number = view.state.doc.lineAt(node.from).number; number <= last; number++) lines.add(number);
      }
      const mark = Decoration.line({ class: "cm-lit" });
      const effects = [setLit.of(Decoration.set([...lines].sort((a, b) => a - b).map((number) => mark.range(view.state.doc.line(number).from))))];
      if (isGoingThere && nodes.length > 0) {
        unfoldAll(view);
        effects.push(EditorView.scrollIntoView(nodes[0].from, { y: "center" }));
      }
      view.dispatch({ effects });
    },
  };
}
