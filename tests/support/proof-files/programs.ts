import { spawnSync } from 'node:child_process';

/** Whether an outside program is here; where CI is set it must be, so the tests that need it are not left out there. */
export function isHere(program: string, versionArgument = '--version'): boolean {
  if (process.env.CI) return true;
  const here = spawnSync(program, [versionArgument], { stdio: 'ignore' }).error === undefined;
  if (!here) console.log(`Skipped: ${program} is not on this machine, so its files are not checked here.`);
  return here;
}
