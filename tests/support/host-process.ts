import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROGRAM } from '../../src/host/home.ts';

export interface HostProcess {
  /** The address that lets one browser in. */
  url: string;
  pid: number;
  /** Ends it as a user would, and waits until it has. */
  stop(): Promise<void>;
}

/** Starts the host in a process of its own, as `npm start` does. */
export function startHostProcess(file: string): Promise<HostProcess> {
  const env = { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: '/none', CI: 'true' };
  const launch = join(PROGRAM, 'src/host/launch.js');
  const child = spawn(process.execPath, [launch, '--no-open', '--catalogue', file], { env });
  return new Promise((resolve, reject) => {
    let told = '';
    child.stdout.on('data', (part: Buffer) => {
      told += part.toString();
      const url = /ready at (\S+)/.exec(told)?.[1];
      if (url !== undefined) resolve({ url, pid: child.pid ?? 0, stop: () => stop(child) });
    });
    child.on('exit', () => reject(new Error(told)));
  });
}

async function stop(child: ChildProcess): Promise<void> {
  child.removeAllListeners('exit');
  const ended = new Promise((resolve) => child.on('exit', resolve));
  child.kill('SIGTERM');
  await ended;
}

/** Memory of a process and all that it started, MiB resident; null where the system does not tell it. */
export function residentMb(pid: number): number | null {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean);
    const own = Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024;
    return children.reduce((sum, one) => sum + (residentMb(Number(one)) ?? 0), own);
  } catch {
    return null;
  }
}
