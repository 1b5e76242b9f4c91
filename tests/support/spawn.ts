import { spawn } from 'node:child_process';

export interface Ended {
  code: number | null;
  out: string;
  err: string;
}

export interface SpawnOptions {
  stdin?: string;
  cwd?: string;
  env?: Record<string, string | undefined>;
}

/** Runs a program to its end with the Node that runs the tests at the front; the standard input is closed after `stdin`. */
export function runNode(args: string[], { stdin = '', cwd, env }: SpawnOptions = {}): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd, env: { ...process.env, ...env } });
    let out = '';
    let err = '';
    child.stdout.on('data', (part: Buffer) => (out += part.toString()));
    child.stderr.on('data', (part: Buffer) => (err += part.toString()));
    child.stdin.on('error', () => {});
    child.stdin.end(stdin);
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });
}
