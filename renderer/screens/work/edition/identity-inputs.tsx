import type { Edition, EditionFields } from '../../../../src/contract/editions.ts';
import { NumberInput, TextInput } from '../../../ui/index.ts';
import { CodeInput } from '../parts/code-input.tsx';
import { fieldHelp } from '../parts/field-help.tsx';
import { type Limit, useLimits } from '../parts/limits.ts';
import { LANGUAGE_CHOICES } from '../parts/names.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import type { RecordForm } from '../parts/use-record.ts';
import { ContributorsInput } from './contributors-input.tsx';

export interface EditionInputsProps {
  form: RecordForm<EditionFields>;
  errorOf: ErrorOf;
}

function countedBy(limit: Limit | undefined) {
  return limit && { limit: limit.count, setBy: limit.channelName };
}

function SeriesInputs({ form, errorOf }: EditionInputsProps) {
  const { draft, set } = form;
  return (
    <div className="columns">
      <TextInput
        label="Imprint"
        value={draft.imprint}
        onChange={(imprint) => set('imprint', imprint)}
        help={fieldHelp('imprint')}
        error={errorOf('imprint')}
        name="imprint"
      />
      <TextInput
        label="Series"
        value={draft.series}
        onChange={(series) => set('series', series)}
        error={errorOf('series')}
        name="series"
      />
      <TextInput
        label="Volume in the series"
        width="short"
        value={draft.seriesNumber}
        onChange={(seriesNumber) => set('seriesNumber', seriesNumber)}
        error={errorOf('seriesNumber')}
        name="seriesNumber"
      />
    </div>
  );
}

function EditionNumberInputs({ form, errorOf }: EditionInputsProps) {
  const { draft, set } = form;
  return (
    <div className="columns">
      <NumberInput
        label="Edition number"
        min={1}
        max={999}
        value={draft.number ?? undefined}
        onChange={(number) => set('number', number ?? null)}
        help={fieldHelp('number')}
        error={errorOf('number')}
        name="number"
      />
      <TextInput
        label="Edition statement"
        value={draft.statement}
        onChange={(statement) => set('statement', statement)}
        help={fieldHelp('statement')}
        error={errorOf('statement')}
        name="statement"
      />
      <CodeInput
        label="Language"
        value={draft.language}
        onChange={(language) => set('language', language)}
        choices={LANGUAGE_CHOICES}
        other="Another code (ISO 639-2/B)"
        help={fieldHelp('language')}
        error={errorOf('language')}
        required
        name="language"
      />
    </div>
  );
}

/** The identity fields of an edition, for as long as none of its formats was sent. */
export function IdentityInputs({ form, errorOf, edition }: EditionInputsProps & { edition?: Edition }) {
  const { draft, set } = form;
  const { titleLimit, subtitleLimit } = useLimits(edition);
  return (
    <>
      <TextInput
        label="Title"
        required
        value={draft.title}
        onChange={(title) => set('title', title)}
        counted={countedBy(titleLimit)}
        help={fieldHelp('title')}
        error={errorOf('title')}
        name="title"
      />
      <TextInput
        label="Subtitle"
        value={draft.subtitle}
        onChange={(subtitle) => set('subtitle', subtitle)}
        counted={countedBy(subtitleLimit)}
        help={fieldHelp('subtitle')}
        error={errorOf('subtitle')}
        name="subtitle"
      />
      <ContributorsInput
        value={draft.contributors}
        onChange={(contributors) => set('contributors', contributors)}
        errorOf={errorOf}
      />
      <EditionNumberInputs form={form} errorOf={errorOf} />
      <SeriesInputs form={form} errorOf={errorOf} />
    </>
  );
}
