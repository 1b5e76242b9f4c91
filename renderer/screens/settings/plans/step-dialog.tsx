import {
  ANCHORS,
  type PlanKind,
  type PlanStep,
  planStep,
  STEP_PLACEHOLDERS,
} from '../../../../src/contract/plan-templates.ts';
import { Checkbox, Field, NumberInput, Select, TextArea, TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../../work/parts/form-dialog.tsx';
import { type RecordForm, useRecord } from '../../work/parts/use-record.ts';
import { checkInput } from '../parts/input-check.ts';
import { ANCHOR_WORDS, SCOPE_WORDS } from './words.ts';

interface StepDialogProps {
  kind: PlanKind;
  step: PlanStep;
  /** The other steps, which this one can need. */
  others: readonly PlanStep[];
  onClose: () => void;
  onKeep: (step: PlanStep) => void;
}

type Form = RecordForm<PlanStep>;

const MADE = [
  { value: 'print', label: 'What is printed' },
  { value: 'e-book', label: 'E-books' },
  { value: 'audio', label: 'Audio' },
] as const;

/** What an own step is done for; a step of the program keeps its own. */
function Subject({ form }: { form: Form }) {
  const { made, scope } = form.draft;
  return (
    <>
      <Select
        label="Done"
        name="scope"
        value={scope}
        onChange={(next) => form.set('scope', next)}
        choices={Object.entries(SCOPE_WORDS).map(([value, label]) => ({
          value: value as PlanStep['scope'],
          label,
        }))}
      />
      {scope === 'edition' ? null : (
        <Field as="group" label="Only for" help="Nothing chosen means everything.">
          {() => (
            <div className="row">
              {MADE.map(({ value, label }) => (
                <Checkbox
                  key={value}
                  label={label}
                  checked={made.includes(value)}
                  onChange={(on) =>
                    form.set('made', on ? [...made, value] : made.filter((one) => one !== value))
                  }
                />
              ))}
            </div>
          )}
        </Field>
      )}
    </>
  );
}

function When({
  kind,
  form,
  errorOf,
}: {
  kind: PlanKind;
  form: Form;
  errorOf: (field: string) => string | undefined;
}) {
  return (
    <div className="step-when">
      <NumberInput
        label="Working days"
        name="days"
        required
        min={0}
        max={365}
        value={form.draft.days}
        onChange={(days) => form.set('days', days ?? 0)}
        error={errorOf('days')}
      />
      <Select
        label="Before or after"
        name="side"
        value={form.draft.side}
        onChange={(side) => form.set('side', side)}
        choices={[
          { value: 'before', label: 'before' },
          { value: 'after', label: 'after' },
        ]}
      />
      <Select
        label="Counted from"
        name="anchor"
        value={form.draft.anchor}
        onChange={(anchor) => form.set('anchor', anchor)}
        choices={ANCHORS[kind].map((value) => ({ value, label: ANCHOR_WORDS[value] }))}
      />
    </div>
  );
}

function Needs({ form, others }: { form: Form; others: readonly PlanStep[] }) {
  const { needs } = form.draft;
  return (
    <details className="step-needs">
      <summary>
        Comes after {needs.length === 0 ? 'no other step' : `${needs.length.toLocaleString()} other steps`}
      </summary>
      <Field as="group" label="Steps that come first">
        {() => (
          <div className="stack">
            {others.map(({ key, title }) => (
              <Checkbox
                key={key}
                label={title}
                checked={needs.includes(key)}
                onChange={(on) =>
                  form.set('needs', on ? [...needs, key] : needs.filter((one) => one !== key))
                }
              />
            ))}
          </div>
        )}
      </Field>
    </details>
  );
}

/** Edits one step; nothing is saved before all steps are. */
export function StepDialog({ kind, step, others, onClose, onKeep }: StepDialogProps) {
  const form = useRecord(step);
  // A new step gets its short name when it is kept.
  const errors = checkInput(planStep, { ...form.draft, key: form.draft.key || 'step' });
  const own = step.kind === 'own';
  const words = STEP_PLACEHOLDERS[form.draft.scope].map((name) => `{${name}}`).join(', ');
  return (
    <FormDialog
      title={step.title === '' ? 'Add a step' : `Change the step: ${step.title}`}
      submit="Keep this step"
      blocked={Object.values(errors)[0]}
      onClose={onClose}
      onSubmit={() => onKeep({ ...form.draft, title: form.draft.title.trim() })}
      dirty={form.dirty}
    >
      <TextInput
        label="What is to be done"
        name="title"
        required
        value={form.draft.title}
        onChange={(title) => form.set('title', title)}
        error={form.dirty ? errors.title : undefined}
        help={`These words are filled in: ${words}.`}
      />
      {own ? <Subject form={form} /> : null}
      <When kind={kind} form={form} errorOf={(field) => errors[field]} />
      <Needs form={form} others={others} />
      <TextArea
        label="Note"
        name="note"
        rows={3}
        value={form.draft.note}
        onChange={(note) => form.set('note', note)}
        help="Stands at the task."
        error={errors.note}
      />
    </FormDialog>
  );
}
