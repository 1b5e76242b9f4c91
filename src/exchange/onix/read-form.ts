import { madeOf } from '../../contract/terms.ts';
import { CASE_CODES, caseOf, micrometres } from '../../rules/onix/codes.ts';
import { all, type Element, holdsOnly, text, textOf } from './element.ts';
import { extentKey, measureKey } from './keys.ts';
import { bind, keep, type Reading } from './read-product.ts';

const BLOCK = 'DescriptiveDetail';

/** The form (List 150) with its details (List 175): file format or the like, and how a hardcover's case is made. */
export function readForm(to: Reading, block: Element): void {
  const { format, notes } = to.product;
  const form = text(block, 'ProductForm');
  if (/^[A-Z]{2}$/.test(form)) format.form = form;
  else notes.push(`The product form is '${form}', which names no form.`);
  const details = all(block, 'ProductFormDetail').map((element) => ({ element, code: textOf(element) }));
  const caseKind = form === 'BB' ? caseOf(details.map(({ code }) => code)) : null;
  format.caseKind = caseKind;
  const caseCode = caseKind && details.find(({ code }) => caseOf([code]) === caseKind)?.code;
  const others = details.filter(({ code }) => code !== caseCode && /^[A-Z]\d{3}$/.test(code));
  const chosen = others.find(({ code }) => /^[AE]1/.test(code)) ?? others[0];
  format.formDetail = chosen?.code ?? null;
  for (const detail of details) {
    const own = caseKind && CASE_CODES[caseKind];
    if (detail.code === caseCode && own) {
      if (detail.code !== own) bind(to, BLOCK, detail.element, own);
    } else if (detail !== chosen) keep(to, BLOCK, detail.element, detail.code);
  }
}

interface Sized {
  element: Element;
  type: string;
  um: number;
}

/** The trim size: of a hardcover only what is called trim (04, 05), else the overall size (01, 02) before the trim. */
export function readMeasures(to: Reading, block: Element): void {
  const { format } = to.product;
  const sizes: Sized[] = [];
  for (const element of all(block, 'Measure')) {
    const um = micrometres(text(element, 'Measurement'), text(element, 'MeasureUnitCode'));
    if (um !== null) sizes.push({ element, type: text(element, 'MeasureType'), um });
  }
  const pair = (height: string, width: string) => {
    const [h, w] = [height, width].map((type) => sizes.find((size) => size.type === type));
    return h && w ? { h, w } : null;
  };
  const hard = format.form === 'BB';
  const found = hard ? pair('04', '05') : (pair('01', '02') ?? pair('04', '05'));
  format.trimHeightUm = found?.h.um ?? null;
  format.trimWidthUm = found?.w.um ?? null;
  for (const element of all(block, 'Measure')) {
    const own =
      found && (element === found.h.element ? found.h : element === found.w.element ? found.w : null);
    if (!own || !found) {
      keep(to, BLOCK, element, '');
      continue;
    }
    const type = own === found.h ? (hard ? '04' : '01') : hard ? '05' : '02';
    const same = own.type === type && text(element, 'MeasureUnitCode') === 'mm';
    if (!same || text(element, 'Measurement') !== String(own.um / 1000))
      bind(to, BLOCK, element, measureKey(type, own.um));
  }
}

const SIMPLE_EXTENT = ['ExtentType', 'ExtentValue', 'ExtentUnit'];

/** List 23 codes that give a number of pages, the best first, in print and in e-books. */
const PAGES = { print: ['00', '11', '05', '07', '06'], 'e-book': ['10', '00', '08', '11', '05', '07'] };

/** Minutes of a playing time by its unit (List 24), or null. */
function minutes(value: string, unit: string): number | null {
  const number = Number(value);
  if (!/^\d{1,7}(\.\d+)?$/.test(value)) return null;
  if (unit === '05') return Math.round(number);
  if (unit === '04') return Math.round(number * 60);
  if (unit === '06') return Math.round(number / 60);
  if (unit === '15') return Math.floor(number / 100) * 60 + (number % 100);
  return unit === '16' ? Math.floor(number / 10_000) * 60 + (Math.floor(number / 100) % 100) : null;
}

function within(value: number | null, most: number): number | null {
  return value !== null && Number.isInteger(value) && value > 0 && value <= most ? value : null;
}

/** Pages and playing time. */
export function readExtents(to: Reading, block: Element): void {
  const { format } = to.product;
  const extents = all(block, 'Extent').map((element) => ({
    element,
    type: text(element, 'ExtentType'),
    value: text(element, 'ExtentValue'),
    unit: text(element, 'ExtentUnit'),
  }));
  const electronic = madeOf(format.form ?? '') === 'e-book';
  const order = PAGES[electronic ? 'e-book' : 'print'];
  const paged = order
    .map((type) => extents.find((extent) => extent.type === type && extent.unit === '03'))
    .find((extent) => extent && within(Number(extent.value), 20_000) !== null);
  const timed = extents.find(
    ({ type, value, unit }) => type === '09' && within(minutes(value, unit), 100_000) !== null,
  );
  format.pages = paged ? Number(paged.value) : null;
  format.durationMinutes = timed ? minutes(timed.value, timed.unit) : null;
  for (const extent of extents) {
    const simple = holdsOnly(extent.element, SIMPLE_EXTENT);
    if (extent === paged && format.pages) {
      const own = electronic ? '10' : '00';
      if (!simple || extent.type !== own || extent.value !== String(format.pages))
        bind(to, BLOCK, extent.element, extentKey(own, format.pages));
    } else if (extent === timed && format.durationMinutes) {
      if (!simple || extent.unit !== '05' || extent.value !== String(format.durationMinutes))
        bind(to, BLOCK, extent.element, extentKey('09', format.durationMinutes));
    } else keep(to, BLOCK, extent.element);
  }
}
