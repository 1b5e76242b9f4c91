import type { Subject } from '../../../../src/contract/editions.ts';
import { SUBJECT_SCHEMES } from '../../../../src/contract/terms.ts';
import { Button, Select, TextInput } from '../../../ui/index.ts';
import { SCHEME_NAMES } from '../parts/names.ts';
import { OrderedRows } from '../parts/ordered-rows.tsx';
import type { ErrorOf } from '../parts/refusals.ts';

export interface SubjectsInputProps {
  value: readonly Subject[];
  onChange: (value: Subject[]) => void;
  /** What the channels take, where one of them sets a limit. */
  help?: string | undefined;
  errorOf: ErrorOf;
}

const SCHEMES = SUBJECT_SCHEMES.map((value) => ({ value, label: SCHEME_NAMES[value] }));

const CODE_HELP = {
  thema: 'Capital letters and digits.',
  bisac: 'Three capital letters and six digits.',
  own: 'A word or code of your own.',
} as const;

/** The rows that were filled in. */
export function filledSubjects(rows: readonly Subject[]): Subject[] {
  return rows.filter(({ code, heading }) => code.trim() !== '' || heading.trim() !== '');
}

/** Subjects in order; the first is the main one. */
export function SubjectsInput({ value, onChange, help, errorOf }: SubjectsInputProps) {
  const scheme = value.at(-1)?.scheme ?? 'thema';
  return (
    <OrderedRows
      label="Subjects"
      one="Subject"
      help={`The first is the main one.${help ? ` ${help}` : ''}`}
      rows={value}
      onChange={onChange}
      nameOf={(row) => row.heading || row.code}
      empty="No subject yet."
      error={errorOf('subjects')}
      add={
        <Button onClick={() => onChange([...value, { scheme, code: '', heading: '' }])}>Add a subject</Button>
      }
    >
      {(row, index, change) => (
        <div className="row-fields row-fields-subject">
          <Select
            label={index === 0 ? 'Scheme of the main subject' : `Scheme ${index + 1}`}
            value={row.scheme}
            onChange={(next) => change({ ...row, scheme: next })}
            choices={SCHEMES}
          />
          <TextInput
            label={index === 0 ? 'Code of the main subject' : `Code ${index + 1}`}
            mono
            value={row.code}
            onChange={(code) => change({ ...row, code: row.scheme === 'own' ? code : code.toUpperCase() })}
            help={CODE_HELP[row.scheme]}
            error={errorOf(`subjects.${index}.code`)}
          />
          <TextInput
            label={index === 0 ? 'Heading of the main subject' : `Heading ${index + 1}`}
            value={row.heading}
            onChange={(heading) => change({ ...row, heading })}
            error={errorOf(`subjects.${index}.heading`)}
          />
        </div>
      )}
    </OrderedRows>
  );
}
