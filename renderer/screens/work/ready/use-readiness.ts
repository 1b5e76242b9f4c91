import type { OutputOf } from '../../../../src/contract/index.ts';
import { useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';

export type FormatReadiness = OutputOf<'editions.readiness'>['formats'][number];
export type Need = FormatReadiness['needs'][number];

/** What a format needs before it is sent; undefined while it is read, and for a format that has ended. */
export function useReadiness(format: { id: number; editionId: number }): FormatReadiness | undefined {
  const { asOf } = useAsOf();
  const { data } = useQueryOf(
    'editions.readiness',
    { editionId: format.editionId, ...(asOf === undefined ? {} : { asOf }) },
    { keep: true },
  );
  return data?.formats.find((one) => one.formatId === format.id);
}

/** The needs that one listing has: those of its own channel and those of every channel. */
export function needsOn(readiness: FormatReadiness, channelName: string): Need[] {
  return readiness.needs.filter(({ channels }) => channels.length === 0 || channels.includes(channelName));
}
