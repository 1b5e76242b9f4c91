/** Room for a list of 200,000 owned numbers in one call. */
export const BODY_LIMIT = 8 * 1024 * 1024;

export type ReadBody =
  | { ok: true; value: unknown }
  | { ok: false; status: 400 | 413 | 415; sentence: string };

const TOO_LARGE = {
  ok: false,
  status: 413,
  sentence: 'The request is larger than 8 MiB; send it in parts.',
} as const;

/** Bytes of a body, or undefined once they pass the limit; reading stops there. */
async function readUpTo(request: Request, limit: number): Promise<Uint8Array | undefined> {
  if (Number(request.headers.get('content-length') ?? 0) > limit) return undefined;
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of request.body ?? []) {
    size += part.byteLength;
    if (size > limit) return undefined;
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** Reads a JSON body of at most `limit` bytes; other content types, malformed UTF-8 and malformed JSON are named. */
export async function readJson(request: Request, limit: number = BODY_LIMIT): Promise<ReadBody> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/json(;\s*charset=utf-8)?$/i.test(type.trim())) {
    return { ok: false, status: 415, sentence: 'Send the input as application/json.' };
  }
  try {
    const bytes = await readUpTo(request, limit);
    if (bytes === undefined) return TOO_LARGE;
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) };
  } catch {
    return { ok: false, status: 400, sentence: 'The body is not JSON in UTF-8; send one JSON value.' };
  }
}
