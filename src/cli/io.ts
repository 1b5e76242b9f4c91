/** The shell around a command: where it reads and writes. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
  /** All of the standard input; empty when a person sits at a terminal instead. */
  stdin(): Promise<string>;
}

/** The process's own streams. A reader that goes away early (`| head`) ends the command quietly. */
export function processIo(): Io {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
      throw error;
    });
  }
  return {
    out: (text) => void process.stdout.write(`${text}\n`),
    err: (text) => void process.stderr.write(`${text}\n`),
    stdin: async () => {
      if (process.stdin.isTTY) return '';
      const parts: Buffer[] = [];
      for await (const part of process.stdin) parts.push(part as Buffer);
      return Buffer.concat(parts).toString('utf8');
    },
  };
}
