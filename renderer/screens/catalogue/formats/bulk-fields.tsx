import { useState } from 'react';
import type { BulkAction } from '../../../../src/contract/bulk.ts';
import type { Money } from '../../../../src/contract/operation.ts';
import { SUBJECT_SCHEMES } from '../../../../src/contract/terms.ts';
import { useQueryOf } from '../../../api.ts';
import { currencyCodes } from '../../../lib/money.ts';
import { DateInput, MoneyInput, Select, TextArea, TextInput } from '../../../ui/index.ts';
import { splitKeywords } from '../../work/edition/split-keywords.ts';

export interface BulkFieldsProps {
  onChange: (action: BulkAction | undefined) => void;
}

function PriceFields({ onChange }: BulkFieldsProps) {
  const usual = useQueryOf('settings.get', {}).data?.currency ?? 'EUR';
  const [money, setMoney] = useState<Money>();
  const [tax, setTax] = useState<'including' | 'excluding'>('including');
  const tell = (price: Money | undefined, how: typeof tax) =>
    onChange(price && { what: 'set price', price: { ...price, tax: how } });
  return (
    <>
      <MoneyInput
        label="Price"
        required
        value={money}
        currencies={currencyCodes([usual])}
        help="It takes the place of the price in this currency; prices in others stay."
        onChange={(next) => {
          setMoney(next);
          tell(next, tax);
        }}
      />
      <Select
        label="Tax"
        value={tax}
        choices={[
          { value: 'including', label: 'Including tax' },
          { value: 'excluding', label: 'Excluding tax' },
        ]}
        onChange={(next) => {
          setTax(next);
          tell(money, next);
        }}
      />
    </>
  );
}

function KeywordFields({ onChange }: BulkFieldsProps) {
  const [text, setText] = useState('');
  return (
    <TextArea
      label="Keywords"
      required
      value={text}
      help="Parted by commas, semicolons or new lines. They are added to the editions; those that are there stay."
      onChange={(next) => {
        setText(next);
        const keywords = splitKeywords(next);
        onChange(keywords.length > 0 ? { what: 'add keywords', keywords } : undefined);
      }}
    />
  );
}

type Scheme = (typeof SUBJECT_SCHEMES)[number];
const SCHEME_NAMES: Record<Scheme, string> = { thema: 'Thema', bisac: 'BISAC', own: 'Own list' };

function SubjectFields({ onChange }: BulkFieldsProps) {
  const [scheme, setScheme] = useState<Scheme>('thema');
  const [code, setCode] = useState('');
  const tell = (nextScheme: Scheme, nextCode: string) => {
    setScheme(nextScheme);
    setCode(nextCode);
    const text = nextScheme === 'own' ? nextCode.trim() : nextCode.trim().toUpperCase();
    onChange(
      text === ''
        ? undefined
        : { what: 'add subject', subject: { scheme: nextScheme, code: text, heading: '' } },
    );
  };
  return (
    <>
      <Select
        label="Scheme"
        value={scheme}
        choices={SUBJECT_SCHEMES.map((one) => ({ value: one, label: SCHEME_NAMES[one] }))}
        onChange={(next) => tell(next, code)}
      />
      <TextInput
        label="Code"
        required
        mono
        width="short"
        value={code}
        onChange={(next) => tell(scheme, next)}
      />
    </>
  );
}

function ChannelFields({ onChange, move }: BulkFieldsProps & { move: boolean }) {
  const channels = (useQueryOf('channels.list', {}).data?.channels ?? []).filter(
    (one) => one.closedOn === null,
  );
  const [channel, setChannel] = useState('');
  const [day, setDay] = useState('');
  const tell = (id: string, on: string) => {
    setChannel(id);
    setDay(on);
    if (id === '') return onChange(undefined);
    const channelId = Number(id);
    if (!move) return onChange({ what: 'list on channel', channelId });
    onChange({ what: 'move one step', channelId, ...(on === '' ? {} : { on }) });
  };
  return (
    <>
      <Select
        label="Channel"
        required
        placeholder="Choose a channel"
        value={channel}
        choices={channels.map((one) => ({ value: String(one.id), label: one.name }))}
        onChange={(next) => tell(next, day)}
      />
      {move ? (
        <DateInput
          label="On which day"
          value={day}
          onChange={(next) => tell(channel, next)}
          help="Empty for today. Each listing moves to the standing that follows its own."
        />
      ) : null}
    </>
  );
}

/** The fields of one thing that is done to many formats; answers nothing while they are not filled. */
export function BulkFields({ what, onChange }: BulkFieldsProps & { what: BulkAction['what'] }) {
  if (what === 'set price') return <PriceFields onChange={onChange} />;
  if (what === 'add keywords') return <KeywordFields onChange={onChange} />;
  if (what === 'add subject') return <SubjectFields onChange={onChange} />;
  return <ChannelFields onChange={onChange} move={what === 'move one step'} />;
}
