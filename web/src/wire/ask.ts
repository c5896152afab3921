// How does the page ask its server?

export interface Answer<T> { status: number; body: T | null; says: string | null }

async function read<T>(got: Response): Promise<Answer<T>> {
  const text = await got.text();
  let body: unknown = null;
  try {
    body = JSON.parse(text);
  } catch {
    return { status: got.status, body: null, says: "the server answered what is no JSON" };
  }
  const told = body as { says?: unknown; messages?: { says: string; expected?: string | null }[] };
  const messages = Array.isArray(told.messages) ? told.messages : null;
  const says = got.ok ? null
    : messages !== null ? messages.map((one) => one.says + (one.expected ? ` (expected: ${one.expected})` : "")).join("; ")
    : typeof told.says === "string" ? told.says : `status ${got.status}`;
  return { status: got.status, body: body as T, says };
}

async function ask<T>(path: string, init?: RequestInit): Promise<Answer<T>> {
  try {
    return await read<T>(await fetch(path, init));
  } catch {
    return { status: 0, body: null, says: "the server does not answer; was towershaft ended?" };
  }
}

export function get<T>(path: string, query: { [name: string]: string } = {}): Promise<Answer<T>> {
  const words = Object.entries(query).map(([name, value]) => `${name}=${encodeURIComponent(value)}`);
  return ask<T>(words.length > 0 ? `${path}?${words.join("&")}` : path);
}

export function post<T>(path: string, body: unknown): Promise<Answer<T>> {
  return ask<T>(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
}
