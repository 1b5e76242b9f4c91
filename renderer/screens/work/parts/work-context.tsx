import { createContext, type ReactNode, useContext } from 'react';
import type { Settings } from '../../../../src/contract/settings.ts';
import type { Work } from '../../../../src/contract/works.ts';
import { useQueryOf } from '../../../api.ts';
import { useReadOnly } from '../../../read-only.ts';
import { Refused } from '../../../ui/index.ts';

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

/** Gives a work and what goes with it to the parts of the screen. */
export function WorkProvider({ work, children }: { work: Work; children: ReactNode }) {
  const settings = useQueryOf('settings.get', {});
  const info = useQueryOf('catalogue.info', {});
  const editable = useReadOnly() === undefined;
  if (settings.error) return <Refused refusal={settings.error} />;
  if (!settings.data || !info.data) return <p className="waiting">Reading the catalogue…</p>;
  return (
    <Facts value={{ work, settings: settings.data, today: info.data.today, editable }}>{children}</Facts>
  );
}

/** The work on the screen. */
export function useWork(): WorkFacts {
  const facts = useContext(Facts);
  if (!facts) throw new Error('This part belongs inside the Work screen.');
  return facts;
}
