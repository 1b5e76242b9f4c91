import { BLANK_CARD } from '../../../../src/contract/print-costs.ts';
import { type CallRefused, useCommand } from '../../../api.ts';
import { currencyCodes } from '../../../lib/money.ts';
import { Select, TextArea } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { RadioGroup } from '../parts/radio-group.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { BooksPart, type CardPart } from './books-part.tsx';
import { type Card, type CardDraft, draftOf, fieldsOf, priceOf } from './card-draft.ts';
import { PartsInput } from './parts-input.tsx';
import { FitPreview, QuotesInput } from './quotes-input.tsx';

interface CardDialogProps {
  /** Undefined for a new one. */
  card: Card | undefined;
  channels: readonly { id: number; name: string }[];
  onClose: () => void;
}

function useSave(form: RecordForm<CardDraft>, card: Card | undefined) {
  const add = useCommand('printCosts.add');
  const update = useCommand('printCosts.update');
  const save = async (): Promise<boolean> => {
    const fields = fieldsOf(form.draft);
    if (!fields) return false;
    if (card) return (await update.run({ id: card.id, ...fields }, 'The card is changed.')).ok;
    const channelId = Number(form.draft.channelId);
    return (await add.run({ channelId, ...fields }, 'The card is kept.')).ok;
  };
  const used = card ? update : add;
  return { save, pending: used.pending, refusal: used.refusal as CallRefused | undefined };
}

const FIELDS = [...Object.keys(BLANK_CARD), 'channelId', 'currency', 'price'];

/** What printing costs on a channel: which books it holds for, and quotes or what the printer states. */
export function CardDialog({ card, channels, onClose }: CardDialogProps) {
  const { settings } = useWork();
  const channelId = String(card?.channelId ?? channels[0]?.id ?? '');
  const form = useRecord(draftOf(card, channelId, settings.currency));
  const { save, pending, refusal } = useSave(form, card);
  const errorOf = errorsOf(refusal);
  const missing =
    form.draft.kind === 'quotes' ? 'Write pages and amount of every quote.' : 'Write both parts of the cost.';
  return (
    <FormDialog
      title={card ? 'Change a print-cost card' : 'Add a print-cost card'}
      width="wide"
      submit={card ? 'Save the card' : 'Keep the card'}
      blocked={priceOf(form.draft) ? undefined : missing}
      onClose={onClose}
      onSubmit={() => void save().then((done) => done && onClose())}
      pending={pending}
      refusal={refusal}
      fields={FIELDS}
      dirty={form.dirty}
    >
      <PlacePart form={form} errorOf={errorOf} channels={card ? [] : channels} />
      <CostPart form={form} errorOf={errorOf} />
      <BooksPart form={form} errorOf={errorOf} />
      <TextArea
        label="Note"
        rows={2}
        value={form.draft.note}
        onChange={(note) => form.set('note', note)}
        help="Where it comes from, such as the printer’s list of March."
        error={errorOf('note')}
        name="note"
      />
    </FormDialog>
  );
}

/** The channel, where it may still be chosen, and the currency; amounts keep their figures in another one. */
function PlacePart({ form, errorOf, channels }: CardPart & Pick<CardDialogProps, 'channels'>) {
  const { draft, set, merge } = form;
  const { settings } = useWork();
  const inCurrency = (currency: string) =>
    draft.quotes.map((row) => ({ ...row, amount: row.amount && { ...row.amount, currency } }));
  return (
    <div className="columns">
      {channels.length > 0 ? (
        <Select
          label="Channel"
          value={draft.channelId}
          onChange={(id) => set('channelId', id)}
          choices={channels.map(({ id, name }) => ({ value: String(id), label: name }))}
          error={errorOf('channelId')}
          name="channelId"
        />
      ) : null}
      <Select
        label="Currency"
        value={draft.currency}
        onChange={(currency) => merge({ currency, quotes: inCurrency(currency) })}
        choices={currencyCodes([draft.currency, settings.currency]).map((value) => ({ value, label: value }))}
        error={errorOf('currency')}
        name="currency"
      />
    </div>
  );
}

function CostPart({ form, errorOf }: CardPart) {
  const { draft, set } = form;
  return (
    <>
      <RadioGroup<CardDraft['kind']>
        label="Where the cost comes from"
        value={draft.kind}
        onChange={(kind) => set('kind', kind)}
        choices={[
          { value: 'quotes', label: 'Quotes for books of different page counts' },
          { value: 'stated', label: 'The printer states a fixed part and a part for each page' },
        ]}
      />
      {draft.kind === 'quotes' ? (
        <QuotesInput
          quotes={draft.quotes}
          onChange={(quotes) => set('quotes', quotes)}
          currency={draft.currency}
          errorOf={errorOf}
        />
      ) : (
        <div className="columns">
          <PartsInput
            label="Fixed part of a copy"
            value={draft.fixedParts}
            onChange={(fixedParts) => set('fixedParts', fixedParts)}
            currency={draft.currency}
            error={errorOf('price.fixedParts')}
            name="fixedParts"
          />
          <PartsInput
            label="For each page"
            value={draft.pageParts}
            onChange={(pageParts) => set('pageParts', pageParts)}
            currency={draft.currency}
            help="A page is one side of a leaf."
            error={errorOf('price.pageParts')}
            name="pageParts"
          />
        </div>
      )}
      {draft.kind === 'quotes' ? <FitPreview price={priceOf(draft)} currency={draft.currency} /> : null}
    </>
  );
}
