import type { NumberRow } from '../../../src/contract/numbers.ts';
import { useQueryOf } from '../../api.ts';
import { BarcodeDialog } from '../work/barcode/barcode-dialog.tsx';

/** The bar code of a number, which is drawn with the prices of its format. */
export function NumberBarcode({ row, onClose }: { row: NumberRow; onClose: () => void }) {
  const work = useQueryOf('works.get', { id: row.workId ?? 0 }, { enabled: row.workId !== null });
  const format = work.data?.editions
    .flatMap((edition) => edition.formats)
    .find((one) => one.id === row.formatId);
  return format ? <BarcodeDialog format={format} onClose={onClose} /> : null;
}
