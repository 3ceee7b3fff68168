// The drawn rack. Findings and items are groups with data-fingerprint and data-item.

export class DrawnRack {
  constructor(frame, { onFinding, onItem }) {
    this.frame = frame;
    frame.addEventListener("click", (event) => {
      const group = event.target.closest("[data-fingerprint], [data-item]");
      if (group?.dataset.fingerprint) onFinding(group.dataset.fingerprint);
      else if (group) onItem(group.dataset.item);
    });
  }

  show(svg) {
    const drawing = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    this.frame.replaceChildren(document.importNode(drawing, true));
  }

  clear(words) {
    this.frame.replaceChildren(words);
  }

  // Lights a finding and items; nothing where both are left out.
  light(fingerprint, items = []) {
    for (const group of this.frame.querySelectorAll("[data-fingerprint], [data-item]")) {
      group.classList.toggle("lit", group.dataset.fingerprint === fingerprint || items.includes(group.dataset.item));
    }
  }
}
