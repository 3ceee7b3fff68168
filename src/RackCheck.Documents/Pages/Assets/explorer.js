// What the explorer leaves out for keyboards and screen readers.
"use strict";

// It has a link inside of each button that opens an operation; the text stays. The plug-in is passed where the explorer is made, since its
// own way to name one needs eval, which the policy of the page forbids.
addEventListener("DOMContentLoaded", () => {
  const original = window.SwaggerUIBundle;
  const plugin = () => ({ wrapComponents: { DeepLink: (_, system) => ({ text }) => system.React.createElement("span", null, text) } });
  window.SwaggerUIBundle = Object.assign((options) => original({ ...options, plugins: [plugin] }), original);
  new MutationObserver(complete).observe(document.body, { childList: true, subtree: true });
});

// A way back to the documentation.
addEventListener("DOMContentLoaded", () => {
  const way = document.createElement("a");
  way.href = "../../docs";
  way.className = "way-back";
  way.textContent = "Documentation";
  document.body.prepend(way);
});

// Fields get names, and listings that scroll can be reached.
function complete() {
  for (const field of document.querySelectorAll(".swagger-ui :is(select, textarea):not([aria-label])")) {
    const row = field.closest("tr[data-param-name]");
    field.setAttribute("aria-label", row ? row.dataset.paramName : field.matches("textarea") ? "Request body" : field.matches(".examples-select-element") ? "Example" : "Media type");
  }
  for (const listing of document.querySelectorAll(".swagger-ui pre.microlight:not([tabindex])")) listing.tabIndex = 0;
}
