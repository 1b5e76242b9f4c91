import { SHEET_ITEMS, type SheetItemName } from '../../../src/contract/submissions.ts';
import { Button, Checkbox, Field } from '../../ui/index.ts';
import type { ChannelFieldsProps } from './channel-draft.ts';
import { ITEM_WORDS } from './words.ts';

/** The asked items in their order, then those that are not asked. */
function rowsOf(asked: readonly SheetItemName[]): readonly SheetItemName[] {
  return [...asked, ...SHEET_ITEMS.filter((name) => !asked.includes(name))];
}

/** Everything in the usual order is kept as an empty list, so that items of later versions are asked too. */
function kept(asked: readonly SheetItemName[]): SheetItemName[] {
  const usual = asked.length === SHEET_ITEMS.length && asked.every((name, at) => name === SHEET_ITEMS[at]);
  return usual ? [] : [...asked];
}

function moved(asked: readonly SheetItemName[], name: SheetItemName, by: 1 | -1): SheetItemName[] {
  const from = asked.indexOf(name);
  const list = asked.filter((one) => one !== name);
  return [...list.slice(0, from + by), name, ...list.slice(from + by)];
}

/** What the channel's form asks for, and in which order: the submission sheet follows it. */
export function FormItems({ draft, onChange, errorOf }: ChannelFieldsProps) {
  const asked = draft.sheetItems.length > 0 ? draft.sheetItems : [...SHEET_ITEMS];
  const set = (items: readonly SheetItemName[]) => onChange({ sheetItems: kept(items) });
  return (
    <details className="form-items">
      <summary>
        {draft.sheetItems.length === 0
          ? 'Everything in the usual order'
          : `${asked.length} of ${SHEET_ITEMS.length} values, in its own order`}
      </summary>
      <Field
        as="group"
        label="What its form asks for"
        error={errorOf('sheetItems')}
        help="Untick what its form does not have, and bring the rest in the order of the form: the submission sheet then follows it."
      >
        {() => (
          <ol className="plain-list">
            {rowsOf(asked).map((name) => (
              <li key={name} className="form-item">
                <Checkbox
                  label={ITEM_WORDS[name]}
                  checked={asked.includes(name)}
                  onChange={(ticked) => set(ticked ? [...asked, name] : asked.filter((one) => one !== name))}
                />
                {asked.includes(name) ? (
                  <Moves name={name} asked={asked} onMove={(by) => set(moved(asked, name, by))} />
                ) : null}
              </li>
            ))}
          </ol>
        )}
      </Field>
    </details>
  );
}

interface MovesProps {
  name: SheetItemName;
  asked: readonly SheetItemName[];
  onMove: (by: 1 | -1) => void;
}

function Moves({ name, asked, onMove }: MovesProps) {
  const at = asked.indexOf(name);
  return (
    <span className="row">
      <Button kind="quiet" label={`Up: ${ITEM_WORDS[name]}`} disabled={at === 0} onClick={() => onMove(-1)}>
        Up
      </Button>
      <Button
        kind="quiet"
        label={`Down: ${ITEM_WORDS[name]}`}
        disabled={at === asked.length - 1}
        onClick={() => onMove(1)}
      >
        Down
      </Button>
    </span>
  );
}
