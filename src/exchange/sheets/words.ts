import { LANGUAGES } from '../../contract/languages.ts';
import { CASE_KINDS, FORM_DETAILS, PRODUCT_FORMS } from '../../contract/terms.ts';

/** What a form's word says: the product form, and what it tells beside. */
export interface FormWord {
  form: string;
  formDetail?: string;
  caseKind?: (typeof CASE_KINDS)[number];
  largePrint?: boolean;
}

const same = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

const FORM_WORDS: readonly (readonly [pattern: RegExp, word: FormWord])[] = [
  [/^(?:pb|pbk|paper ?back|soft ?cover|trade paperback|perfect bound)$/i, { form: 'BC' }],
  [/^(?:hb|hbk|hc|hard ?back|hard ?cover|hard ?bound|case ?bound|cloth)$/i, { form: 'BB' }],
  [/^(?:spiral|wire[- ]?o|spiral ?bound)$/i, { form: 'BE' }],
  [/^(?:board ?book)$/i, { form: 'BH' }],
  [/^(?:epub|e-?pub)$/i, { form: 'ED', formDetail: 'E101' }],
  [/^(?:pdf)$/i, { form: 'ED', formDetail: 'E107' }],
  [/^(?:e-?book|electronic|digital)$/i, { form: 'ED' }],
  [/^(?:audio|audio ?book|audio download|audiobook download)$/i, { form: 'AJ' }],
  [/^(?:mp3)$/i, { form: 'AJ', formDetail: 'A103' }],
  [/^(?:cd|audio ?cd|cd audio)$/i, { form: 'AC' }],
];

/** 'Hardcover (jacket)', 'E-book (EPUB)', 'Paperback, large print', 'pbk', 'BC'; null when no form is named. */
export function readForm(text: string): FormWord | null {
  if (/^[A-Z]{2}$/.test(text) && !/^(?:PB|HB|HC|CD)$/.test(text)) return { form: text };
  const large = /^(.*?)[, ]+\(?large print\)?$/i.exec(text);
  if (large?.[1]) {
    const word = readForm(large[1]);
    return word === null ? null : { ...word, largePrint: true };
  }
  const aside = /^(.+?)\s*\(([^()]+)\)$/.exec(text);
  const name = (aside?.[1] ?? text).trim();
  const listed = PRODUCT_FORMS.find((entry) => same(entry.name, name));
  const word = listed ? { form: listed.code } : FORM_WORDS.find(([pattern]) => pattern.test(name))?.[1];
  if (!word) return null;
  const more: FormWord = { ...word };
  for (const part of (aside?.[2] ?? '').split(',').map((piece) => piece.trim())) {
    const kind = CASE_KINDS.find((entry) => same(entry, part));
    const detail = readDetail(part);
    if (kind) more.caseKind = kind;
    else if (detail) more.formDetail = detail;
  }
  return more;
}

/** Code of ONIX List 175 for 'EPUB' and the like, or for a code; null for anything else. */
export function readDetail(text: string): string | null {
  if (/^[A-Z]\d{3}$/.test(text)) return text;
  return FORM_DETAILS.find((entry) => same(entry.name, text))?.code ?? null;
}

let byName: Map<string, string> | undefined;

/** Code of ISO 639-2/B for three letters, two letters or an English name; null for what names no language. */
export function readLanguage(text: string): string | null {
  const word = text.toLowerCase();
  byName ??= new Map(
    LANGUAGES.flatMap(([code, name]) => [
      [code, code],
      [name.toLowerCase(), code],
      [twoLetters(code), code],
    ]),
  );
  const known = byName.get(word) ?? byName.get(word.split(/[-_]/)[0] ?? '');
  if (known !== undefined) return known;
  if (!/^[a-z]{3}$/.test(word)) return null;
  return byName.get(twoLetters(word)) ?? word;
}

function twoLetters(code: string): string {
  try {
    return Intl.getCanonicalLocales(code)[0] ?? code;
  } catch {
    return code;
  }
}

/** Yes and no in the words sheets use; null for anything else. */
export function readFlag(text: string): boolean | null {
  if (/^(?:yes|y|true|1|x|✓)$/i.test(text)) return true;
  return /^(?:no|n|false|0|-)$/i.test(text) ? false : null;
}

/** A length with or without its unit in micrometres; without one it is millimetres. Null when it is none. */
export function readLength(text: string, unit: 'mm' | 'cm' | 'in' = 'mm'): number | null {
  const found = /^([0-9]+(?:[.,][0-9]+)?)\s*(mm|cm|in(?:ch(?:es)?)?|"|”|″)?$/i.exec(text.trim());
  if (!found) return null;
  const own = found[2]?.toLowerCase();
  const used = own === undefined ? unit : own === 'mm' || own === 'cm' ? own : 'in';
  const perUnit = { mm: 1000, cm: 10_000, in: 25_400 }[used];
  return Math.round(Number((found[1] ?? '').replace(',', '.')) * perUnit);
}

/** '152 x 229 mm', '6 × 9 in', '5.5" x 8.5"': width and height in micrometres, or null. */
export function readTrim(text: string): { width: number; height: number } | null {
  const [first, second, more] = text.split(/\s*[x×X*]\s*/);
  if (first === undefined || second === undefined || more !== undefined) return null;
  const named = /(mm|cm|in(?:ch(?:es)?)?|"|”|″)\s*$/i.exec(second)?.[1]?.toLowerCase();
  const unit = named === undefined || named === 'mm' ? 'mm' : named === 'cm' ? 'cm' : 'in';
  const width = readLength(first, unit);
  const height = readLength(second, unit);
  return width === null || height === null ? null : { width, height };
}
