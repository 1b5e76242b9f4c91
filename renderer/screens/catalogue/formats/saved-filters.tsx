import { useState } from 'react';
import type { FormatTerms } from '../../../../src/contract/format-list.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { useReadOnly } from '../../../read-only.ts';
import { Button, Select, TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../../work/parts/form-dialog.tsx';

function SaveDialog({ terms, onClose }: { terms: FormatTerms; onClose: () => void }) {
  const save = useCommand('filters.save');
  const [name, setName] = useState('');
  const known = useQueryOf('filters.list', {}).data?.filters ?? [];
  const same = known.find((one) => one.name.toLocaleLowerCase() === name.trim().toLocaleLowerCase());
  return (
    <FormDialog
      title="Save this filter"
      submit={same ? 'Replace the saved filter' : 'Save the filter'}
      width="narrow"
      pending={save.pending}
      refusal={save.refusal}
      fields={['name']}
      dirty={name !== ''}
      blocked={name.trim() === '' ? 'Give it a name first.' : undefined}
      onClose={onClose}
      onSubmit={() =>
        void save.run({ name, terms }, `The filter “${name.trim()}” is saved.`).then((answer) => {
          if (answer.ok) onClose();
        })
      }
    >
      <TextInput
        label="Name"
        value={name}
        onChange={setName}
        required
        help={
          same
            ? `“${same.name}” is there already; it gets these conditions.`
            : 'It is kept in the catalogue file.'
        }
        error={save.errorOf('name')}
      />
    </FormDialog>
  );
}

/** The saved filters: choose one, keep the present one, forget one. */
export function SavedFilters({
  terms,
  filtered,
  onChoose,
}: {
  terms: FormatTerms;
  filtered: boolean;
  onChoose: (terms: FormatTerms) => void;
}) {
  const readOnly = useReadOnly();
  const [saving, setSaving] = useState(false);
  const forget = useCommand('filters.remove');
  const filters = useQueryOf('filters.list', {}).data?.filters ?? [];
  const current = filters.find((one) => JSON.stringify(one.terms) === JSON.stringify(terms));
  return (
    <>
      {filters.length > 0 ? (
        <Select
          label="Saved filters"
          value={current ? String(current.id) : ''}
          placeholder="Choose…"
          width="medium"
          choices={filters.map((one) => ({ value: String(one.id), label: one.name }))}
          onChange={(id) => {
            const one = filters.find((filter) => String(filter.id) === id);
            if (one) onChoose(one.terms);
          }}
        />
      ) : null}
      {current && readOnly === undefined ? (
        <Button
          kind="quiet"
          onClick={() => void forget.run({ id: current.id }, `The filter “${current.name}” is forgotten.`)}
        >
          Forget this filter
        </Button>
      ) : null}
      {filtered && !current ? (
        <Button onClick={() => setSaving(true)} disabled={readOnly !== undefined} reason={readOnly}>
          Save this filter…
        </Button>
      ) : null}
      {saving ? <SaveDialog terms={terms} onClose={() => setSaving(false)} /> : null}
    </>
  );
}
