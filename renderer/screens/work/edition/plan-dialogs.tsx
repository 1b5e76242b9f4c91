import { type ReactNode, useState } from 'react';
import { Link } from 'wouter';
import type { Edition } from '../../../../src/contract/editions.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Checkbox, DateInput, Dialog, Notice, Select } from '../../../ui/index.ts';
import { HelpFold } from '../../help/help-link.tsx';
import { editionOf, fullName, shortName } from '../parts/edition-names.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import { counted } from '../parts/names.ts';
import { errorsOf } from '../parts/refusals.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { ReleasePreview } from './release-preview.tsx';

/** The address of the Agenda with the tasks of one edition. */
export function agendaOf(edition: Edition): string {
  return `/agenda?edition=${edition.id}`;
}

interface PlanDialogProps {
  edition: Edition;
  onClose: () => void;
}

function PlanMade({ edition, onClose, children }: PlanDialogProps & { children: ReactNode }) {
  const close = () => closeAt(onClose, 'edition', edition.id);
  return (
    <Dialog
      open
      onClose={close}
      title="The plan is made"
      width="narrow"
      footer={
        <>
          <Link href={agendaOf(edition)} className="button button-primary">
            See the tasks in the Agenda
          </Link>
          <Button onClick={close}>Done</Button>
        </>
      }
    >
      {children}
    </Dialog>
  );
}

const PROOFS = [
  { value: 'channel', label: 'As each channel has it' },
  { value: 'printed', label: 'Wanted of everything printed' },
  { value: 'none', label: 'Not wanted' },
];

interface ReleaseDraft {
  day: string;
  proofs: string;
  onSaleFixed: boolean;
}

/** What a release can be told beside its day. */
function ReleaseChoices({ form }: { form: RecordForm<ReleaseDraft> }) {
  return (
    <>
      <Select
        label="Printed proofs"
        name="printedProof"
        value={form.draft.proofs}
        onChange={(chosen) => form.set('proofs', chosen)}
        choices={PROOFS}
      />
      <Checkbox
        label="Nothing is sold before that day"
        checked={form.draft.onSaleFixed}
        onChange={(fixed) => form.set('onSaleFixed', fixed)}
        help="The day is then both publication and on-sale date, as pre-orders need it. Otherwise it is the publication date alone, and each channel may sell as soon as it can."
        name="onSaleFixed"
      />
    </>
  );
}

/** Plans to bring every listing of an edition on sale on one day, with a look at the plan before it is made. */
export function ReleaseDialog({ edition, onClose }: PlanDialogProps) {
  const { today } = useWork();
  const form = useRecord<ReleaseDraft>({ day: '', proofs: 'channel', onSaleFixed: true });
  const plan = useCommand('plans.release');
  const [tasks, setTasks] = useState<number>();
  const { day, onSaleFixed, proofs } = form.draft;
  const printedProof = proofs === 'channel' ? null : proofs === 'printed';
  const send = async () => {
    const input = { editionId: edition.id, day, printedProof, onSaleFixed };
    const answer = await plan.run(input, `The release on ${formatDay(day)} is planned.`);
    if (answer.ok) setTasks(answer.value.tasks);
  };
  if (tasks !== undefined)
    return (
      <PlanMade edition={edition} onClose={onClose}>
        {counted(tasks, 'task')} lead up to {formatDay(day)}; that day is set as{' '}
        {onSaleFixed ? 'publication and on-sale date' : 'publication date'} everywhere.
      </PlanMade>
    );
  return (
    <FormDialog
      title={`Plan the release of ${fullName(edition)}`}
      submit="Plan the release"
      blocked={day === '' ? 'Choose the day of the release.' : undefined}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={plan.pending}
      refusal={plan.refusal}
      fields={['day']}
      dirty={form.dirty}
    >
      <p className="soft">
        Every listing of this edition comes on sale on one day. The tasks are dated back from it by the
        working days each channel needs.
      </p>
      <DateInput
        label="Day of the release"
        value={day}
        min={today}
        onChange={(next) => form.set('day', next)}
        error={errorsOf(plan.refusal)('day')}
        required
        name="day"
      />
      <ReleaseChoices form={form} />
      <ReleasePreview
        editionId={edition.id}
        day={day}
        printedProof={printedProof}
        onDay={(next) => form.set('day', next)}
      />
      <HelpFold topic="release" />
    </FormDialog>
  );
}

/** Whether any format of an edition is on sale somewhere. */
function sells(edition: Edition): boolean {
  return edition.formats.some((format) => format.listings.some((listing) => listing.standing === 'selling'));
}

/** What to know before an edition is taken off sale. `next` is the edition that replaces it. */
function RetirementCaution({ next }: { next: Edition | undefined }) {
  if (!next)
    return (
      <Notice tone="care" title="No edition replaces this one.">
        Once it is gone, nothing of it is on sale. If a new edition is to come, prepare that first.
      </Notice>
    );
  if (sells(next)) return <Notice>The {shortName(next)} is on sale, so this one can be taken off.</Notice>;
  const release = next.plans.find((plan) => plan.kind === 'release' && !plan.ended);
  return (
    <Notice tone="care" title={`The ${shortName(next)} is not selling yet.`}>
      Never ask for the removal of the old before the new is on sale, unless you mean it: in between, readers
      would find nothing.{' '}
      {release
        ? `Its release is planned for ${formatDay(release.day)}; the retirement waits for that.`
        : `Plan the release of the ${shortName(next)} first; the retirement then waits for it.`}
    </Notice>
  );
}

/** Plans to take an edition off sale everywhere. */
export function RetirementDialog({ edition, onClose }: PlanDialogProps) {
  const { work } = useWork();
  const next = editionOf(work, edition.replacedById);
  const form = useRecord({ day: '', before: false });
  const plan = useCommand('plans.retirement');
  const [tasks, setTasks] = useState<number>();
  const { day, before } = form.draft;
  const send = async () => {
    const answer = await plan.run(
      { editionId: edition.id, beforeReplacement: before, ...(day === '' ? {} : { day }) },
      'The retirement is planned.',
    );
    if (answer.ok) setTasks(answer.value.tasks);
  };
  if (tasks !== undefined)
    return (
      <PlanMade edition={edition} onClose={onClose}>
        {counted(tasks, 'task')}: ask each channel, chase, and confirm that it no longer shows.
      </PlanMade>
    );
  return (
    <FormDialog
      title={`Plan the retirement of ${fullName(edition)}`}
      submit="Plan the retirement"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={plan.pending}
      refusal={plan.refusal}
      fields={['day', 'beforeReplacement']}
      dirty={form.dirty}
    >
      <RetirementCaution next={next} />
      <DateInput
        label="Day to ask the channels"
        value={day}
        onChange={(chosen) => form.set('day', chosen)}
        help="Left empty: the release day of the edition that replaces it, or today."
        error={errorsOf(plan.refusal)('day')}
        name="day"
      />
      {next && !sells(next) ? (
        <Checkbox
          label={`I mean it: ask for removal before the ${shortName(next)} sells`}
          checked={before}
          onChange={(meant) => form.set('before', meant)}
          error={errorsOf(plan.refusal)('beforeReplacement')}
          name="beforeReplacement"
        />
      ) : null}
      <HelpFold topic="retiring" />
    </FormDialog>
  );
}
