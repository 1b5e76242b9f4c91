import type { TextExtent } from '../../../../src/contract/edition-advice.ts';
import type { Edition } from '../../../../src/contract/editions.ts';
import { Checkbox, Field, TextArea } from '../../../ui/index.ts';
import { RadioGroup } from '../parts/radio-group.tsx';
import type { RecordForm } from '../parts/use-record.ts';
import {
  type Advice,
  type AdviceDraft,
  type AdviceRule,
  askedRules,
  concerned,
  type FurtherForm,
  furtherForms,
} from './draft.ts';

interface ChangeFormProps {
  edition: Edition;
  form: RecordForm<AdviceDraft>;
  rules: readonly AdviceRule[];
  mode: Advice['mode'];
}

const EXTENTS: { value: TextExtent | 'unsaid'; label: string; help?: string }[] = [
  { value: 'unsaid', label: 'Not said yet' },
  { value: 'unchanged', label: 'Not at all' },
  { value: 'corrections', label: 'Misprints and small slips only' },
  { value: 'some', label: 'Some passages', help: 'A paragraph here and there, an updated table.' },
  {
    value: 'substantial',
    label: 'Substantially',
    help: 'Chapters are new, rewritten or gone; the book says something else.',
  },
];

const GROUPS: Record<AdviceRule['group'], string> = {
  text: 'What is read',
  names: 'Names on the title page',
  form: 'How it is made',
  sale: 'How it is sold',
  rights: 'What a reader may do with the file',
  beside: 'What comes out beside it',
};

/** One change to tick, and for which formats where it may concern only some. */
function ChangeTick({ edition, form, rule }: Omit<ChangeFormProps, 'rules' | 'mode'> & { rule: AdviceRule }) {
  const { changes } = form.draft;
  const formats = concerned(edition, rule);
  const ticked = changes.find((entry) => entry.change === rule.change);
  const others = changes.filter((entry) => entry.change !== rule.change);
  const set = (formatIds: number[]) =>
    form.set('changes', formatIds.length === 0 ? others : [...others, { change: rule.change, formatIds }]);
  const single = rule.scope === 'format' && rule.beside === null && formats.length > 1;
  return (
    <div>
      <Checkbox
        label={rule.label}
        checked={ticked !== undefined}
        onChange={(on) => set(on ? formats.map((format) => format.id) : [])}
      />
      {ticked && single ? (
        <fieldset className="which-formats">
          <legend className="visually-hidden">{rule.label}: of which formats</legend>
          {formats.map((format) => (
            <Checkbox
              key={format.id}
              label={format.name}
              checked={ticked.formatIds.includes(format.id)}
              onChange={(on) =>
                set(
                  formats
                    .map(({ id }) => id)
                    .filter((id) => (id === format.id ? on : ticked.formatIds.includes(id))),
                )
              }
            />
          ))}
        </fieldset>
      ) : null}
    </div>
  );
}

function FurtherForms({ edition, form }: Pick<ChangeFormProps, 'edition' | 'form'>) {
  const { added } = form.draft;
  const others = (further: FurtherForm) => added.filter((one) => one.name !== further.name);
  return (
    <Field label="It also comes out as" as="group">
      {() => (
        <div className="radios further-forms">
          {furtherForms(edition).map((further) => (
            <Checkbox
              key={further.name}
              label={further.name}
              checked={added.some((one) => one.name === further.name)}
              onChange={(on) => form.set('added', on ? [...others(further), further] : others(further))}
            />
          ))}
        </div>
      )}
    </Field>
  );
}

const WISHES = [
  { value: 'none', label: 'No wish: just tell me' },
  { value: 'new', label: 'New numbers' },
  { value: 'keep', label: 'To keep the numbers' },
] as const;

/** What the user says of the change; what the records tell is not asked. */
export function ChangeForm({ edition, form, rules, mode }: ChangeFormProps) {
  const { draft, set } = form;
  const asked = Map.groupBy(askedRules(edition, rules, mode), (rule) => rule.group);
  return (
    <div className="stack">
      <RadioGroup
        label="How far does the text change?"
        value={draft.text ?? 'unsaid'}
        onChange={(text) => set('text', text === 'unsaid' ? null : text)}
        choices={EXTENTS}
      />
      {[...asked].map(([group, ofGroup]) => (
        <Field key={group} label={GROUPS[group]} as="group">
          {() => (
            <div className="radios">
              {ofGroup.map((rule) => (
                <ChangeTick key={rule.change} edition={edition} form={form} rule={rule} />
              ))}
            </div>
          )}
        </Field>
      ))}
      {mode === 'pondering' ? <FurtherForms edition={edition} form={form} /> : null}
      <RadioGroup
        label="What would you like?"
        value={draft.wish ?? 'none'}
        onChange={(wish) => set('wish', wish === 'none' ? null : wish)}
        choices={WISHES}
      />
      <TextArea
        label="Why, in your own words"
        rows={3}
        value={draft.note}
        onChange={(note) => set('note', note)}
        help="Kept with the answer, for whoever asks later why the numbers are what they are."
      />
    </div>
  );
}
