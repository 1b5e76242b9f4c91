import type { CommandGroup } from './changes.ts';

/** Reading form of the local day of an instant: `Wednesday 25 November 2026`, in the order of the locale. */
function dayOf(at: string): string {
  return new Intl.DateTimeFormat(undefined, { dateStyle: 'full' }).format(new Date(at));
}

/** Commands by the local day on which they were carried out, in the order given. */
export function byDay(groups: readonly CommandGroup[]): { day: string; commands: CommandGroup[] }[] {
  return [...Map.groupBy(groups, (group) => dayOf(group.at))].map(([day, commands]) => ({ day, commands }));
}
