import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const KEY_BYTES = 32;

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}

/** Start keys and window keys of one launch; nothing of it outlives the process. */
export class Keys {
  /** Cookies are shared between all ports of an address, so the port is part of the name. */
  readonly cookieName: string;
  #start: Buffer | undefined;
  #windows: Buffer[] = [];

  constructor(port: number) {
    this.cookieName = `edition-ledger-${port}`;
  }

  /** A new start key (32 random bytes, base64url), good for one exchange; any earlier unused one ends. */
  newStartKey(): string {
    const key = randomBytes(KEY_BYTES).toString('base64url');
    this.#start = digest(key);
    return key;
  }

  /** Uses up a start key: gives the cookie's value for one browser, or undefined when the key is not the current one. */
  exchange(startKey: string): string | undefined {
    if (this.#start === undefined || !timingSafeEqual(this.#start, digest(startKey))) return undefined;
    this.#start = undefined;
    const windowKey = randomBytes(KEY_BYTES).toString('base64url');
    this.#windows.push(digest(windowKey));
    return windowKey;
  }

  /** Whether a Cookie header carries a window key of this launch. */
  knows(cookieHeader: string | undefined): boolean {
    const values = (cookieHeader ?? '')
      .split(';')
      .map((pair) => pair.trim())
      .filter((pair) => pair.startsWith(`${this.cookieName}=`))
      .map((pair) => digest(pair.slice(this.cookieName.length + 1)));
    return values.some((value) => this.#windows.some((known) => timingSafeEqual(known, value)));
  }

  /** The Set-Cookie header: not readable by scripts, never sent along from another site, gone with the browser. */
  cookie(windowKey: string): string {
    return `${this.cookieName}=${windowKey}; Path=/; HttpOnly; SameSite=Strict`;
  }
}
