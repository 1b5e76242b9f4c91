/** The signs a locale writes numbers with. */
interface NumberSigns {
  decimal: string;
  group: string;
}

function signsOf(locale: string | undefined): NumberSigns {
  const parts = new Intl.NumberFormat(locale, { useGrouping: true }).formatToParts(1_234_567.8);
  const sign = (type: string, fallback: string) =>
    parts.find((part) => part.type === type)?.value ?? fallback;
  return { decimal: sign('decimal', '.'), group: sign('group', ',') };
}

const SPACES = /[\s\u00a0\u202f]/gu;

/**
 * Reads a number as people of this locale type it into an integer count of `10^-digits`.
 * Thousands signs are accepted only between whole groups of three, so `12,50` is refused where the
 * comma parts thousands, instead of being read as 1250. Answers undefined for anything else, and for
 * more decimals than `digits` allows.
 */
export function parseScaled(text: string, digits: number, locale?: string): number | undefined {
  const signs = signsOf(locale);
  const clean = text.trim().replace(SPACES, '').replaceAll('’', "'");
  const [whole = '', decimals = '', ...rest] = clean.split(signs.decimal);
  if (rest.length > 0 || decimals.length > digits || !/^\d*$/.test(decimals)) return undefined;
  const group = signs.group.replace(SPACES, '').replaceAll('’', "'");
  const groups = group === '' ? [whole] : whole.split(group);
  const grouped =
    groups.length === 1 ||
    groups.every((part, index) => part.length === 3 || (index === 0 && part.length > 0 && part.length < 3));
  const figures = groups.join('');
  if (!grouped || !/^\d*$/.test(figures) || figures + decimals === '') return undefined;
  const scaled = Number(figures + decimals.padEnd(digits, '0'));
  return Number.isSafeInteger(scaled) ? scaled : undefined;
}

/** Writes an integer count of `10^-digits` as this locale types it, without thousands signs. */
export function formatScaled(scaled: number, digits: number, locale?: string, trim = false): string {
  const text = String(Math.abs(scaled)).padStart(digits + 1, '0');
  const whole = text.slice(0, text.length - digits);
  const decimals = trim
    ? text.slice(text.length - digits).replace(/0+$/, '')
    : text.slice(text.length - digits);
  const sign = scaled < 0 ? '-' : '';
  return digits === 0 || decimals === ''
    ? sign + whole
    : `${sign}${whole}${signsOf(locale).decimal}${decimals}`;
}
