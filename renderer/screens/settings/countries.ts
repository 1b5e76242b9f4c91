const regions = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });

/** The codes in a typed text, in capitals and each once; half-typed ones are kept for the contract to refuse. */
export function countryCodes(text: string): string[] {
  const codes = text.toUpperCase().split(/[\s,;]+/);
  return [...new Set(codes.filter((code) => code !== ''))];
}

/** 'United Kingdom, Ireland'; a code that stands for no country is named as such. */
export function countryNames(codes: readonly string[]): string {
  const name = (code: string) => (/^[A-Z]{2}$/.test(code) ? regions.of(code) : undefined);
  return codes.map((code) => name(code) ?? `${code} is no country that we know`).join(', ');
}
