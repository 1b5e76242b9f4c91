import { useState } from 'react';
import type { FormatTerms } from '../../../../src/contract/format-list.ts';
import { FORMAT_STANDINGS, formName, LISTING_STANDINGS } from '../../../../src/contract/terms.ts';
import { useQueryOf } from '../../../api.ts';
import { Button, Checkbox, DateInput, Dialog, Select } from '../../../ui/index.ts';
import { useGuardedClose } from '../../../ui/use-guarded-close.tsx';
import { languageName } from '../../work/parts/names.ts';
import { NO_TERMS } from './use-terms.ts';

interface GroupProps<Value> {
  title: string;
  values: readonly Value[];
  nameOf: (value: Value) => string;
  chosen: readonly Value[];
  onChange: (chosen: Value[]) => void;
}

function Group<Value extends string | number>({
  title,
  values,
  nameOf,
  chosen,
  onChange,
}: GroupProps<Value>) {
  if (values.length === 0) return null;
  return (
    <fieldset>
      <legend>{title}</legend>
      {values.map((value) => (
        <Checkbox
          key={value}
          label={nameOf(value)}
          checked={chosen.includes(value)}
          onChange={(on) => onChange(on ? [...chosen, value] : chosen.filter((one) => one !== value))}
        />
      ))}
    </fieldset>
  );
}

type Part = { draft: FormatTerms; set: (part: Partial<FormatTerms>) => void };

function Groups({ draft, set }: Part) {
  const choices = useQueryOf('formats.choices', {});
  const channels = useQueryOf('channels.list', {}).data?.channels ?? [];
  const { forms = [], languages = [], imprints = [] } = choices.data ?? {};
  return (
    <div className="filter-groups">
      <Group
        title="Standing"
        values={FORMAT_STANDINGS}
        nameOf={(standing) => standing}
        chosen={draft.standings}
        onChange={(standings) => set({ standings })}
      />
      <Group
        title="Product form"
        values={forms}
        nameOf={(form) => formName({ form })}
        chosen={draft.forms}
        onChange={(next) => set({ forms: next })}
      />
      <Group
        title="Listed on"
        values={channels.map((channel) => channel.id)}
        nameOf={(id) => channels.find((channel) => channel.id === id)?.name ?? ''}
        chosen={draft.channelIds}
        onChange={(channelIds) => set({ channelIds })}
      />
      <Group
        title="Its listing stands at"
        values={LISTING_STANDINGS}
        nameOf={(standing) => standing}
        chosen={draft.listingStandings}
        onChange={(listingStandings) => set({ listingStandings })}
      />
      <Group
        title="Language"
        values={languages}
        nameOf={languageName}
        chosen={draft.languages}
        onChange={(next) => set({ languages: next })}
      />
      <Group
        title="Imprint"
        values={imprints}
        nameOf={(imprint) => imprint}
        chosen={draft.imprints}
        onChange={(next) => set({ imprints: next })}
      />
    </div>
  );
}

function Days({ draft, set }: Part) {
  return (
    <div className="row">
      <Select
        label="Day"
        value={draft.dateOf}
        onChange={(dateOf) => set({ dateOf })}
        choices={[
          { value: 'on sale', label: 'On sale' },
          { value: 'publication', label: 'Published' },
        ]}
        width="short"
      />
      <DateInput
        label="From"
        value={draft.from ?? ''}
        onChange={(day) => set({ from: day === '' ? null : day })}
      />
      <DateInput label="To" value={draft.to ?? ''} onChange={(day) => set({ to: day === '' ? null : day })} />
    </div>
  );
}

/** Conditions of every kind at once: all of them must hold, within one any of its values. */
export function FilterDialog({
  terms,
  onApply,
  onClose,
}: {
  terms: FormatTerms;
  onApply: (terms: FormatTerms) => void;
  onClose: () => void;
}) {
  const [draft, setDraft] = useState(terms);
  const set = (part: Partial<FormatTerms>) => setDraft((now) => ({ ...now, ...part }));
  const guard = useGuardedClose(JSON.stringify(draft) !== JSON.stringify(terms), onClose);
  const backwards = draft.from !== null && draft.to !== null && draft.from > draft.to;
  return (
    <>
      <Dialog
        open
        onClose={guard.close}
        title="Filter the formats"
        width="wide"
        footer={
          <>
            <Button
              kind="primary"
              disabled={backwards}
              reason="The first day lies after the last."
              onClick={() => onApply(draft)}
            >
              Show these
            </Button>
            <Button onClick={() => setDraft({ ...NO_TERMS, text: draft.text })}>Clear</Button>
          </>
        }
      >
        <div className="stack">
          <p className="soft">
            Every kind of condition that is set must hold; within a kind, any of the ticked ones.
          </p>
          <Groups draft={draft} set={set} />
          <Days draft={draft} set={set} />
          <Checkbox
            label="Only where the audit found something"
            checked={draft.withFindings}
            onChange={(withFindings) => set({ withFindings })}
          />
        </div>
      </Dialog>
      {guard.question}
    </>
  );
}
