import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { inspect } from 'node:util';

/** When the log has grown to this many bytes it begins anew, and the one before is kept once. */
const LIMIT = 1024 * 1024;

/** The error log's name, in the folder that the shell chooses. */
export const LOG_NAME = 'errors.log';

/** What `captureErrors` writes to, and where its words come from; replaceable in tests. */
export interface LogOptions {
  /** Full path of the log. */
  file: string;
  /** One line that says what runs here: program, version, system. */
  heading: string;
  limit?: number;
  now?: () => Date;
}

/** A log of errors on this computer: read and sent by the user alone, never by the program. */
export class ErrorLog {
  readonly file: string;
  readonly #limit: number;
  readonly #now: () => Date;
  readonly #heading: string;
  #headed = false;

  constructor({ file, heading, limit = LIMIT, now = () => new Date() }: LogOptions) {
    this.file = file;
    this.#limit = limit;
    this.#now = now;
    this.#heading = heading;
  }

  /** Appends a text, each entry with its moment; a full disk must not bring the program down. */
  write(text: string): void {
    const words = text.trimEnd();
    if (words === '') return;
    try {
      mkdirSync(dirname(this.file), { recursive: true });
      this.#turnOver();
      const heading = this.#headed ? '' : `\n${this.#stamp()} ${this.#heading}\n`;
      appendFileSync(this.file, `${heading}${this.#stamp()} ${words}\n`);
      this.#headed = true;
    } catch {
      // There is nowhere left to tell it.
    }
  }

  #stamp(): string {
    return this.#now().toISOString();
  }

  #turnOver(): void {
    const size = statSync(this.file, { throwIfNoEntry: false })?.size ?? 0;
    if (size < this.#limit) return;
    renameSync(this.file, join(dirname(this.file), `before-${LOG_NAME}`));
    this.#headed = false;
  }
}

/** The process parts that `captureErrors` listens to. */
type Told = Pick<NodeJS.Process, 'on' | 'stderr'>;

/**
 * Copies whatever is told on the error stream to the log as well: the program's own errors, and those of threads
 * and children that speak through it. An error that nobody caught is told there too and then handed to `crash`.
 */
export function captureErrors(log: ErrorLog, crash: () => void, told: Told = process): void {
  const write = told.stderr.write.bind(told.stderr);
  told.stderr.write = ((chunk: string | Uint8Array, ...rest: []) => {
    log.write(typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('utf8'));
    return write(chunk, ...rest);
  }) as typeof told.stderr.write;
  const end = (error: unknown) => {
    told.stderr.write(`${inspect(error)}\n`);
    crash();
  };
  told.on('uncaughtException', end);
  told.on('unhandledRejection', end);
}
