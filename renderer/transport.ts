import type { Answer } from '../src/contract/operation.ts';
import type { RefusalBody, RefusalCode } from '../src/contract/refusal.ts';

/** What the desktop window's preload offers; absent when a browser shows the same pages. */
interface Bridge {
  call(name: string, input: unknown): Promise<Answer<unknown>>;
  cancel(job: string): Promise<unknown>;
  subscribe(topic: string, fn: (data: unknown) => void): () => void;
  openDropped(file: File): Promise<boolean>;
  dragOut(name: string, bytes: Uint8Array): void;
}

declare global {
  interface Window {
    editionLedger?: Bridge;
  }
}

/** `KEY_ENDED`: the host knows this window no longer. `UNREACHABLE`: the host does not answer at all. */
export type CallCode = RefusalCode | 'KEY_ENDED' | 'UNREACHABLE';

/** The host as this window finds it; anything but `open` stops the work and is shown across the window. */
export type Link = 'open' | 'key ended' | 'unreachable';

/** Thrown by `call` when an operation is not carried out. */
export class CallRefused extends Error {
  readonly code: CallCode;
  readonly field: string | undefined;

  constructor(body: Omit<RefusalBody, 'code'> & { code: CallCode }) {
    super(body.message);
    this.name = 'CallRefused';
    this.code = body.code;
    this.field = body.field;
  }
}

let link: Link = 'open';
const linkWatchers = new Set<() => void>();

function setLink(next: Link): void {
  if (next === link) return;
  link = next;
  for (const watcher of linkWatchers) watcher();
}

/** The pair that `useSyncExternalStore` asks for. */
export const linkStore = {
  read: (): Link => link,
  watch(fn: () => void): () => void {
    linkWatchers.add(fn);
    return () => linkWatchers.delete(fn);
  },
};

function isAnswer(value: unknown): value is Answer<unknown> {
  return (
    typeof value === 'object' &&
    value !== null &&
    'ok' in value &&
    ('value' in value || 'error' in value || value.ok === true)
  );
}

async function post(name: string, input: unknown): Promise<Answer<unknown>> {
  let response: Response;
  try {
    response = await fetch(`/call/${encodeURIComponent(name)}`, {
      method: 'POST',
      credentials: 'same-origin',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    });
  } catch {
    setLink('unreachable');
    throw new CallRefused({
      code: 'UNREACHABLE',
      message: 'Edition Ledger does not answer this window; start it again. What was saved is safe.',
    });
  }
  if (response.status === 401) {
    setLink('key ended');
    throw new CallRefused({
      code: 'KEY_ENDED',
      message: 'This window’s key is no longer valid; start Edition Ledger again.',
    });
  }
  setLink('open');
  const body: unknown = await response.json().catch(() => undefined);
  if (isAnswer(body)) return body;
  throw unreadable(name);
}

function unreadable(name: string): CallRefused {
  return new CallRefused({
    code: 'INTERNAL',
    message: `Edition Ledger answered ${name} in a form this window cannot read; reload the window.`,
  });
}

type Checks = typeof import('./contract-check.ts');

/**
 * The contract, fetched beside the first screen and not before it. Where it cannot be fetched the host is gone, and
 * the call itself finds that out; the host holds every input against the contract in any case.
 */
let checks: Promise<Checks | undefined> | undefined;

function contractChecks(): Promise<Checks | undefined> {
  checks ??= import('./contract-check.ts').catch(() => {
    checks = undefined;
    return undefined;
  });
  return checks;
}

/**
 * Carries one call over the desktop bridge, or else over HTTP on the loopback host. The contract is held against
 * the input before it leaves and against the answer when it comes. Throws `CallRefused`.
 */
export async function carry(name: string, input: unknown): Promise<unknown> {
  const contract = await contractChecks();
  const wrong = contract?.wrongInput(name, input);
  if (wrong) throw new CallRefused(wrong);
  const answer = await (window.editionLedger ? window.editionLedger.call(name, input) : post(name, input));
  if (!answer.ok) throw new CallRefused(answer.error);
  if (contract?.isPromised(name, answer.value) === false) throw unreadable(name);
  return answer.value;
}

/** Calls off the work of this name; the call that began it is then refused with CANCELLED. */
export async function callOff(job: string): Promise<void> {
  if (window.editionLedger) {
    await window.editionLedger.cancel(job);
    return;
  }
  const answer = await fetch(`/cancel/${encodeURIComponent(job)}`, {
    method: 'POST',
    credentials: 'same-origin',
  });
  // An answer that is not read keeps its connection, of which a browser has six.
  await answer.text();
}

let source: EventSource | undefined;
let sourceUsers = 0;

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Calls `fn` for every message of a topic; returns the function that ends the subscription. */
export function subscribe(topic: string, fn: (data: unknown) => void): () => void {
  if (window.editionLedger) return window.editionLedger.subscribe(topic, fn);
  source ??= new EventSource('/events');
  sourceUsers += 1;
  const events = source;
  const onMessage = (event: MessageEvent<string>) => fn(parse(event.data));
  // Messages may have passed while the line was down, so a new connection counts as one.
  let opened = events.readyState === EventSource.OPEN;
  const onOpen = () => {
    if (opened) fn(undefined);
    opened = true;
  };
  events.addEventListener(topic, onMessage);
  events.addEventListener('open', onOpen);
  return () => {
    events.removeEventListener(topic, onMessage);
    events.removeEventListener('open', onOpen);
    sourceUsers -= 1;
    if (sourceUsers > 0) return;
    events.close();
    source = undefined;
  };
}
