import type { EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';
import { decimal, minorDigits } from '../money.ts';

// How the catalogue's own terms and the code lists of ONIX for Books (Issue 73) answer to each other.

type Audience = EditionFields['audience'];
type CaseKind = NonNullable<FormatFields['caseKind']>;

/** List 28: 04 stands for primary and secondary education, 06 for professional and scholarly. */
export const AUDIENCE_CODES: Record<Audience, string> = {
  general: '01',
  children: '02',
  'young adult': '03',
  education: '04',
  professional: '06',
};

/** The audience of a List 28 code; codes that say more than ours give the nearest, null where there is none. */
export function audienceOf(code: string): Audience | null {
  const own = (Object.keys(AUDIENCE_CODES) as Audience[]).find((name) => AUDIENCE_CODES[name] === code);
  if (own) return own;
  if (code === '05' || (code >= '11' && code <= '14')) return 'education';
  return null;
}

/** List 175: how a hardcover's case is made. */
export const CASE_CODES: Record<CaseKind, string> = { laminate: 'B402', cloth: 'B401', jacket: 'B501' };

const CASES: Record<string, CaseKind> = {
  B401: 'cloth',
  B402: 'laminate',
  B409: 'cloth',
  B501: 'jacket',
  B502: 'jacket',
  B503: 'jacket',
};

/** The kind of case that List 175 codes of a hardcover tell of; a jacket says more than what is under it. */
export function caseOf(details: readonly string[]): CaseKind | null {
  const kinds = details.map((code) => CASES[code]).filter((kind) => kind !== undefined);
  return kinds.includes('jacket') ? 'jacket' : (kinds[0] ?? null);
}

/** List 27 schemes of subjects: 94 to 99 are Thema's qualifiers, whose codes begin with 1 to 6. */
export function subjectScheme(scheme: string, code: string): string {
  if (scheme === 'bisac') return '10';
  if (scheme === 'own') return '24';
  return /^[1-6]/.test(code) ? String(93 + Number(code[0])) : '93';
}

/** The catalogue's scheme for a List 27 code, or null for schemes it does not hold. 23 is a publisher's own category. */
export function ownScheme(code: string): 'thema' | 'bisac' | null {
  if (code === '10') return 'bisac';
  return /^9[3-9]$/.test(code) ? 'thema' : null;
}

/** Price type, List 58, of a retail price. */
export const PRICE_TYPES = { excluding: '01', including: '02' } as const;

/** An amount of minor units as ONIX writes it: '9.99', '1200'. */
export function amountText(minor: number, currency: string): string {
  return decimal(minor, minorDigits(currency));
}

/** An ONIX amount in minor units, or null where it has more decimals than the currency or is no amount. */
export function amountOf(text: string, currency: string): number | null {
  const found = /^(\d{1,10})(?:\.(\d{1,6}))?$/.exec(text.trim());
  if (!found) return null;
  const places = minorDigits(currency);
  const decimals = (found[2] ?? '').replace(/0+$/, '');
  if (decimals.length > places) return null;
  return Number(`${found[1]}${decimals.padEnd(places, '0')}`);
}

const UM: Record<string, number> = { mm: 1_000, cm: 10_000, in: 25_400 };

/** A measurement in micrometres; null for other units. */
export function micrometres(value: string, unit: string): number | null {
  const factor = UM[unit];
  const number = Number(value);
  if (factor === undefined || !/^\d{1,6}(\.\d{1,6})?$/.test(value.trim())) return null;
  const um = Math.round(number * factor);
  return um > 0 && um <= 2_000_000 ? um : null;
}

/** Micrometres as ONIX writes them: inches where they come out in thousandths and inches are wanted, else millimetres. */
export function measurement(um: number, unit: 'mm' | 'in'): { value: string; unit: string } {
  const thousandths = (um * 10) / 254;
  if (unit === 'in' && Number.isInteger(thousandths))
    return { value: String(thousandths / 1000), unit: 'in' };
  return { value: String(um / 1000), unit: 'mm' };
}
