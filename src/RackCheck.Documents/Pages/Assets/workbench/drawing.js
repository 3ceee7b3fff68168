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
      group.classList.toggle("lit", Boolean((fingerprint && group.dataset.fingerprint === fingerprint) || items.includes(group.dataset.item)));
    }
    const place = this.frame.querySelector("[data-fingerprint].lit, .lit")?.getBoundingClientRect();
    if (!place) return;
    const frame = this.frame.getBoundingClientRect();
    if (place.bottom > frame.bottom || place.top < frame.top) this.frame.scrollTop += place.top - frame.top - frame.height / 3;
    if (place.right > frame.right || place.left < frame.left) this.frame.scrollLeft += place.left - frame.left - frame.width / 3;
  }
}
