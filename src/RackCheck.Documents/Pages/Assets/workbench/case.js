// A case in the fragment of an address: what kind it is, and its text compressed (deflate) and written in base64url. Nothing is stored elsewhere.

// More than the service takes. A link can be made by anyone, and a short one can unpack to more than a browser bears.
const mostBytes = 4 * 1024 * 1024;

async function through(stream, bytes) {
  const parts = [];
  let length = 0;
  for (const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) return new Uint8Array(await new Blob(parts).arrayBuffer());
    length += value.length;
    if (length > mostBytes) {
      await reader.cancel();
      throw new RangeError("The case is too long for a link.");
    }
    parts.push(value);
  }
}

export async function toFragment(kind, text) {
  const bytes = await through(new CompressionStream("deflate-raw"), new TextEncoder().encode(text));
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return `#${kind}=${btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "")}`;
}

// Null where the fragment is no case.
export async function fromFragment(fragment) {
  const [, kind, code] = /^#(check|basket|proposal)=([\w-]+)$/.exec(fragment) ?? [];
  if (!kind) return null;
  try {
    const letters = atob(code.replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
    return { kind, text: new TextDecoder("utf-8", { fatal: true }).decode(await through(new DecompressionStream("deflate-raw"), bytes)) };
  } catch {
    return null;
  }
}
