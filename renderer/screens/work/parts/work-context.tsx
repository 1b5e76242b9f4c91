import { createContext, type ReactNode, useContext } from 'react';
import type { Settings } from '../../../../src/contract/settings.ts';
import type { Work } from '../../../../src/contract/works.ts';
import { type CallRefused, useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { useReadOnly } from '../../../read-only.ts';

/** What every part of the Work screen reads. */
export interface WorkFacts {
  work: Work;
  settings: Settings;
  /** YYYY-MM-DD where the catalogue is kept. */
  today: string;
  /** False on a past day and in a catalogue open for reading only: no actions are then shown. */
  editable: boolean;
}

const Facts = createContext<WorkFacts | undefined>(undefined);

/** Reads a work and what goes with it; both answers are undefined while it is being read. */
export function useWorkFacts(id: number): { facts: WorkFacts | undefined; refusal: CallRefused | undefined } {
  const { asOf } = useAsOf();
  const work = useQueryOf('works.get', { id, ...(asOf === undefined ? {} : { asOf }) });
  const settings = useQueryOf('settings.get', {});
  const info = useQueryOf('catalogue.info', {});
  const editable = useReadOnly() === undefined;
  const refusal = work.error ?? settings.error ?? undefined;
  if (refusal || !work.data || !settings.data || !info.data) return { facts: undefined, refusal };
  return {
    facts: { work: work.data, settings: settings.data, today: info.data.today, editable },
    refusal: undefined,
  };
}

/** Gives a work and what goes with it to the parts of the screen. */
export function WorkProvider({ facts, children }: { facts: WorkFacts; children: ReactNode }) {
  return <Facts value={facts}>{children}</Facts>;
}

/** The work on the screen. */
export function useWork(): WorkFacts {
  const facts = useContext(Facts);
  if (!facts) throw new Error('This part belongs inside the Work screen.');
  return facts;
}
