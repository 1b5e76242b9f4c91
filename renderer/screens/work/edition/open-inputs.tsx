import type { Edition } from '../../../../src/contract/editions.ts';
import { AUDIENCES } from '../../../../src/contract/terms.ts';
import { NumberInput, Select, TextArea } from '../../../ui/index.ts';
import { limitText, useLimits } from '../parts/limits.ts';
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

function AudienceInputs({ form, errorOf }: EditionInputsProps) {
  const { draft, set } = form;
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
          <NumberInput
            label="Age from"
            unit="years"
            min={0}
            max={120}
            value={draft.ageFrom ?? undefined}
            onChange={(age) => set('ageFrom', age ?? null)}
            error={errorOf('ageFrom')}
            name="ageFrom"
          />
          <NumberInput
            label="Age to"
            unit="years"
            min={0}
            max={120}
            value={draft.ageTo ?? undefined}
            onChange={(age) => set('ageTo', age ?? null)}
            error={errorOf('ageTo')}
            name="ageTo"
          />
        </>
      ) : null}
    </div>
  );
}

/** The fields of an edition that stay open. `edition` tells which channels' limits count. */
export function OpenInputs({
  form,
  errorOf,
  edition,
}: EditionInputsProps & { edition?: Edition | undefined }) {
  const { draft, set } = form;
  const { descriptionLimit, keywordLimit, subjectLimit } = useLimits(edition);
  return (
    <>
      <TextArea
        label="Description"
        rows={8}
        value={draft.description}
        onChange={(description) => set('description', description)}
        countTo={descriptionLimit?.count ?? USUAL_DESCRIPTION}
        help={
          descriptionLimit
            ? `${descriptionLimit.channelName} takes ${descriptionLimit.count.toLocaleString()} characters.`
            : undefined
        }
        error={errorOf('description')}
        name="description"
      />
      <KeywordsInput
        value={draft.keywords}
        onChange={(keywords) => set('keywords', keywords)}
        help={`The strongest first. ${limitText(keywordLimit, draft.keywords.length)}`}
        error={errorOf('keywords')}
      />
      <SubjectsInput
        value={draft.subjects}
        onChange={(subjects) => set('subjects', subjects)}
        help={limitText(subjectLimit, draft.subjects.length)}
        errorOf={errorOf}
      />
      <AudienceInputs form={form} errorOf={errorOf} />
    </>
  );
}
