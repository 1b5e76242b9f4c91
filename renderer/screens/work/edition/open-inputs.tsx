import type { Edition } from '../../../../src/contract/editions.ts';
import { AUDIENCES } from '../../../../src/contract/terms.ts';
import { formatDay } from '../../../lib/dates.ts';
import { NumberInput, Select, TextArea } from '../../../ui/index.ts';
import { limitText, useLimits } from '../parts/limits.ts';
import { LockedField } from '../parts/locked-field.tsx';
import { audienceText } from './edition-texts.ts';
import type { EditionInputsProps } from './identity-inputs.tsx';
import { KeywordsInput } from './keywords-input.tsx';
import { SubjectsInput } from './subjects-input.tsx';

/** Characters that a description is counted against where no channel sets a limit: common practice, no source. */
const USUAL_DESCRIPTION = 4000;

const AUDIENCE_CHOICES = AUDIENCES.map((value) => ({ value, label: value }));

/** Whether an audience is told by its age. */
export function hasAges(audience: string): boolean {
  return audience === 'children' || audience === 'young adult';
}

interface OpenInputsProps extends EditionInputsProps {
  /** Tells which channels' limits and locks count; left out for a new edition. */
  edition?: Edition | undefined;
}

/** Why an open field is closed all the same: a channel keeps it from its submission on. */
function heldBy(edition: Edition | undefined, field: string): string | undefined {
  const lock = edition?.lock;
  if (!lock?.fields.includes(field)) return undefined;
  return `Locked since ${formatDay(lock.since)}: a channel it was sent to keeps this field too.`;
}

function AgeInput({ form, errorOf, end }: EditionInputsProps & { end: 'ageFrom' | 'ageTo' }) {
  return (
    <NumberInput
      label={end === 'ageFrom' ? 'Age from' : 'Age to'}
      unit="years"
      min={0}
      max={120}
      value={form.draft[end] ?? undefined}
      onChange={(age) => form.set(end, age ?? null)}
      error={errorOf(end)}
      name={end}
    />
  );
}

function AudienceInputs({ form, errorOf, edition }: OpenInputsProps) {
  const { draft, set } = form;
  const held = heldBy(edition, 'audience');
  if (held) return <LockedField label="Audience" value={audienceText(draft)} reason={held} />;
  return (
    <div className="columns">
      <Select
        label="Audience"
        value={draft.audience}
        onChange={(audience) => set('audience', audience)}
        choices={AUDIENCE_CHOICES}
        error={errorOf('audience')}
        name="audience"
      />
      {hasAges(draft.audience) ? (
        <>
          <AgeInput form={form} errorOf={errorOf} end="ageFrom" />
          <AgeInput form={form} errorOf={errorOf} end="ageTo" />
        </>
      ) : null}
    </div>
  );
}

function DescriptionInput({ form, errorOf, edition }: OpenInputsProps) {
  const limit = useLimits(edition).descriptionLimit;
  const held = heldBy(edition, 'description');
  const { description } = form.draft;
  if (held) return <LockedField label="Description" value={description} reason={held} />;
  return (
    <TextArea
      label="Description"
      rows={8}
      value={description}
      onChange={(text) => form.set('description', text)}
      countTo={limit?.count ?? USUAL_DESCRIPTION}
      countedFor={limit?.channelName}
      error={errorOf('description')}
      name="description"
    />
  );
}

/** The fields of an edition that stay open. */
export function OpenInputs(props: OpenInputsProps) {
  const { draft, set } = props.form;
  const { keywordLimit, subjectLimit } = useLimits(props.edition);
  return (
    <>
      <DescriptionInput {...props} />
      <KeywordsInput
        value={draft.keywords}
        onChange={(keywords) => set('keywords', keywords)}
        help={`The strongest first. ${limitText(keywordLimit, draft.keywords.length)}`}
        error={props.errorOf('keywords')}
      />
      <SubjectsInput
        value={draft.subjects}
        onChange={(subjects) => set('subjects', subjects)}
        help={limitText(subjectLimit, draft.subjects.length)}
        errorOf={props.errorOf}
      />
      <AudienceInputs {...props} />
    </>
  );
}
