// A case in the fragment of an address: what kind it is, and its text compressed (deflate) and written in base64url. Nothing is stored elsewhere.

async function through(stream, bytes) {
  return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
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
