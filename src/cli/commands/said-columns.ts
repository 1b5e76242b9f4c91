import type { SheetField } from '../../contract/sheet-fields.ts';
import { Failure } from '../failure.ts';

/** 'Header=field detail' by the header; an empty field leaves the column out. */
export function saidColumns(
  text: string | undefined,
  fields: readonly SheetField[],
): Map<string, { field: string; detail: string }> {
  const said = new Map<string, { field: string; detail: string }>();
  for (const part of (text ?? '').split(',')) {
    if (part.trim() === '') continue;
    const [header = '', value] = part.split('=');
    const [field = '', ...detail] = (value ?? '').trim().split(/\s+/);
    const known = field === '' || fields.some(({ key }) => key === field);
    if (value === undefined || !known) {
      const keys = fields.map(({ key }) => key).join(', ');
      const message = `--columns cannot be read at '${part.trim()}'; write Header=field, the field one of: ${keys}.`;
      throw new Failure({ code: 'BAD_INPUT', message, field: 'columns' }, 2);
    }
    said.set(header.trim().toLowerCase(), { field, detail: detail.join(' ') });
  }
  return said;
}
