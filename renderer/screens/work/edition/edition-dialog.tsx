import type { Edition, EditionFields } from '../../../../src/contract/editions.ts';
import { useCommand } from '../../../api.ts';
import { blankEdition } from '../parts/blanks.ts';
import { fullName } from '../parts/edition-names.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { useErrors } from '../parts/use-inline-errors.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { namedContributors } from './contributors-input.tsx';
import { IdentityInputs } from './identity-inputs.tsx';
import { LockedIdentity } from './locked-identity.tsx';
import { hasAges, OpenInputs } from './open-inputs.tsx';
import { filledSubjects } from './subjects-input.tsx';

const blank = blankEdition({ title: '', language: '', imprint: '' });
const FIELDS = Object.keys(blank) as (keyof EditionFields)[];

/** The fields of an edition without what else it carries. */
function fieldsOf(edition: EditionFields): EditionFields {
  const entries = FIELDS.map((field) => [field, edition[field]]);
  return { ...blank, ...Object.fromEntries(entries) };
}

/** The draft without the rows that were never filled in, and without ages where none are told. */
function tidy(draft: EditionFields): EditionFields {
  return {
    ...draft,
    contributors: namedContributors(draft.contributors),
    subjects: filledSubjects(draft.subjects),
    ageFrom: hasAges(draft.audience) ? draft.ageFrom : null,
    ageTo: hasAges(draft.audience) ? draft.ageTo : null,
  };
}

/** What changed, tidied; rows left out by the tidying alone are no change. */
function tidiedChanges(form: RecordForm<EditionFields>): Partial<EditionFields> {
  const touched = form.changes();
  const tidied = form.changes(tidy(form.draft));
  const ages = 'audience' in touched ? ['ageFrom', 'ageTo'] : [];
  return Object.fromEntries(
    Object.entries(tidied).filter(([field]) => field in touched || ages.includes(field)),
  );
}

/** Changes an edition: what is locked is shown so, what is open can be edited. */
export function EditionDialog({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const form = useRecord(fieldsOf(edition));
  const update = useCommand('editions.update');
  const errorOf = useErrors('editions.update', { id: edition.id, ...form.changes() }, update.refusal);
  const { lock } = edition;
  const send = async () => {
    const changes = tidiedChanges(form);
    if (Object.keys(changes).length === 0) return onClose();
    const answer = await update.run({ id: edition.id, ...changes }, `${fullName(edition)} is changed.`);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Edit ${fullName(edition)}`}
      submit="Save the edition"
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={update.pending}
      refusal={update.refusal}
      fields={lock ? FIELDS.filter((field) => !lock.fields.includes(field)) : FIELDS}
      dirty={form.dirty}
    >
      {lock?.fields.includes('title') ? (
        <LockedIdentity edition={edition} lock={lock} />
      ) : (
        <IdentityInputs form={form} errorOf={errorOf} edition={edition} />
      )}
      <OpenInputs form={form} errorOf={errorOf} edition={edition} />
    </FormDialog>
  );
}

/** Adds an edition that follows from none of the others, such as a translation. */
export function NewEditionDialog({ onClose }: { onClose: () => void }) {
  const { work, settings } = useWork();
  const { language, imprint } = settings;
  const form = useRecord(blankEdition({ title: work.title, language, imprint }));
  const create = useCommand('editions.create');
  const errorOf = useErrors('editions.create', { workId: work.id, ...form.changes() }, create.refusal);
  const send = async () => {
    const answer = await create.run({ workId: work.id, ...tidy(form.draft) }, 'The edition is recorded.');
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title="Add an edition that stands alone"
      submit="Add the edition"
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={create.pending}
      refusal={create.refusal}
      fields={FIELDS}
      dirty={form.dirty}
    >
      <p className="soft">
        For an edition that replaces none of the others, such as a translation. To follow one that is on sale,
        use “Prepare the next edition” there instead: it carries over what should carry.
      </p>
      <IdentityInputs form={form} errorOf={errorOf} />
      <OpenInputs form={form} errorOf={errorOf} />
    </FormDialog>
  );
}
