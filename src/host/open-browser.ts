import { spawn } from 'node:child_process';

/** Program and arguments that open an address in the user's browser. */
export function browserCommand(url: string, platform: NodeJS.Platform): [string, string[]] {
  if (platform === 'darwin') return ['open', [url]];
  if (platform === 'win32') return ['cmd', ['/c', 'start', '', url]];
  return ['xdg-open', [url]];
}

/** Opens the browser; where there is none, the address stands in the terminal already. */
export function openBrowser(url: string): void {
  const [program, args] = browserCommand(url, process.platform);
  const child = spawn(program, args, { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}
