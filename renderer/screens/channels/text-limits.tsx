import { MARKUPS } from '../../../src/contract/submissions.ts';
import { NumberInput, Select } from '../../ui/index.ts';
import type { ChannelFieldsProps } from './channel-draft.ts';
import { MARKUP_WORDS } from './words.ts';

/** How long its texts may be, and what markup they may hold. */
export function TextLimits({ draft, onChange, errorOf }: ChannelFieldsProps) {
  return (
    <div className="columns">
      <NumberInput
        label="Title at most"
        name="titleLimit"
        unit="characters"
        min={0}
        value={draft.titleLimit ?? undefined}
        onChange={(limit) => onChange({ titleLimit: limit ?? null })}
        error={errorOf('titleLimit')}
      />
      <NumberInput
        label="Subtitle at most"
        name="subtitleLimit"
        unit="characters"
        min={0}
        value={draft.subtitleLimit ?? undefined}
        onChange={(limit) => onChange({ subtitleLimit: limit ?? null })}
        error={errorOf('subtitleLimit')}
      />
      <Select
        label="Markup in the description"
        name="descriptionMarkup"
        value={draft.descriptionMarkup}
        onChange={(descriptionMarkup) => onChange({ descriptionMarkup })}
        choices={MARKUPS.map((markup) => ({ value: markup, label: MARKUP_WORDS[markup] }))}
        error={errorOf('descriptionMarkup')}
        help="What its form takes beside plain words."
      />
      <NumberInput
        label="Description at most"
        name="descriptionLimit"
        unit="characters"
        min={0}
        value={draft.descriptionLimit ?? undefined}
        onChange={(limit) => onChange({ descriptionLimit: limit ?? null })}
        error={errorOf('descriptionLimit')}
      />
    </div>
  );
}
