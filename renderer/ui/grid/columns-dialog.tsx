import { Button, Checkbox, Dialog, NumberInput } from '../index.ts';
import { NARROWEST, WIDEST } from './types.ts';
import type { KeptColumns } from './use-kept-columns.ts';

/** Which columns the table shows, and how wide each is. */
export function ColumnsDialog<Row>({ columns, onClose }: { columns: KeptColumns<Row>; onClose: () => void }) {
  return (
    <Dialog
      open
      onClose={onClose}
      title="Columns"
      width="narrow"
      footer={
        <>
          <Button kind="primary" onClick={onClose}>
            Done
          </Button>
          <Button onClick={columns.reset}>As they were at first</Button>
        </>
      }
    >
      <ul className="column-choices">
        {columns.all.map((column) => {
          const shown = columns.shown.includes(column.key);
          return (
            <li key={column.key}>
              <Checkbox
                label={column.header}
                checked={shown}
                disabled={shown && columns.columns.length === 1}
                onChange={(on) => columns.show(column.key, on)}
              />
              <NumberInput
                label={`Width of ${column.header} in pixels`}
                labelHidden
                value={columns.widths[column.key] ?? column.width}
                min={NARROWEST}
                max={WIDEST}
                disabled={!shown}
                onChange={(width) => {
                  if (width !== undefined && width >= NARROWEST && width <= WIDEST)
                    columns.setWidth(column.key, width);
                }}
              />
            </li>
          );
        })}
      </ul>
    </Dialog>
  );
}
