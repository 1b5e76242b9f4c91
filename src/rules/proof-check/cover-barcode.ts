import type { BarcodeFacts, CheckLine } from '../../contract/proof-checks/facts.ts';
import type { Rect } from '../geometry/types.ts';
import { shownIsbn } from '../isbn/index.ts';
import { coverLine, rectOf } from './cover-line.ts';
import { beyond, type Laid, panelAt, panelOf } from './cover-place.ts';
import { ownerOf } from './epub-numbers.ts';
import { shownUm, umOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

/** Module of 100 % in micrometres, smallest and largest magnification, quiet zones in modules (STANDARDS B1). */
const MODULE_UM = 330;
const PERCENT = { least: 80, most: 200 } as const;
const QUIET = { left: 11, right: 7 } as const;
/** Height of ordinary bars at 100 %, and the least at any size (STANDARDS B1). */
const BAR_UM = 22_850;
const LEAST_BAR_UM = 18_280;
/** Measuring is good to a hundredth; quiet zones to half a module, which is what a drawing program rounds by. */
const MEASURE_SHARE = 0.01;
const QUIET_TOLERANCE = 0.5;
/** Symbol contrast of grade C, the least that shops take (ISO/IEC 15416; value from memory). */
const LEAST_CONTRAST = 0.4;

/** The code that is looked at: this format's own where it is there. */
export function mainCode(codes: readonly BarcodeFacts[], record: ProofRecord): BarcodeFacts | undefined {
  return codes.find(({ digits }) => digits === record.isbn13) ?? codes[0];
}

export function barcodeLine(codes: readonly BarcodeFacts[]): CheckLine {
  const said = { expected: 'An EAN-13 with the ISBN' };
  const [first] = codes;
  if (first === undefined)
    return coverLine('barcode', 'Bar code', 'not found', {
      ...said,
      advice:
        'No ISBN bar code could be read on the cover. If the printer adds it, ask for a proof with it; else have it put in.',
    });
  const found = codes.length === 1 ? '1 bar code' : `${codes.length} bar codes`;
  return coverLine('barcode', 'Bar code', 'agreed', { ...said, found, page: first.page, box: first.box });
}

/** Every bar code is this format's own number. */
export function barcodeIsbnLine(codes: readonly BarcodeFacts[], record: ProofRecord): CheckLine {
  const label = 'ISBN in the bar code';
  const foreign = codes.find(({ digits }) => digits !== record.isbn13);
  const code = foreign ?? codes[0];
  const said = {
    expected: record.isbn13 === null ? 'No number yet' : shownIsbn(record.isbn13),
    found: [...new Set(codes.map(({ digits }) => shownIsbn(digits)))].join(', '),
    page: code?.page ?? 1,
    box: code?.box ?? null,
  };
  if (record.isbn13 === null)
    return coverLine('barcode.isbn', label, 'cannot tell', {
      ...said,
      advice: 'Give this format its number first; the bar code shows one already.',
    });
  if (foreign === undefined) return coverLine('barcode.isbn', label, 'agreed', said);
  return coverLine('barcode.isbn', label, 'differs', {
    ...said,
    advice: `${shownIsbn(foreign.digits)} is ${ownerOf(foreign.digits, record).words}. Have the bar code drawn anew with this format’s own number.`,
  });
}

const at = ({ page, box }: BarcodeFacts) => ({ page, box });

/** Size within 80 to 200 %, and bars of full height (STANDARDS B1). `ppiKnown`: lengths can be told. */
export function barcodeSizeLine(code: BarcodeFacts, ppiKnown: boolean, record: ProofRecord): CheckLine {
  const label = 'Size of the bar code';
  const unit = record.lengthUnit;
  const expected = `${PERCENT.least} to ${PERCENT.most} %, bars ${shownUm(LEAST_BAR_UM, unit)} high or more`;
  if (!ppiKnown)
    return coverLine('barcode.size', label, 'cannot tell', {
      expected,
      advice: 'The picture states no resolution, so its size in print is not known.',
      ...at(code),
    });
  const percent = (umOf(code.modulePt) / MODULE_UM) * 100;
  const barUm = code.barHeightPt === null ? null : umOf(code.barHeightPt);
  const share = barUm === null ? null : barUm / ((BAR_UM * percent) / 100);
  const height =
    barUm === null || share === null
      ? ''
      : `, bars ${shownUm(barUm, unit)} high${share < 1 - 2 * MEASURE_SHARE ? ` (${Math.round(share * 100)} % of their full height)` : ''}`;
  const found = `${Math.round(percent)} %${height}`;
  const line = (state: CheckLine['state'], advice = '') =>
    coverLine('barcode.size', label, state, { expected, found, advice, ...at(code) });
  if (percent < PERCENT.least * (1 - MEASURE_SHARE))
    return line('differs', 'It is too small to be read safely at a till; have it drawn at 80 % or larger.');
  if (percent > PERCENT.most * (1 + MEASURE_SHARE))
    return line('differs', 'It is larger than readers take; have it drawn at 200 % or smaller.');
  if (barUm !== null && barUm < LEAST_BAR_UM * (1 - 2 * MEASURE_SHARE))
    return line(
      'differs',
      'Its bars were cut short, so that it must be held just right to be read; have it drawn at full height.',
    );
  return line('agreed');
}

/** Clear space beside the bars (STANDARDS B1). */
export function quietLine(code: BarcodeFacts): CheckLine {
  const label = 'Quiet zones of the bar code';
  const { quietLeft: left, quietRight: right } = code;
  const expected = `${QUIET.left} modules left, ${QUIET.right} right`;
  if (left === null || right === null)
    return coverLine('barcode.quiet', label, 'cannot tell', {
      expected,
      advice: 'The bars could not be measured; look at the space beside them.',
      ...at(code),
    });
  const told = (modules: number) => (modules >= 30 ? '30 or more' : String(modules));
  const said = { expected, found: `${told(left)} left, ${told(right)} right`, ...at(code) };
  const narrow = [
    ...(left < QUIET.left - QUIET_TOLERANCE ? ['left'] : []),
    ...(right < QUIET.right - QUIET_TOLERANCE ? ['right'] : []),
  ];
  if (narrow.length === 0) return coverLine('barcode.quiet', label, 'agreed', said);
  return coverLine('barcode.quiet', label, 'differs', {
    ...said,
    advice: `There is too little clear space ${narrow.join(' and ')} of the bars; have its white ground made wider.`,
  });
}

/** Dark bars on a light ground, as the red light of a scanner sees them. */
export function barcodeColourLine(code: BarcodeFacts): CheckLine {
  const label = 'Colours of the bar code';
  const expected = 'Dark bars on a light ground';
  const { inverted, contrast } = code;
  const percent = contrast === null ? '' : `contrast ${Math.round(contrast * 100)} % under red light`;
  if (inverted)
    return coverLine('barcode.colour', label, 'differs', {
      expected,
      found: 'light bars on a dark ground',
      advice: 'Scanners at a till do not read it; have it drawn dark on white.',
      ...at(code),
    });
  if (contrast === null)
    return coverLine('barcode.colour', label, 'cannot tell', {
      expected,
      advice: 'The bars could not be measured.',
      ...at(code),
    });
  if (contrast >= LEAST_CONTRAST)
    return coverLine('barcode.colour', label, 'agreed', { expected, found: percent, ...at(code) });
  return coverLine('barcode.colour', label, 'differs', {
    expected,
    found: percent,
    advice: 'Scanners use red light and see too little of these colours; have it drawn in black on white.',
    ...at(code),
  });
}

/** Modules of a five-digit add-on, and its usual gap (STANDARDS B3). */
const ADD_ON = 47;
const GAP = 9;

/** The symbol with its add-on, which follows it as it reads. */
function wholeOf({ box, addOn, turned, modulePt, quietRight }: BarcodeFacts): Rect {
  const rect = rectOf(box);
  if (addOn === null) return rect;
  const more = umOf(((quietRight ?? GAP) + ADD_ON) * modulePt);
  const wider = turned % 180 === 0;
  return {
    xUm: rect.xUm - (turned === 180 ? more : 0),
    yUm: rect.yUm - (turned === 270 ? more : 0),
    widthUm: rect.widthUm + (wider ? more : 0),
    heightUm: rect.heightUm + (wider ? 0 : more),
  };
}

/** On the back cover, clear of its folds and its cut (STANDARDS A13). */
export function barcodePlaceLine(code: BarcodeFacts, laid: Laid): CheckLine {
  const label = 'Place of the bar code';
  const expected = 'On the back cover, clear of the cut and the folds';
  const panel = panelAt(laid, code.box);
  const back = panelOf(laid, 'back cover');
  const found = panel === undefined ? 'outside the cut' : `on the ${panel.kind}`;
  const line = (state: CheckLine['state'], advice = '') =>
    coverLine('barcode.place', label, state, { expected, found, advice, ...at(code) });
  if (back === undefined || panel?.kind !== 'back cover')
    return line('differs', 'Have it moved to the back cover, at the foot near the spine.');
  if (beyond(wholeOf(code), back.safe ?? back) > 0)
    return line('differs', 'It stands too near to a fold or the cut; have it moved further in.');
  return line('agreed');
}
