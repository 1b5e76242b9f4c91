import { PART_BYTES } from '../../src/contract/files.ts';
import { call } from '../api.ts';
import { bytesOf } from './base64.ts';

function base64Of(bytes: Uint8Array): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''));
    reader.onerror = () => reject(reader.error ?? new Error('The file cannot be read.'));
    reader.readAsDataURL(new Blob([bytes as Uint8Array<ArrayBuffer>]));
  });
}

export interface Sending {
  /** Hears the bytes sent so far. */
  onSent?: (bytes: number) => void;
  /** Ends the sending between two parts, which then rejects; what was sent is thrown away. */
  signal?: AbortSignal;
}

/** Lays a file of the person's ready for the catalogue, part by part; answers its id. */
export async function sendFile(file: File, { onSent, signal }: Sending = {}): Promise<string> {
  let id: string | undefined;
  for (let from = 0; from === 0 || from < file.size; from += PART_BYTES) {
    const bytes = new Uint8Array(await file.slice(from, from + PART_BYTES).arrayBuffer());
    const part = bytes.length === 0 ? '' : await base64Of(bytes);
    const answer = await call('files.put', {
      name: file.name.slice(-255),
      part,
      ...(id ? { file: id } : {}),
    });
    id = answer.file;
    if (signal?.aborted) void call('files.drop', { file: id });
    signal?.throwIfAborted();
    onSent?.(answer.bytes);
  }
  return id ?? '';
}

export interface Fetching {
  /** Hears the bytes fetched so far. */
  onFetched?: (bytes: number) => void;
  /** Ends the fetching between two parts, which then rejects. */
  signal?: AbortSignal;
}

/** Fetches a file that the catalogue has made, part by part. */
export async function fetchFile(
  file: string,
  type: string,
  { onFetched, signal }: Fetching = {},
): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  for (let from: number | null = 0; from !== null; ) {
    const answer: { part: string; next: number | null } = await call('files.get', { file, from });
    parts.push(bytesOf(answer.part));
    from = answer.next;
    signal?.throwIfAborted();
    if (from !== null) onFetched?.(from);
  }
  return new Blob(parts, { type });
}
