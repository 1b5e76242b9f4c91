import { useState } from 'react';
import type { PlanKind, PlanStep } from '../../../../src/contract/plan-templates.ts';
import type { PlanVersion } from '../../../../src/contract/templates.ts';
import { useCommand } from '../../../api.ts';
import { Button, Checkbox, TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../../work/parts/form-dialog.tsx';
import { useRecord } from '../../work/parts/use-record.ts';
import { StepDialog } from './step-dialog.tsx';
import { keyFor, PLAN_NAMES, SCOPE_WORDS, whenInWords } from './words.ts';

interface StepRowProps {
  step: PlanStep;
  needs: readonly string[];
  wrong: boolean;
  onChange: () => void;
  onSwitch: (on: boolean) => void;
  onRemove: (() => void) | undefined;
}

/** One step: whether it is made, when, for what, and after what. */
function StepRow({ step, needs, wrong, onChange, onSwitch, onRemove }: StepRowProps) {
  return (
    <li className={wrong ? 'plan-step plan-step-wrong' : 'plan-step'}>
      <Checkbox
        label={step.title}
        checked={step.on}
        onChange={onSwitch}
        help={
          <>
            {whenInWords(step)}, {SCOPE_WORDS[step.scope]}
            {step.made.length === 0 ? '' : ` (${step.made.join(', ')})`}
            {needs.length === 0 ? '' : `; after: ${needs.join(', ')}`}
          </>
        }
      />
      <span className="row">
        <Button kind="quiet" label={`Change the step: ${step.title}`} onClick={onChange}>
          Change
        </Button>
        {onRemove ? (
          <Button kind="quiet" label={`Take out the step: ${step.title}`} onClick={onRemove}>
            Take out
          </Button>
        ) : null}
      </span>
    </li>
  );
}

const blank = (kind: PlanKind): PlanStep => ({
  ...{
    key: '',
    kind: 'own',
    title: '',
    note: '',
    scope: 'edition',
    made: [],
    proof: [],
    days: 5,
    needs: [],
    on: true,
  },
  ...(kind === 'release' ? { side: 'before', anchor: 'release' } : { side: 'after', anchor: 'start' }),
});

/** The steps as edited so far, and how to change them; every change takes the sentence of a refusal away. */
function useSteps(version: PlanVersion) {
  const form = useRecord({ steps: version.steps, note: '' });
  const save = useCommand('templates.savePlan');
  const { steps } = form.draft;
  const keys = steps.map(({ key }) => key);
  const put = (next: PlanStep[]) => {
    save.clear();
    form.set('steps', next);
  };
  return {
    form,
    save,
    switchStep: (step: PlanStep, on: boolean) =>
      put(steps.map((one) => (one === step ? { ...one, on } : one))),
    keep: (step: PlanStep) => {
      const own = step.key === '' ? { ...step, key: keyFor(step.title, keys) } : step;
      put(keys.includes(own.key) ? steps.map((one) => (one.key === own.key ? own : one)) : [...steps, own]);
    },
    remove: (key: string) =>
      put(
        steps
          .filter((one) => one.key !== key)
          .map((one) => ({ ...one, needs: one.needs.filter((need) => need !== key) })),
      ),
  };
}

interface StepListProps {
  edited: ReturnType<typeof useSteps>;
  onEdit: (step: PlanStep) => void;
}

function StepList({ edited, onEdit }: StepListProps) {
  const { steps } = edited.form.draft;
  const titles = new Map(steps.map(({ key, title }) => [key, title]));
  const wrongAt = Number(edited.save.refusal?.field?.split('.')[1] ?? Number.NaN);
  return (
    <ul className="plan-steps">
      {steps.map((step, at) => (
        <StepRow
          key={step.key}
          step={step}
          needs={step.needs.map((key) => titles.get(key) ?? key)}
          wrong={at === wrongAt}
          onChange={() => onEdit(step)}
          onSwitch={(on) => edited.switchStep(step, on)}
          onRemove={step.kind === 'own' ? () => edited.remove(step.key) : undefined}
        />
      ))}
    </ul>
  );
}

/** Edits the steps of a kind of plan; saving makes a new version and keeps the old. */
export function StepsDialog({ version, onClose }: { version: PlanVersion; onClose: () => void }) {
  const { kind } = version;
  const edited = useSteps(version);
  const { form, save } = edited;
  const [editing, setEditing] = useState<PlanStep>();
  const send = async () => {
    const answer = await save.run(
      { kind, ...form.draft },
      (saved) => `The steps are saved as version ${saved.version}; plans made from now on follow them.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <>
      <FormDialog
        title={`Steps of a plan: ${PLAN_NAMES[kind]}`}
        submit="Save as a new version"
        width="wide"
        blocked={form.dirty ? undefined : 'Nothing is changed.'}
        onClose={onClose}
        onSubmit={() => void send()}
        pending={save.pending}
        refusal={save.refusal}
        dirty={form.dirty}
      >
        <p className="soft">
          What a plan asks for and when. Days are working days. Plans that are made already keep the steps
          they were made from.
        </p>
        <StepList edited={edited} onEdit={setEditing} />
        <div>
          <Button onClick={() => setEditing(blank(kind))}>Add a step</Button>
        </div>
        <TextInput
          label="What changed"
          name="note"
          value={form.draft.note}
          onChange={(note) => form.set('note', note)}
          help="A few words for the list of versions; may stay empty."
        />
      </FormDialog>
      {editing ? (
        <StepDialog
          kind={kind}
          step={editing}
          others={form.draft.steps.filter(({ key }) => key !== editing.key)}
          onClose={() => setEditing(undefined)}
          onKeep={(step) => {
            edited.keep(step);
            setEditing(undefined);
          }}
        />
      ) : null}
    </>
  );
}
