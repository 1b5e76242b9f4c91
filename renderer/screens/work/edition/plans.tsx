import { useState } from 'react';
import { Link } from 'wouter';
import type { Edition } from '../../../../src/contract/editions.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, ConfirmDialog, DateInput } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import { counted } from '../parts/names.ts';
import { errorsOf } from '../parts/refusals.ts';
import { useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { LatePlan } from './late-plan.tsx';
import { agendaOf } from './plan-dialogs.tsx';

type Plan = Edition['plans'][number];

const NAMES = { release: 'Release', retirement: 'Retirement' } as const;

/** The plans of an edition with how far they are. */
export function Plans({ edition }: { edition: Edition }) {
  if (edition.plans.length === 0) return null;
  return (
    <ul className="plans" aria-label={`Plans of ${fullName(edition)}`}>
      {edition.plans.map((plan) => (
        <PlanItem key={plan.id} edition={edition} plan={plan} />
      ))}
    </ul>
  );
}

function PlanItem({ edition, plan }: { edition: Edition; plan: Plan }) {
  const { editable } = useWork();
  const [doing, setDoing] = useState<'date' | 'drop'>();
  const close = () => setDoing(undefined);
  const name = NAMES[plan.kind];
  return (
    <li>
      <span>
        <strong>{name}</strong> {plan.ended ? 'was planned for' : 'is planned for'}{' '}
        <time dateTime={plan.day}>{formatDay(plan.day)}</time>
        <span className="soft">
          {' '}
          · {plan.ended ? 'ended' : `${counted(plan.open, 'task')} open`}, {plan.done.toLocaleString()} done
        </span>
      </span>
      <span className="row">
        <Link href={agendaOf(edition)}>See in the Agenda</Link>
        {editable && !plan.ended ? (
          <>
            <Button kind="quiet" label={`Move to another day: ${plan.kind}`} onClick={() => setDoing('date')}>
              Move to another day
            </Button>
            <Button kind="quiet" label={`Drop: ${plan.kind} plan`} onClick={() => setDoing('drop')}>
              Drop
            </Button>
          </>
        ) : null}
      </span>
      {plan.kind === 'release' && !plan.ended ? (
        <LatePlan planId={plan.id} editionId={edition.id} editable={editable} />
      ) : null}
      {doing === 'date' ? <RedateDialog plan={plan} onClose={close} /> : null}
      {doing === 'drop' ? <DropDialog edition={edition} plan={plan} onClose={close} /> : null}
    </li>
  );
}

function RedateDialog({ plan, onClose }: { plan: Plan; onClose: () => void }) {
  const form = useRecord({ day: plan.day });
  const redate = useCommand('plans.redate');
  const { day } = form.draft;
  const send = async () => {
    const answer = await redate.run(
      { planId: plan.id, day },
      ({ moved }) => `${counted(moved, 'task')} moved; the plan is for ${formatDay(day)} now.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Move the ${plan.kind} to another day`}
      submit="Move the plan"
      width="narrow"
      blocked={day === '' || day === plan.day ? 'Choose another day.' : undefined}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={redate.pending}
      refusal={redate.refusal}
      fields={['day']}
      dirty={form.dirty}
    >
      <DateInput
        label="New day"
        value={day}
        onChange={(next) => form.set('day', next)}
        help="Open tasks are dated anew; finished ones stay as they are."
        error={errorsOf(redate.refusal)('day')}
        required
        name="day"
      />
    </FormDialog>
  );
}

function DropDialog({ edition, plan, onClose }: { edition: Edition; plan: Plan; onClose: () => void }) {
  const drop = useCommand('plans.drop');
  const send = async (reason: string) => {
    const answer = await drop.run({ planId: plan.id, reason }, `The ${plan.kind} plan is dropped.`);
    if (answer.ok) closeAt(onClose, 'edition', edition.id);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Drop the ${plan.kind} plan?`}
      confirm="Drop the plan"
      danger
      reason="required"
      pending={drop.pending}
      refusal={drop.refusal}
      onConfirm={(reason) => void send(reason)}
    >
      {plan.open === 0
        ? 'No task of it is open; what was done stays on record.'
        : `${counted(plan.open, 'open task')} will be dropped with it. What was done stays on record.`}
    </ConfirmDialog>
  );
}
