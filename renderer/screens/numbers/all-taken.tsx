import { useState } from 'react';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { Section } from '../../ui/index.ts';
import { NumberDialog } from './number-dialog.tsx';
import { NumberTable } from './number-table.tsx';

/** Every number in use, whichever block it lies in, also those outside all recorded blocks. */
export function AllTaken({ asOf }: { asOf: string | undefined }) {
  const [opened, setOpened] = useState<NumberRow>();
  return (
    <Section title="Every number in use">
      <NumberTable caption="Every number in use" fileName="numbers-in-use" asOf={asOf} onOpen={setOpened} />
      {opened ? <NumberDialog opened={opened} asOf={asOf} onClose={() => setOpened(undefined)} /> : null}
    </Section>
  );
}
