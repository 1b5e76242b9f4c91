import { CHANNEL_KINDS, LOCKABLE_FIELDS, PROOF_KINDS, RETURNS } from '../../../src/contract/terms.ts';
import { useQueryOf } from '../../api.ts';
import { Button, Checkbox, Field, NumberInput, Select, TextArea, TextInput } from '../../ui/index.ts';
import { TextTemplate } from '../settings/texts/text-template.tsx';
import { fieldName } from '../work/parts/names.ts';
import type { ChannelFieldsProps } from './channel-draft.ts';
import { PercentInput } from './percent-input.tsx';
import { TextLimits } from './text-limits.tsx';
import { KIND_WORDS, PROOF_WORDS } from './words.ts';

/** Name, kind, contact and note. */
export function WhatItIs({ draft, onChange, errorOf }: ChannelFieldsProps) {
  return (
    <>
      <TextInput
        label="Name"
        name="name"
        required
        value={draft.name}
        onChange={(name) => onChange({ name })}
        error={errorOf('name')}
        help="As you call it: a printer, a wholesaler, a shop, your own website."
      />
      <div className="columns">
        <Select
          label="What it takes"
          name="kind"
          value={draft.kind}
          onChange={(kind) => onChange({ kind })}
          choices={CHANNEL_KINDS.map((kind) => ({ value: kind, label: KIND_WORDS[kind] }))}
          error={errorOf('kind')}
          help="The kind of format that is listed there."
        />
        <TextInput
          label="Contact"
          name="contact"
          value={draft.contact}
          onChange={(contact) => onChange({ contact })}
          error={errorOf('contact')}
          help="Mail or web address that your requests go to."
        />
      </div>
      <TextArea
        label="Note"
        name="note"
        rows={2}
        value={draft.note}
        onChange={(note) => onChange({ note })}
        error={errorOf('note')}
      />
    </>
  );
}

/** How long things take there, and what proof it gives. */
export function TimeItTakes({ draft, onChange, errorOf }: ChannelFieldsProps) {
  return (
    <div className="columns">
      <NumberInput
        label="From upload to on sale"
        name="leadDays"
        required
        unit="working days"
        min={0}
        max={365}
        value={draft.leadDays}
        onChange={(leadDays) => onChange({ leadDays })}
        error={errorOf('leadDays')}
        help="A release plan counts back from the day of publication by these."
      />
      <NumberInput
        label="From asking to taken down"
        name="removalDays"
        required
        unit="days"
        min={0}
        max={365}
        value={draft.removalDays}
        onChange={(removalDays) => onChange({ removalDays })}
        error={errorOf('removalDays')}
        help="What it promises, or what you have seen, when a format is to leave."
      />
      <Select
        label="Proof before it goes on sale"
        name="proof"
        value={draft.proof}
        onChange={(proof) => onChange({ proof })}
        choices={PROOF_KINDS.map((kind) => ({ value: kind, label: PROOF_WORDS[kind] }))}
        error={errorOf('proof')}
        help="What you get to look at and approve."
      />
    </div>
  );
}

/** How much of what it accepts. */
export function LimitsItHas({ draft, onChange, errorOf }: ChannelFieldsProps) {
  return (
    <>
      <p className="soft">Leave a limit empty where there is none. The audit tells you what goes beyond.</p>
      <div className="columns">
        <NumberInput
          label="Subjects at most"
          name="subjectLimit"
          min={0}
          value={draft.subjectLimit ?? undefined}
          onChange={(limit) => onChange({ subjectLimit: limit ?? null })}
          error={errorOf('subjectLimit')}
          help="Subject codes that one format may carry."
        />
        <NumberInput
          label="Keywords at most"
          name="keywordLimit"
          min={0}
          value={draft.keywordLimit ?? undefined}
          onChange={(limit) => onChange({ keywordLimit: limit ?? null })}
          error={errorOf('keywordLimit')}
        />
        <TextInput
          label="Between keywords"
          name="keywordSeparator"
          width="short"
          value={draft.keywordSeparator}
          onChange={(keywordSeparator) => onChange({ keywordSeparator })}
          error={errorOf('keywordSeparator')}
          help="The sign it wants between two keywords, such as ; or a comma."
        />
      </div>
      <TextLimits draft={draft} onChange={onChange} errorOf={errorOf} />
    </>
  );
}

/** What a new listing starts with. */
export function UsualTerms({ draft, onChange, errorOf }: ChannelFieldsProps) {
  return (
    <>
      <p className="soft">A new listing here starts with these; each can be changed later by itself.</p>
      <div className="columns">
        <PercentInput
          label="Discount"
          name="defaultDiscountBp"
          value={draft.defaultDiscountBp ?? undefined}
          onChange={(bp) => onChange({ defaultDiscountBp: bp ?? null })}
          error={errorOf('defaultDiscountBp')}
          help="What it takes off the price you set. Empty where nothing is usual."
        />
        <Select<'Y' | 'N' | 'C' | 'S' | 'none'>
          label="Returns"
          name="defaultReturns"
          value={draft.defaultReturns ?? 'none'}
          onChange={(code) => onChange({ defaultReturns: code === 'none' ? null : code })}
          choices={[
            { value: 'none', label: 'Nothing usual' },
            ...RETURNS.map(({ code, name }) => ({ value: code, label: name })),
          ]}
          error={errorOf('defaultReturns')}
          help="Whether it may send unsold copies back."
        />
      </div>
    </>
  );
}

/** Fields it does not let one change any more, beside those that lock everywhere. */
export function LocksBesides({ draft, onChange, errorOf }: ChannelFieldsProps) {
  const { locksMore } = draft;
  return (
    <Field
      as="group"
      label="Fields that lock here"
      error={errorOf('locksMore')}
      help="Tick what this channel does not let you change once a format was sent to it. The ISBN, titles, people and the like lock everywhere."
    >
      {() => (
        <div className="columns lock-choices">
          {LOCKABLE_FIELDS.map((field) => (
            <Checkbox
              key={field}
              label={fieldName(field)}
              checked={locksMore.includes(field)}
              onChange={(locked) =>
                onChange({
                  locksMore: LOCKABLE_FIELDS.filter((one) =>
                    one === field ? locked : locksMore.includes(one),
                  ),
                })
              }
            />
          ))}
        </div>
      )}
    </Field>
  );
}

/** The channel's own words for asking it to stop selling. */
export function RequestText({ draft, onChange, errorOf }: ChannelFieldsProps) {
  const texts = useQueryOf('templates.texts', {}).data?.texts;
  const common = texts?.find(({ kind }) => kind === 'removal request')?.body;
  return (
    <>
      <p className="soft">
        The text that asks this channel to stop selling a format. Left empty, the one in Settings is used.
      </p>
      {draft.requestTemplate === '' && common !== undefined ? (
        <div>
          <Button onClick={() => onChange({ requestTemplate: common })}>
            Begin with the text in Settings
          </Button>
        </div>
      ) : null}
      <TextTemplate
        kind="removal request"
        name="requestTemplate"
        label="Request text of this channel"
        value={draft.requestTemplate}
        onChange={(requestTemplate) => onChange({ requestTemplate })}
        error={errorOf('requestTemplate')}
      />
    </>
  );
}
